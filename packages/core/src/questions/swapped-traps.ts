/** Two traps of a farm whose counts were written down for each other from some day on. */

import { formatDay } from '../base/day.ts';
import { groupBy } from '../base/group-by.ts';
import { ASSUMPTIONS } from '../catalogue/assumptions.ts';
import { QUALITY_ASSUMPTIONS } from './assumptions.ts';
import { oddEnough } from './chance.ts';
import { joint, logProbability } from './counts.ts';
import { askedCheck, type ByOthers, type Look, readWithout } from './expected-catch.ts';
import type { RecordQuestion } from './types.ts';

const SHAPE = ASSUMPTIONS.placeShape.value;

/**
 * For each two traps that were visited on the same days: how much likelier are the counts if they were exchanged from a
 * day on, to the season's end, than as they are written, and than if both places became other ones on that day? Each trap's
 * habit is learned as the season goes, under every reading. A lure that fades, a crop that dries down, a trap that was moved
 * make places other ones; only an exchange makes each the other's.
 *
 * Were these readings all there is, a ratio of likelihoods would reach R with probability 1/R at most (Markov), and each pair
 * and day is one look. Sound seasons know more ways to differ: the ln of the ratio is taken down by what it overstates there.
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
    const asWritten = readFrom(pair, pair.length, 'as-written');
    let [best, from] = [Number.NEGATIVE_INFINITY, 0];
    for (let day = 0; day < pair.length; day++) {
      const ratio = readFrom(pair, day, 'exchanged') - Math.max(asWritten, readFrom(pair, day, 'anew'));
      if (ratio > best) [best, from] = [ratio, day];
    }
    const { swapOverstates, swapsInVain } = QUALITY_ASSUMPTIONS;
    const odd = oddEnough(Math.exp(-best / swapOverstates.value), total);
    if (!odd) return [];
    // Nothing rarer is promised than was measured.
    const chance = { ...odd, inSeason: Math.max(odd.inSeason, swapsInVain.value) };
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

/** How two traps' counts are read from a day on: as before, as each other's, or as of places that are new. */
type Reading = 'as-written' | 'exchanged' | 'anew';

/** ln-likelihood of both traps' counts when they are read so from visit `day` on, each habit learned from those before. */
function readFrom(pair: Pair, day: number, reading: Reading): number {
  let [a, b] = [learner(), learner()];
  return pair.reduce((sum, [one, other], i) => {
    if (reading === 'anew' && i === day) [a, b] = [learner(), learner()];
    const exchanged = reading === 'exchanged' && i >= day;
    const [first, second] = exchanged ? [other.look.count, one.look.count] : [one.look.count, other.look.count];
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
