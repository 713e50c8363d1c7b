/** Two traps of a farm whose counts were written down for each other from some day on. */

import { formatDay } from '../base/day.ts';
import { groupBy } from '../base/group-by.ts';
import { ASSUMPTIONS } from '../catalogue/assumptions.ts';
import { oddEnough } from './chance.ts';
import { joint, logProbability } from './counts.ts';
import { askedCheck, type ByOthers, type Look, readWithout } from './expected-catch.ts';
import type { RecordQuestion } from './types.ts';

const SHAPE = ASSUMPTIONS.placeShape.value;

/**
 * For each two traps that were visited on the same days: how much likelier are the counts if they were exchanged from a
 * day on, to the season's end? Each trap's habit is learned as the season goes, under either reading. Were the records
 * sound, a ratio of likelihoods would reach R with probability 1/R at most (Markov), so 1/R is the probability shown;
 * each pair and day is one look.
 */
export function swappedTraps(looks: readonly Look[]): RecordQuestion[] {
  const pairs = [
    ...groupBy(
      looks.filter(({ trap }) => trap.farm !== null),
      ({ trap }) => trap.farm!,
    ).values(),
  ].flatMap(pairsOf);
  const total = pairs.reduce((sum, pair) => sum + pair.length, 0);
  return pairs.flatMap((pair): RecordQuestion[] => {
    const asWritten = exchangedFrom(pair, pair.length);
    let [best, from] = [Number.NEGATIVE_INFINITY, 0];
    for (let day = 0; day < pair.length; day++) {
      const ratio = exchangedFrom(pair, day) - asWritten;
      if (ratio > best) [best, from] = [ratio, day];
    }
    const chance = oddEnough(Math.exp(-best), total);
    if (!chance) return [];
    const [a, b] = pair[from]!.map(({ look }) => look) as [Look, Look];
    const traps = [a.interval.trapId, b.interval.trapId] as const;
    const checks = pair.slice(from).flatMap(([one, other]) => [askedCheck(one.look), askedCheck(other.look)]);
    const { farm } = a.trap;
    return [{ kind: 'swapped-traps', traps, from: formatDay(a.interval.to), checks, farm, whom: 'scout', ...chance }];
  });
}

/** One trap's visit, its nights read without the other trap of the pair. */
interface Visit extends ByOthers {
  readonly look: Look;
}

/** Two traps' visits on the same days, in order. */
type Pair = readonly (readonly [Visit, Visit])[];

function pairsOf(looks: readonly Look[]): Pair[] {
  const traps = [...groupBy(looks, ({ interval }) => interval.trapId).values()];
  return traps.flatMap((one, i) => traps.slice(i + 1).flatMap((other) => pairOf(one, other) ?? []));
}

function pairOf(one: readonly Look[], other: readonly Look[]): Pair[] {
  const onDay = new Map(other.map((look) => [look.interval.to, look]));
  const pair = one.flatMap((a) => {
    const b = onDay.get(a.interval.to);
    const [first, second] = b ? [visitBeside(a, b), visitBeside(b, a)] : [null, null];
    return first && second ? [[first, second] as const] : [];
  });
  return pair.length > 0 ? [pair] : [];
}

/** Two traps of one kind must not speak for each other's nights: the exchange would look likely by itself. */
function visitBeside(look: Look, other: Look): Visit | null {
  const by = look.kind === other.kind ? readWithout(look, other.trap) : look;
  return by && { look, byOthers: by.byOthers, dispersion: by.dispersion, meanShape: by.meanShape };
}

/** ln-likelihood of both traps' counts when they are exchanged from visit `day` on, each habit learned from those before. */
function exchangedFrom(pair: Pair, day: number): number {
  const [a, b] = [learner(), learner()];
  return pair.reduce((sum, [one, other], i) => {
    const [first, second] = i < day ? [one.look.count, other.look.count] : [other.look.count, one.look.count];
    return sum + a(first, one) + b(second, other);
  }, 0);
}

/** ln-probability of the next count of a trap, given those it was told before. */
function learner() {
  let [found, expected] = [SHAPE, SHAPE];
  return (count: number, { byOthers, dispersion }: ByOthers): number => {
    const mean = (byOthers * found) / expected;
    const probability = logProbability(count, { mean, k: joint(dispersion, found) });
    found += count;
    expected += byOthers;
    return probability;
  };
}
