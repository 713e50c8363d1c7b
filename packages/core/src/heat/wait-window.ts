/** From the days an event took in each of some years to the days it may take in one more. */
import { studentCdf, studentLimit } from '../statistics/student.ts';

/** Days until an event: not before `early` in nine cases of ten, not after `late` in nine of ten. */
export interface WaitWindow {
  readonly early: number;
  readonly middle: number;
  readonly late: number;
}

/** Waits of past years in ascending order, in days and parts of one (Infinity: not within the horizon); at least one. */
export interface PastWaits {
  readonly sorted: readonly number[];
  /** Variance of one more wait as the source's heat shows it beside these (`scatterOfWaits`), in days²; null: it shows nothing. */
  readonly variance: number | null;
}

const EARLY = 0.1;
const MIDDLE = 0.5;
const LATE = 0.9;
/** From nine years on, Weibull's positions 1/(n + 1) … n/(n + 1) reach the 10 and the 90 % point. */
const YEARS_FOR_ORDER = 9;
/** Degrees of freedom of the variance that the heat shows beside the waits of an event. Own choice, see docs/forecast-skill.md. */
const HEAT_FREEDOM = 8;

/**
 * The 80 % window of one more wait, in whole days.
 *
 * With nine or more waits it is read off them in order. With fewer, the range of n values holds the next one only with
 * probability (n − 1)/(n + 1), a half for three years, and their own variance has n − 1 degrees of freedom; so the waits
 * are taken as a sample of a normal distribution whose variance is known beforehand from all of the source's heat, with
 * eight degrees of freedom, and the window is the prediction interval of one more, mean ± t(n + 7)·s·√(1 + 1/n).
 *
 * A wait of 4.3 days ends on the fifth day. The limits are rounded so that on average a window holds as many days as it
 * is wide, and always the middle one.
 *
 * Source: prediction interval of one more observation, e.g. Hahn & Meeker 1991, Statistical Intervals, ch. 4; prior
 * variance as a scaled inverse χ², e.g. Gelman et al., Bayesian Data Analysis (both from memory). How well it does is in
 * docs/forecast-skill.md.
 */
export function waitWindow(past: PastWaits): WaitWindow {
  const { sorted } = past;
  if (byOrder(sorted)) return wholeDays(...quantilesOf(sorted));
  const { mean, spread, freedom } = predictive(past);
  const reach = studentLimit(LATE - EARLY, freedom) * spread;
  return wholeDays(mean - reach, mean, mean + reach);
}

/** The 80 % window as the ordered waits alone give it: too narrow with fewer than nine. */
export const orderedWindow = (sorted: readonly number[]): WaitWindow => wholeDays(...quantilesOf(sorted));

/** Probability that one more event has come by the end of so many days, by the same reading of the waits as `waitWindow`. */
export function chanceWithin(past: PastWaits, days: number): number {
  const { sorted } = past;
  if (byOrder(sorted)) return sorted.filter((wait) => wait <= days).length / sorted.length;
  const { mean, spread, freedom } = predictive(past);
  // Years that are alike to the hour leave nothing to chance.
  return spread === 0 ? (days < mean ? 0 : 1) : studentCdf((days - mean) / spread, freedom);
}

const byOrder = (sorted: readonly number[]): boolean =>
  sorted.length >= YEARS_FOR_ORDER || sorted.at(-1) === Number.POSITIVE_INFINITY;

const quantilesOf = (sorted: readonly number[]) =>
  [EARLY, MIDDLE, LATE].map((p) => orderedQuantile(sorted, p)) as [number, number, number];

export function wholeDays(low: number, middle: number, high: number): WaitWindow {
  const ends = Math.ceil(middle);
  return { early: Math.min(ends, Math.round(low) + 1), middle: ends, late: Math.max(ends, Math.round(high)) };
}

function predictive({ sorted, variance }: PastWaits): { mean: number; spread: number; freedom: number } {
  const n = sorted.length;
  const mean = sorted.reduce((sum, wait) => sum + wait, 0) / n;
  const squares = sorted.reduce((sum, wait) => sum + (wait - mean) ** 2, 0);
  const beforehand = variance === null ? 0 : HEAT_FREEDOM;
  const freedom = beforehand + n - 1;
  const pooled = (beforehand * (variance ?? 0) + squares) / freedom;
  return { mean, spread: Math.sqrt(pooled * (1 + 1 / n)), freedom };
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
