/**
 * The beta distribution, from the regularised incomplete beta function.
 *
 * Source: NIST DLMF 8.17.4 (symmetry), 8.17.22 (continued fraction, evaluated by Lentz's method); the common factor
 * about its saddle point after Loader 2000, which stays exact for large shapes (from memory). Checked against R.
 */
import { stirlingError } from './gamma-function.ts';
import { roughNormalQuantile } from './quantile.ts';

/** I_x(a, b): probability that a beta variate with shapes `a` > 0 and `b` > 0 is at most `x`. */
export function betaCdf(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  return tails(x, 1 - x, a, b).lower;
}

/** The x with I_x(a, b) = p, for 0 ≤ p ≤ 1. */
export function betaQuantile(p: number, a: number, b: number): number {
  if (p <= 0) return 0;
  if (p >= 1) return 1;
  return solve(p, a, b)[0];
}

/** Probability that the odds w/(1 − w) of a beta variate w are at most `odds`; keeps its digits where 1 − w is tiny. */
export function betaOddsCdf(odds: number, a: number, b: number): number {
  if (odds <= 0) return 0;
  if (odds === Infinity) return 1;
  return tails(odds / (1 + odds), 1 / (1 + odds), a, b).lower;
}

/** The same probability with its density per unit of ln odds. */
export function betaOddsTail(odds: number, a: number, b: number): { readonly upTo: number; readonly densityOfLog: number } {
  const { lower, slope } = tails(odds / (1 + odds), 1 / (1 + odds), a, b);
  return { upTo: lower, densityOfLog: slope };
}

/** The odds up to which there is probability `p`, for 0 ≤ p ≤ 1. */
export function betaOddsQuantile(p: number, a: number, b: number): number {
  if (p <= 0) return 0;
  if (p >= 1) return Infinity;
  const [x, y] = solve(p, a, b);
  return x / y;
}

/**
 * x and 1 − x with I_x(a, b) = p.
 *
 * On the axis z = ln(x/(1 − x)) the logarithm of either tail is concave, so Newton's method on the smaller tail
 * converges from any start; x and 1 − x are carried side by side, so that neither end loses digits.
 */
function solve(p: number, a: number, b: number): [x: number, y: number] {
  let [x, y] = firstGuess(p, a, b);
  for (let i = 0; i < MAX_STEPS && x > 0 && y > 0; i++) {
    const { lower, upper, slope } = tails(x, y, a, b);
    const step = p < 0.5 ? (Math.log(p / lower) * lower) / slope : (Math.log(upper / (1 - p)) * upper) / slope;
    const odds = x * Math.exp(step);
    const [leastX, leastY] = [x * Math.exp(-FARTHEST / a), y * Math.exp(-FARTHEST / b)];
    if (odds < leastX * (odds + y)) [x, y] = [leastX, 1 - leastX];
    else if (y < leastY * (odds + y)) [x, y] = [1 - leastY, leastY];
    else [x, y] = [odds / (odds + y), y / (odds + y)];
    if (Math.abs(step) < 1e-9) break;
  }
  return [x, y];
}

const MAX_STEPS = 200;
/** One step takes neither tail down by more than about e⁻⁶⁰⁰, so that none underflows from a poor start. */
const FARTHEST = 600;

/** Both tails at x = 1 − y, the smaller one to full precision, and their slope dI/dz. */
function tails(x: number, y: number, a: number, b: number): { lower: number; upper: number; slope: number } {
  const slope = factor(x, y, a, b);
  if (x < (a + 1) / (a + b + 2)) {
    const lower = (slope * continuedFraction(x, a, b)) / a;
    return { lower, upper: 1 - lower, slope };
  }
  const upper = (slope * continuedFraction(y, b, a)) / b;
  return { lower: 1 - upper, upper, slope };
}

/** x^a·y^b / B(a, b). */
function factor(x: number, y: number, a: number, b: number): number {
  const distance = x * b - y * a;
  const n = a + b;
  const exponent = a * deviance(distance / a, (x * n) / a) + b * deviance(-distance / b, (y * n) / b) + errorOfShapes(a, b);
  return Math.exp(-exponent) * Math.sqrt(((a / n) * b) / (2 * Math.PI));
}

/** A quantile, or a mean over many x, asks for the same shapes time and again. */
let latest = { a: Number.NaN, b: Number.NaN, error: Number.NaN };
function errorOfShapes(a: number, b: number): number {
  if (a !== latest.a || b !== latest.b) latest = { a, b, error: stirlingError(a) + stirlingError(b) - stirlingError(a + b) };
  return latest.error;
}

/** u − ln(1 + u), given u and 1 + u apart, because either can be the precise one. */
function deviance(u: number, onePlusU: number): number {
  return u - (Math.abs(u) < 0.1 ? Math.log1p(u) : Math.log(onePlusU));
}

/** Lentz's evaluation of 1/(1 + d₁/(1 + d₂/(1 + …))), which converges fast for x < (a + 1)/(a + b + 2). */
function continuedFraction(x: number, a: number, b: number): number {
  let c = 1;
  let d = 1 / (1 - ((a + b) * x) / (a + 1));
  let value = d;
  for (let m = 1; m < 100_000; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / (1 + even * d);
    c = 1 + even / c;
    value *= c * d;
    d = 1 / (1 + odd * d);
    c = 1 + odd / c;
    value *= c * d;
    if (Math.abs(c * d - 1) <= 2 * Number.EPSILON) break;
  }
  return value;
}

/** x and 1 − x not far from the quantile: the log-odds taken as normal, or the mean for a shape below 1. */
function firstGuess(p: number, a: number, b: number): [x: number, y: number] {
  if (a <= 1 || b <= 1) return [a / (a + b), b / (a + b)];
  const odds = (a / b) * Math.exp(1 / (2 * b) - 1 / (2 * a) + roughNormalQuantile(p) * Math.sqrt(1 / a + 1 / b));
  return [odds / (1 + odds), 1 / (1 + odds)];
}
