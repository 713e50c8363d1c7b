/** From the days an event took in each of some years to the days it may take in one more. */
import { studentCdf, studentQuantile } from './student.ts';

/** Days until an event: not before `early` in nine cases of ten, not after `late` in nine of ten. */
export interface WaitWindow {
  readonly early: number;
  readonly middle: number;
  readonly late: number;
}

const EARLY = 0.1;
const MIDDLE = 0.5;
const LATE = 0.9;
/** From nine years on, Weibull's positions 1/(n + 1) … n/(n + 1) reach the 10 and the 90 % point. */
const YEARS_FOR_ORDER = 9;
/** Variance of rounding to whole days (Sheppard's correction). */
const ROUNDING_VARIANCE = 1 / 12;

/**
 * The 80 % window of one more wait, from waits in ascending order (at least two; Infinity: not within the horizon).
 *
 * With nine or more it is read off the ordered waits. With fewer, the range of n values holds the next one only with
 * probability (n − 1)/(n + 1), a half for three years; so the waits are taken as a sample of a normal distribution and
 * the window is its prediction interval, mean ± t(n − 1)·s·√(1 + 1/n), which holds the next one with 80 % at any n.
 *
 * Source: prediction interval of one more observation, e.g. Hahn & Meeker 1991, Statistical Intervals, ch. 4 (from
 * memory). How well it does on real weather is in docs/forecast-skill.md.
 */
export function waitWindow(sorted: readonly number[]): WaitWindow {
  if (sorted.length >= YEARS_FOR_ORDER || sorted.at(-1) === Number.POSITIVE_INFINITY) return orderedWindow(sorted);
  const { mean, spread, freedom } = predictive(sorted);
  const reach = studentQuantile(LATE, freedom) * spread;
  return { early: Math.round(mean - reach), middle: Math.round(mean), late: Math.round(mean + reach) };
}

/** The 80 % window as the ordered waits alone give it: too narrow with fewer than nine. */
export function orderedWindow(sorted: readonly number[]): WaitWindow {
  return {
    early: Math.floor(orderedQuantile(sorted, EARLY)),
    middle: Math.round(orderedQuantile(sorted, MIDDLE)),
    late: Math.ceil(orderedQuantile(sorted, LATE)),
  };
}

/** Probability that one more wait is at most `days`, by the same reading of the waits as `waitWindow`. */
export function chanceWithin(sorted: readonly number[], days: number): number {
  if (sorted.length < YEARS_FOR_ORDER && sorted.at(-1) !== Number.POSITIVE_INFINITY) {
    const { mean, spread, freedom } = predictive(sorted);
    return studentCdf((days + 0.5 - mean) / spread, freedom);
  }
  return sorted.filter((wait) => wait <= days).length / sorted.length;
}

function predictive(waits: readonly number[]): { mean: number; spread: number; freedom: number } {
  const n = waits.length;
  const mean = waits.reduce((sum, wait) => sum + wait, 0) / n;
  const variance = waits.reduce((sum, wait) => sum + (wait - mean) ** 2, 0) / (n - 1) + ROUNDING_VARIANCE;
  return { mean, spread: Math.sqrt(variance * (1 + 1 / n)), freedom: n - 1 };
}

/**
 * Quantile by Weibull's plotting positions, p(n + 1), held to the smallest and largest value: a new year is as likely to
 * fall below the smallest of n as into any other space between them. Type 6 of Hyndman & Fan 1996, Am. Stat. 50:361–365.
 */
function orderedQuantile(sorted: readonly number[], p: number): number {
  const position = Math.min(sorted.length, Math.max(1, p * (sorted.length + 1)));
  const below = sorted[Math.floor(position) - 1]!;
  const above = sorted[Math.ceil(position) - 1]!;
  return below === above ? below : below + (position - Math.floor(position)) * (above - below);
}
