/**
 * The gamma distribution with shape `a` and scale 1, from the regularised incomplete gamma function.
 *
 * Source: Abramowitz & Stegun 1964, 6.5.29 (series) and 6.5.31 (continued fraction), from memory; checked against R.
 */
import { stirlingError } from './gamma-function.ts';
import { quantile, roughNormalQuantile } from './quantile.ts';

/** P(a, x): probability that a gamma variate of shape `a` > 0 is at most `x`. */
export function gammaCdf(x: number, a: number): number {
  if (x <= 0) return 0;
  if (x === Infinity) return 1;
  const density = densityOfLog(x, a);
  return x < a + 1 ? (density * series(x, a)) / a : 1 - density * continuedFraction(x, a);
}

/** The x with P(a, x) = p, for 0 < p < 1. */
export function gammaQuantile(p: number, a: number): number {
  const firstGuess = a * Math.exp(-1 / (2 * a) + roughNormalQuantile(p) / Math.sqrt(a));
  return quantile(p, { probabilityUpTo: (x) => gammaCdf(x, a), densityOfLog: (x) => densityOfLog(x, a) }, firstGuess);
}

/** x^a·e^−x / Γ(a). */
function densityOfLog(x: number, a: number): number {
  return Math.sqrt(a / (2 * Math.PI)) * Math.exp(-deviance(a, x) - stirlingError(a));
}

/** a·ln(a/x) + x − a: how far x lies from a, never below 0. */
function deviance(a: number, x: number): number {
  const distance = (x - a) / a;
  return a * (distance - (Math.abs(distance) < 0.1 ? Math.log1p(distance) : Math.log(x / a)));
}

/** 1 + x/(a + 1) + x²/((a + 1)(a + 2)) + … */
function series(x: number, a: number): number {
  let [term, sum] = [1, 1];
  for (let n = 1; term > sum * 1e-17; n++) {
    term *= x / (a + n);
    sum += term;
  }
  return sum;
}

/** 1/(x + 1 − a − 1(1 − a)/(x + 3 − a − 2(2 − a)/(x + 5 − a − …))), by Lentz's method. */
function continuedFraction(x: number, a: number): number {
  let b = x + 1 - a;
  let c = Infinity;
  let d = 1 / b;
  let value = d;
  for (let n = 1; n < 100_000; n++) {
    const numerator = n * (a - n);
    b += 2;
    d = 1 / (b + numerator * d);
    c = b + numerator / c;
    value *= c * d;
    if (Math.abs(c * d - 1) <= 2 * Number.EPSILON) break;
  }
  return value;
}
