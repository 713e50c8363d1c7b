import { betaOddsCdf, betaOddsQuantile } from '../statistics/incomplete-beta.ts';
import { gammaCdf, gammaQuantile } from '../statistics/incomplete-gamma.ts';
import type { CatchSum, RateEstimate } from './types.ts';

export interface RateOptions {
  /** Dispersion of the count at one visit; null (and by default): no more scatter than a Poisson count, gamma–Poisson. */
  readonly k?: number | null | undefined;
  /** Credible level of the interval, 0.8 by default. */
  readonly level?: number | undefined;
}

export const DEFAULT_LEVEL = 0.8;

/**
 * Moths per trap per night with a credible interval.
 *
 * A visit after n nights counts NB(mean λn, dispersion k). The total over E trap-nights is matched to one negative
 * binomial of mean λE and size K = k·E²/Σn², which keeps its variance λE + λ²Σn²/k and is exact when all visits
 * cover equally many nights. With p = K/(K + λE), Jeffreys' prior gives p ~ Beta(K, count + ½), so λE/K has the odds of
 * a Beta(count + ½, K) variate; without over-dispersion λ ~ Gamma(count + ½, E).
 *
 * The interval has equal tails. When nothing was caught it runs from 0 to the one-sided upper limit at `level`.
 * With no trap-nights the rate is unknown: `perNight` is NaN and the interval [0, ∞).
 *
 * Source: Brown, Cai & DasGupta 2003, Statistica Sinica 13:19–49 (from memory).
 */
export function estimateRate(sum: CatchSum, options: RateOptions = {}): RateEstimate {
  const { k = null, level = DEFAULT_LEVEL } = options;
  const model = k === null ? 'gamma-poisson' : 'negative-binomial';
  const { count, trapNights, sumSquaredNights, visits } = sum;
  const shown = { count, trapNights, sumSquaredNights, visits, level, model, k } as const;
  if (trapNights === 0) return { ...shown, perNight: Number.NaN, low: 0, high: Infinity };
  const tail = (1 - level) / 2;
  const [low, high] =
    count === 0 ? [0, rateQuantile(sum, k, level)] : [rateQuantile(sum, k, tail), rateQuantile(sum, k, 1 - tail)];
  return { ...shown, perNight: count / trapNights, low, high };
}

/**
 * Probability that the true rate is above `thresholdPerNight` moths per trap per night, under the model of
 * `estimateRate`; NaN with no trap-nights.
 */
export function probabilityAbove(sum: CatchSum, thresholdPerNight: number, options: RateOptions = {}): number {
  const { count, trapNights } = sum;
  const { k = null } = options;
  if (trapNights === 0) return Number.NaN;
  const expected = thresholdPerNight * trapNights;
  if (k === null) return 1 - gammaCdf(expected, count + 0.5);
  const size = sizeOfTotal(sum, k);
  return 1 - betaOddsCdf(expected / size, count + 0.5, size);
}

function sizeOfTotal({ trapNights, sumSquaredNights }: CatchSum, k: number): number {
  return (k * trapNights ** 2) / sumSquaredNights;
}

/** The rate below which the true one lies with probability `q`. */
function rateQuantile(sum: CatchSum, k: number | null, q: number): number {
  const shape = sum.count + 0.5;
  if (k === null) return gammaQuantile(q, shape) / sum.trapNights;
  const size = sizeOfTotal(sum, k);
  return (size * betaOddsQuantile(q, shape, size)) / sum.trapNights;
}
