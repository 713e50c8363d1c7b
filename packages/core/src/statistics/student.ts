import { betaCdf, betaOddsQuantile } from './incomplete-beta.ts';
import { gammaQuantile } from './incomplete-gamma.ts';

/**
 * The t with P(|T| ≤ t) = level, for Student's distribution with `df` degrees of freedom (∞: normal).
 * T²/df has the odds of a beta variate; squared, a normal variate is a gamma one. Checked against R.
 */
export function studentLimit(level: number, df: number): number {
  return Math.sqrt(df === Infinity ? 2 * gammaQuantile(level, 0.5) : df * betaOddsQuantile(level, 0.5, df / 2));
}

/** Probability that Student's t with `df` (finite) degrees of freedom is at most `t`. Checked against R. */
export function studentCdf(t: number, df: number): number {
  const tail = betaCdf(df / (df + t * t), df / 2, 0.5) / 2;
  return t < 0 ? tail : 1 - tail;
}
