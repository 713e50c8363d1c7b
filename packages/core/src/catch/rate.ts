import { betaOddsCdf, betaOddsQuantile, betaOddsTail } from '../statistics/incomplete-beta.ts';
import { gammaCdf, gammaQuantile } from '../statistics/incomplete-gamma.ts';
import { quantile } from '../statistics/quantile.ts';
import { type DispersionBelief, knownDispersion } from './dispersion.ts';
import type { CatchSum, RateEstimate } from './types.ts';

export interface RateOptions {
  /**
   * Dispersion of the count at one visit, or what is known of it; null (and by default): no more scatter than a Poisson
   * count, gamma–Poisson.
   */
  readonly k?: number | DispersionBelief | null | undefined;
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
 * a Beta(count + ½, K) variate; without over-dispersion λ ~ Gamma(count + ½, E). Where k is known only so far, that
 * closed form holds at each k, and the answer is the mean of the answers by the probability of each.
 *
 * The interval has equal tails. When nothing was caught the shape is 1 in place of ½, and the interval runs from 0 to the
 * exact one-sided upper limit: with U moths a night, a catch of nothing would have had the probability 1 − `level`, which
 * for one k and equal nights is (1 + UE/K)^(−K). "Nothing caught" is not "nothing there".
 *
 * With no trap-nights the rate is unknown: `perNight` is NaN and the interval [0, ∞).
 *
 * Source: Brown, Cai & DasGupta 2003, Statistica Sinica 13:19–49 (from memory).
 *
 * @example estimateRate({ count: 0, trapNights: 7, sumSquaredNights: 49, visits: 1 }, { k: 2 }).high // 2(√5 − 1)/7 = 0.353
 */
export function estimateRate(sum: CatchSum, options: RateOptions = {}): RateEstimate {
  const { level = DEFAULT_LEVEL } = options;
  const belief = beliefOf(options);
  const model = belief === null ? 'gamma-poisson' : 'negative-binomial';
  const { count, trapNights, sumSquaredNights, visits } = sum;
  const shown = { count, trapNights, sumSquaredNights, visits, level, model, k: belief?.median ?? null } as const;
  if (trapNights === 0) return { ...shown, perNight: Number.NaN, low: 0, high: Infinity };
  const [low, high] = rememberedInterval(sum, belief, level);
  return { ...shown, perNight: count / trapNights, low, high };
}

/**
 * Probability that the true rate is above `thresholdPerNight` moths per trap per night, under the model of
 * `estimateRate`; NaN with no trap-nights. Where nothing was caught it is the probability of catching nothing at the
 * threshold.
 */
export function probabilityAbove(sum: CatchSum, thresholdPerNight: number, options: RateOptions = {}): number {
  if (sum.trapNights === 0) return Number.NaN;
  const belief = beliefOf(options);
  const expected = thresholdPerNight * sum.trapNights;
  const shape = shapeOf(sum);
  if (belief === null) return 1 - gammaCdf(expected, shape);
  const perK = sizePerK(sum);
  return 1 - belief.k.reduce((upTo, k, i) => upTo + belief.weight[i]! * betaOddsCdf(expected / (k * perK), shape, k * perK), 0);
}

const beliefOf = ({ k = null }: RateOptions): DispersionBelief | null => (typeof k === 'number' ? knownDispersion(k) : k);

const shapeOf = ({ count }: CatchSum): number => (count === 0 ? 1 : count + 0.5);

/** Size of the total for each unit of k. */
const sizePerK = ({ trapNights, sumSquaredNights }: CatchSum): number => trapNights ** 2 / sumSquaredNights;

/** Intervals by what they rest on: a program's fields and days show the same few sums again and again. */
const remembered = new WeakMap<DispersionBelief, Map<string, readonly [number, number]>>();

function rememberedInterval(sum: CatchSum, belief: DispersionBelief | null, level: number): readonly [number, number] {
  if (belief === null || belief.k.length === 1) return intervalOf(sum, belief, level);
  let known = remembered.get(belief);
  if (!known) {
    known = new Map();
    remembered.set(belief, known);
  }
  const key = `${sum.count} ${sum.trapNights} ${sum.sumSquaredNights} ${level}`;
  let interval = known.get(key);
  if (!interval) {
    interval = intervalOf(sum, belief, level);
    known.set(key, interval);
  }
  return interval;
}

function intervalOf(sum: CatchSum, belief: DispersionBelief | null, level: number): readonly [number, number] {
  if (sum.count === 0) return [0, rateQuantile(sum, belief, level)];
  const tail = (1 - level) / 2;
  return [rateQuantile(sum, belief, tail), rateQuantile(sum, belief, 1 - tail)];
}

/** The rate below which the true one lies with probability `q`. */
function rateQuantile(sum: CatchSum, belief: DispersionBelief | null, q: number): number {
  const shape = shapeOf(sum);
  if (belief === null) return gammaQuantile(q, shape) / sum.trapNights;
  const perK = sizePerK(sum);
  const median = belief.median * perK;
  const atMedian = median * betaOddsQuantile(q, shape, median);
  if (belief.k.length === 1) return atMedian / sum.trapNights;
  const mean = (of: (size: number) => number) => belief.k.reduce((total, k, i) => total + belief.weight[i]! * of(k * perK), 0);
  const mixture = {
    probabilityUpTo: (x: number) => mean((size) => betaOddsTail(x / size, shape, size).upTo),
    densityOfLog: (x: number) => mean((size) => betaOddsTail(x / size, shape, size).densityOfLog),
  };
  return quantile(q, mixture, atMedian, WITHIN) / sum.trapNights;
}

/** Relative error of an interval's end where k is not known: far below what is shown. */
const WITHIN = 1e-7;
