/**
 * What a plan does in a field of some true mean, exactly: probabilities of all totals still between the lines are
 * carried from one unit to the next. Nothing is approximated but by rounding.
 */
import { probabilities } from './distribution.ts';
import { nextJudged, type SequentialPlan, stopLine } from './plan.ts';
import type { Characteristic } from './wald.ts';

export interface ExactCharacteristic extends Characteristic {
  /** Probability that it ends in "above". */
  readonly above: number;
  /** Probability that it reaches the largest sample between the lines. */
  readonly undecided: number;
}

export function exactCharacteristic(plan: SequentialPlan, mean: number): ExactCharacteristic {
  const { maxSamples, test } = plan;
  const unreachable = Math.ceil(test.slope * maxSamples + test.upperIntercept) + 1;
  const perUnit = probabilities(test.distribution, mean, unreachable);
  let continuing = new Float64Array(unreachable);
  continuing[0] = 1;
  let [below, above, averageSamples] = [0, 0, 0];
  for (let n = 1; n <= maxSamples; n++) {
    averageSamples += sum(continuing);
    const line = stopLine(plan, n);
    // A total past the line at the next number of units that is judged is above already; only its units still count.
    const judged = nextJudged(plan, n);
    const ceiling = stopLine(plan, judged).above ?? unreachable;
    const next = convolve(continuing, perUnit, ceiling);
    if (line.below !== null) below += take(next, line.below);
    const over = Math.max(0, 1 - below - above - sum(next));
    above += over;
    averageSamples += over * (judged - n);
    continuing = next;
  }
  return { mean, below, above, undecided: sum(continuing), averageSamples };
}

/** The plan's characteristic at each mean, to be drawn. */
export function characteristicCurve(plan: SequentialPlan, means: readonly number[]): ExactCharacteristic[] {
  return means.map((mean) => exactCharacteristic(plan, mean));
}

/** Probabilities of the totals below `ceiling` with one unit more. */
function convolve(totals: Float64Array, perUnit: Float64Array, ceiling: number): Float64Array<ArrayBuffer> {
  const next = new Float64Array(totals.length);
  for (let total = 0; total < ceiling; total++) {
    const p = totals[total]!;
    if (p === 0) continue;
    for (let y = 0; total + y < ceiling; y++) next[total + y]! += p * perUnit[y]!;
  }
  return next;
}

/** Removes the probability of totals up to `last` and gives it. */
function take(totals: Float64Array, last: number): number {
  const taken = sum(totals.subarray(0, last + 1));
  totals.fill(0, 0, last + 1);
  return taken;
}

function sum(values: Float64Array): number {
  let total = 0;
  for (const value of values) total += value;
  return total;
}
