/** How often intervals hold a known truth, and how far estimates stray, over seeded simulations. */
import { randomFrom } from '../statistics/random.testing.ts';
import { catchToInfestation } from './catch-to-infestation.ts';
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
}

export function coverage(seeds: number, truth: number, answer: (seed: number) => Estimate | null): Coverage {
  let [answered, held, error] = [0, 0, 0];
  for (let seed = 1; seed <= seeds; seed++) {
    const estimate = answer(seed);
    if (estimate === null) continue;
    answered++;
    if (estimate.low <= truth && truth <= estimate.high) held++;
    error += estimate.value - truth;
  }
  return { seeds, answered, held: held / answered, bias: error / answered };
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

/** Of the lag in days. */
export function lagCoverage(seeds: number, truth: Parameters<typeof inventedInfestation>[1]): Coverage {
  return coverage(seeds, truth.lag, (seed) => {
    const found = catchToInfestation(inventedInfestation(randomFrom(seed), truth), LAGS);
    return found.known ? found.lag : null;
  });
}
