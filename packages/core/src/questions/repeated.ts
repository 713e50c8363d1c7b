/** Counts that are too much alike, or too round. */

import { groupBy } from '../base/group-by.ts';
import type { CheckRecord } from '../records/schema.ts';
import { betaCdf } from '../statistics/incomplete-beta.ts';
import { QUALITY_ASSUMPTIONS } from './assumptions.ts';
import { oddEnough } from './chance.ts';
import { probabilityOf } from './counts.ts';
import { askedCheck, type Look } from './expected-catch.ts';
import type { AskedCheck, RecordQuestion } from './types.ts';

/**
 * A count above nought that a trap shows at visit after visit. From any visit on, the counts after it all equal it with
 * the product of their probabilities; each visit is one look.
 */
export function repeatedCounts(looks: readonly Look[]): RecordQuestion[] {
  return [...groupBy(looks, ({ interval }) => interval.trapId).values()].flatMap((visits) => {
    const found: RecordQuestion[] = [];
    for (let first = 0; first < visits.length; ) {
      const value = visits[first]!.count;
      let [last, probability] = [first, 1];
      while (value > 0 && visits[last + 1]?.count === value) probability *= probabilityOf(value, visits[++last]!.belief);
      const chance = oddEnough(probability, looks.length);
      const { farm } = visits[first]!.trap;
      if (chance) {
        const checks = visits.slice(first, last + 1).map(askedCheck);
        found.push({ kind: 'repeated-count', value, checks, farm, whom: 'scout', ...chance });
      }
      first = last + 1;
    }
    return found;
  });
}

/** Fewer traps with one count are no matter. */
const LEAST_ALIKE = 3;

/** Several traps of a farm with one count above nought on one day: the chance that so many, or more, show any one value. */
export function sameCountEverywhere(looks: readonly Look[]): RecordQuestion[] {
  const rounds = [...groupBy(looks, ({ trap, interval }) => `${trap.farm}\n${interval.to}`).values()];
  const large = rounds.filter((round) => round.length >= LEAST_ALIKE);
  return large.flatMap((round): RecordQuestion[] => {
    const alike = [
      ...groupBy(
        round.filter(({ count }) => count > 0),
        ({ count }) => String(count),
      ).values(),
    ];
    const most = alike.reduce<Look[]>((best, one) => (one.length > best.length ? one : best), []);
    if (most.length < LEAST_ALIKE) return [];
    const chance = oddEnough(chanceOfAlike(round, most.length), large.length);
    const [{ count: value, trap }, traps] = [most[0]!, most.length];
    return chance
      ? [{ kind: 'same-count-everywhere', value, traps, checks: most.map(askedCheck), farm: trap.farm, whom: 'scout', ...chance }]
      : [];
  });
}

/** Sum over values of the chance that at least `alike` of the traps show it, until larger values add nothing. */
function chanceOfAlike(round: readonly Look[], alike: number): number {
  const largest = Math.max(...round.map(({ belief }) => belief.mean + 1));
  let total = 0;
  for (let value = 1, term = 1; value <= largest || term > 1e-9; value++) {
    term = atLeastOf(
      round.map(({ belief }) => probabilityOf(value, belief)),
      alike,
    );
    total += term;
  }
  return Math.min(1, total);
}

/** Chance that at least `wanted` of independent events happen. */
function atLeastOf(chances: readonly number[], wanted: number): number {
  const exactly = new Float64Array(chances.length + 1);
  exactly[0] = 1;
  chances.forEach((p, n) => {
    for (let i = n + 1; i > 0; i--) exactly[i] = exactly[i]! * (1 - p) + exactly[i - 1]! * p;
    exactly[0]! *= 1 - p;
  });
  return exactly.subarray(wanted).reduce((sum, p) => sum + p, 0);
}

/**
 * Counts in fives. Any smooth distribution puts one count of five on the middle of 8–12, 13–17, 18–22 …, the more
 * exactly so the wider it is; so the number of 10s, 15s, 20s … among n counts is at most binomial (n, 1/5).
 */
export function roundedCounts(farms: ReadonlyMap<string, readonly CheckRecord[]>): RecordQuestion[] {
  const large = [...farms].map(([farm, checks]) => ({
    farm,
    checks: checks.filter(({ targetCount }) => targetCount !== null && targetCount >= QUALITY_ASSUMPTIONS.roundedFrom.value),
  }));
  return large.flatMap(({ farm, checks }): RecordQuestion[] => {
    const rounded = checks.filter(({ targetCount }) => targetCount! % 5 === 0);
    const [x, n] = [rounded.length, checks.length];
    const chance = oddEnough(x === 0 ? 1 : betaCdf(0.2, x, n - x + 1), large.length);
    return chance
      ? [{ kind: 'rounded-counts', rounded: x, of: n, checks: rounded.map(asWritten), farm, whom: 'scout', ...chance }]
      : [];
  });
}

export const asWritten = ({ trapId, checkedOn, targetCount, otherCount }: CheckRecord): AskedCheck => ({
  trapId,
  checkedOn,
  count: targetCount ?? 0,
  others: otherCount,
  expected: null,
  neighbours: [],
});
