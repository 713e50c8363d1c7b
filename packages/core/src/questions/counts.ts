/**
 * Probabilities of a count that is negative binomial about an estimated mean.
 *
 * About a known mean m, with dispersion k, the variance is m + m²/k. An estimated mean may lie below the true one: the
 * true one is taken as m·a/G with G gamma of shape a (an inverse gamma), and the tails are averaged over it. Far tails
 * then fall as a power, as those of the ratio of two gamma variates do, and not exponentially.
 */
import { logGamma } from '../statistics/gamma-function.ts';
import { betaCdf } from '../statistics/incomplete-beta.ts';

export interface CountBelief {
  readonly mean: number;
  /** Dispersion about the true mean. */
  readonly k: number;
  /** Shape a of what is known of the mean; ∞ or absent where it is known. */
  readonly meanShape?: number;
}

/** ln P(Y = count), with the doubt about the mean taken as more scatter. */
export function logProbability(count: number, { mean, k: about, meanShape = Infinity }: CountBelief): number {
  const k = joint(about, meanShape);
  const ways = logGamma(count + k) - logGamma(k) - logGamma(count + 1);
  return ways - k * Math.log1p(mean / k) + (count === 0 ? 0 : count * Math.log(mean / (mean + k)));
}

export const probabilityOf = (count: number, belief: CountBelief): number => Math.exp(logProbability(count, belief));

/** P(Y ≥ count). About a known mean the odds m/k cut a beta variate of shapes count and k. */
export function atLeast(count: number, belief: CountBelief): number {
  if (count <= 0) return 1;
  return averaged(belief, (mean) => betaCdf(mean / (mean + belief.k), count, belief.k));
}

/** P(Y ≤ count). */
export function atMost(count: number, belief: CountBelief): number {
  return averaged(belief, (mean) => betaCdf(belief.k / (mean + belief.k), belief.k, count + 1));
}

const STEPS = 120;

/** Mean of `of` over the true mean, by the trapezoidal rule in u = ln(G/a), whose density is as exp(a(u − eᵘ)). */
function averaged({ mean, meanShape: a = Infinity }: CountBelief, of: (mean: number) => number): number {
  if (a === Infinity) return of(mean);
  const from = -Math.min(40, 5 / Math.sqrt(a) + 25 / a);
  const to = Math.log(1 + 6 / Math.sqrt(a) + 20 / a);
  let [sum, weight] = [0, 0];
  for (let i = 0; i <= STEPS; i++) {
    const u = from + ((to - from) * i) / STEPS;
    const density = Math.exp(a * (u + 1 - Math.exp(u)));
    sum += density * of(mean * Math.exp(-u));
    weight += density;
  }
  return sum / weight;
}

/** Dispersions of independent sources of scatter add up as their reciprocals. */
export const joint = (...dispersions: readonly number[]): number => 1 / dispersions.reduce((sum, k) => sum + 1 / k, 0);
