import { betaCdf, betaQuantile } from '../statistics/incomplete-beta.ts';

/** Student's t quantile for 0 < p < 1, from t² = ν(1 − b)/b with b ~ Beta(ν/2, ½). */
export function studentQuantile(p: number, freedom: number): number {
  if (p < 0.5) return -studentQuantile(1 - p, freedom);
  const b = betaQuantile(2 * (1 - p), freedom / 2, 0.5);
  return Math.sqrt((freedom * (1 - b)) / b);
}

/** Probability that Student's t is at most `t`. */
export function studentCdf(t: number, freedom: number): number {
  const tail = betaCdf(freedom / (freedom + t * t), freedom / 2, 0.5) / 2;
  return t < 0 ? tail : 1 - tail;
}
