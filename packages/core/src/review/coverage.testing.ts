/** How often intervals hold a known truth, and how far estimates stray, over seeded simulations. */

import { randomFrom } from '../statistics/random.testing.ts';
import { studentLimit } from '../statistics/student.ts';
import { catchToInfestation } from './catch-to-infestation.ts';
import { expectedAt } from './infestation-fit.ts';
import { inventedInfestation, inventedLures, inventedSideBySide } from './invented.testing.ts';
import type { Estimate } from './learned.ts';
import { lureDecay } from './lure-decay.ts';
import { compareSideBySide } from './side-by-side.ts';

export interface Coverage {
  readonly seeds: number;
  /** Seeds that gave an answer. */
  readonly answered: number;
  /** Share of the answers whose interval holds the truth. */
  readonly held: number;
  /** Mean of estimate − truth. */
  readonly bias: number;
  /** Mean of the intervals' widths. */
  readonly meanWidth: number;
}

export function coverage(seeds: number, truth: number, answer: (seed: number) => Estimate | null): Coverage {
  let [answered, held, error, width] = [0, 0, 0, 0];
  for (let seed = 1; seed <= seeds; seed++) {
    const estimate = answer(seed);
    if (estimate === null) continue;
    answered++;
    if (estimate.low <= truth && truth <= estimate.high) held++;
    error += estimate.value - truth;
    width += estimate.high - estimate.low;
  }
  return { seeds, answered, held: held / answered, bias: error / answered, meanWidth: width / answered };
}

/** Of ln(ratio). */
export function ratioCoverage(seeds: number, truth: Parameters<typeof inventedSideBySide>[1]): Coverage {
  return coverage(seeds, Math.log(truth.ratio), (seed) => {
    const found = compareSideBySide(inventedSideBySide(randomFrom(seed), truth));
    if (!found.known) return null;
    const { value, low, high, level } = found.ratios[0]!.ratio;
    // The wire cone is what buckets are held against.
    return { value: -Math.log(value), low: -Math.log(high), high: -Math.log(low), level };
  });
}

/** Of the change of ln(catch) per day. */
export function decayCoverage(seeds: number, truth: Parameters<typeof inventedLures>[1]): Coverage {
  return coverage(seeds, truth.perDay, (seed) => {
    const found = lureDecay(inventedLures(randomFrom(seed), truth));
    return found.known ? found.perDay : null;
  });
}

export const LAGS = { ruleLevel: 0.15, lags: Array.from({ length: 16 }, (_, i) => 2 * i), window: 5 };

/** Of ln of the odds of infestation at a catch of `perNight`, on the line fitted at the true lag's own likelihood. */
export function shareCoverage(seeds: number, truth: Parameters<typeof inventedInfestation>[1], perNight: number): Coverage {
  // Fields differ: their mean share is not the share of a mean field.
  const mean = meanShare(truth.intercept + truth.slope * Math.log1p(perNight), truth.fieldSd ?? 0.2);
  return coverage(seeds, mean, (seed) => {
    const found = catchToInfestation(inventedInfestation(randomFrom(seed), truth), LAGS);
    if (!found.known) return null;
    const limit = studentLimit(0.8, found.fit.freedom);
    return { ...expectedAt(found.fit, perNight, { response: 'share-infested', limit }), level: 0.8 };
  });
}

/** Mean of the logistic function over a normal deviate, by the middle of equal steps. */
function meanShare(logOdds: number, sd: number): number {
  const steps = Array.from({ length: 801 }, (_, i) => -4 + i / 100);
  const weights = steps.map((z) => Math.exp((-z * z) / 2));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return steps.reduce((sum, z, i) => sum + weights[i]! / (1 + Math.exp(-(logOdds + sd * z))), 0) / total;
}

/** Of the lag in days. */
export function lagCoverage(seeds: number, truth: Parameters<typeof inventedInfestation>[1]): Coverage {
  return coverage(seeds, truth.lag, (seed) => {
    const found = catchToInfestation(inventedInfestation(randomFrom(seed), truth), LAGS);
    return found.known ? found.lag : null;
  });
}
