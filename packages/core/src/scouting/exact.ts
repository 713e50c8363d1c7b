/**
 * What a plan does in a field of some true mean, exactly: probabilities of all totals still between the lines are
 * carried from one place to the next. Nothing is approximated but by rounding.
 */
import { placeProbabilities } from './distribution.ts';
import { nextJudged, type SequentialPlan, stopLine } from './plan.ts';
import type { Characteristic } from './wald.ts';

export interface ExactCharacteristic extends Characteristic {
  /** Probability that it ends in "above". */
  readonly above: number;
  /** Probability that it reaches the largest sample between the lines. */
  readonly undecided: number;
}

/** `correlation`: of the units at one place in the field walked; left out: as the plan takes it. */
export function exactCharacteristic(
  plan: SequentialPlan,
  mean: number,
  correlation: number = plan.correlation,
): ExactCharacteristic {
  const { maxSamples, perPlace, test } = plan;
  const unreachable = Math.ceil(test.slope * maxSamples + test.upperIntercept) + 1;
  const atPlace = (units: number) => placeProbabilities(test.distribution, mean, units, correlation, unreachable);
  const fullPlace = atPlace(perPlace);
  let continuing = new Float64Array(unreachable);
  continuing[0] = 1;
  let [below, above, averageSamples] = [0, 0, 0];
  for (let before = 0; before < maxSamples; before += perPlace) {
    const n = Math.min(maxSamples, before + perPlace);
    averageSamples += sum(continuing) * (n - before);
    const line = stopLine(plan, n);
    // A total past the line at the next number of units that is judged is above already; only its units still count.
    const judged = nextJudged(plan, n);
    const ceiling = stopLine(plan, judged).above ?? unreachable;
    const next = convolve(continuing, n - before === perPlace ? fullPlace : atPlace(n - before), ceiling);
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

/** Probabilities of the totals below `ceiling` with one place more. */
function convolve(totals: Float64Array, perPlace: Float64Array, ceiling: number): Float64Array<ArrayBuffer> {
  const next = new Float64Array(totals.length);
  for (let total = 0; total < ceiling; total++) {
    const p = totals[total]!;
    if (p === 0) continue;
    for (let y = 0; total + y < ceiling; y++) next[total + y]! += p * perPlace[y]!;
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
