/** Probabilities of a negative binomial count with mean m and dispersion k: variance m + m²/k. */
import { logGamma } from '../statistics/gamma-function.ts';
import { betaCdf } from '../statistics/incomplete-beta.ts';

export interface CountBelief {
  readonly mean: number;
  readonly k: number;
}

export function logProbability(count: number, { mean, k }: CountBelief): number {
  const ways = logGamma(count + k) - logGamma(k) - logGamma(count + 1);
  return ways - k * Math.log1p(mean / k) + (count === 0 ? 0 : count * Math.log(mean / (mean + k)));
}

export const probabilityOf = (count: number, belief: CountBelief): number => Math.exp(logProbability(count, belief));

/** P(Y ≥ count): the odds of a beta variate, DLMF 8.17.24 in other words. */
export function atLeast(count: number, { mean, k }: CountBelief): number {
  return count <= 0 ? 1 : betaCdf(mean / (mean + k), count, k);
}

/** P(Y ≤ count). */
export function atMost(count: number, { mean, k }: CountBelief): number {
  return betaCdf(k / (mean + k), k, count + 1);
}

/** Dispersions of independent sources of scatter add up as their reciprocals. */
export const joint = (...dispersions: readonly number[]): number => 1 / dispersions.reduce((sum, k) => sum + 1 / k, 0);
