/**
 * The odds x = w/(1 − w) of a beta variate w ~ Beta(a, b), from the regularised incomplete beta function. Odds keep
 * their digits where w or 1 − w is tiny.
 *
 * Source: Abramowitz & Stegun 1964, 26.5.8 (continued fraction), from memory; checked against R.
 */
import { quantile, roughNormalQuantile } from './quantile.ts';
import { deviance, stirlingError } from './stirling.ts';

/** Probability that the odds of a Beta(a, b) variate, a and b > 0, are at most `odds`. */
export function betaOddsCdf(odds: number, a: number, b: number): number {
  if (odds <= 0) return 0;
  if (odds === Infinity) return 1;
  const density = densityOfLog(odds, a, b);
  return odds * (b + 1) < a + 1
    ? (density / a) * continuedFraction(odds / (1 + odds), a, b)
    : 1 - (density / b) * continuedFraction(1 / (1 + odds), b, a);
}

/** The odds up to which there is probability `p`, 0 < p < 1. */
export function betaOddsQuantile(p: number, a: number, b: number): number {
  const spread = Math.sqrt(1 / a + 1 / b);
  const firstGuess = (a / b) * Math.exp(1 / (2 * b) - 1 / (2 * a) + roughNormalQuantile(p) * spread);
  const distribution = {
    probabilityUpTo: (odds: number) => betaOddsCdf(odds, a, b),
    densityOfLog: (odds: number) => densityOfLog(odds, a, b),
  };
  return quantile(p, distribution, firstGuess);
}

/** w^a·(1 − w)^b / B(a, b). */
function densityOfLog(odds: number, a: number, b: number): number {
  const n = a + b;
  const misfit = deviance(a, (n * odds) / (1 + odds)) + deviance(b, n / (1 + odds));
  const correction = stirlingError(n) - stirlingError(a) - stirlingError(b);
  return Math.sqrt((a * b) / (2 * Math.PI * n)) * Math.exp(correction - misfit);
}

/** 1/(1 + d₁/(1 + d₂/(1 + …))), by Lentz's method. */
function continuedFraction(w: number, a: number, b: number): number {
  let c = 1;
  let d = 1 / (1 - ((a + b) * w) / (a + 1));
  let value = d;
  for (let m = 1; m < 100_000; m++) {
    const even = (m * (b - m) * w) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / (1 + even * d);
    c = 1 + even / c;
    value *= c * d;
    const odd = (-(a + m) * (a + b + m) * w) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / (1 + odd * d);
    c = 1 + odd / c;
    value *= c * d;
    if (Math.abs(c * d - 1) <= 2 * Number.EPSILON) break;
  }
  return value;
}
