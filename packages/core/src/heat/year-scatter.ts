/** How far the waits of one year lie from those of another: what the heat of a source itself shows of it. */
import { addDays, type Day, daysBetween } from '../base/day.ts';
import type { HeatTrack } from './types.ts';

/**
 * The sum of N days of heat differs between years with variance c·N·d², where d² is the variance of one day's heat about
 * the season's line: c would be 1 if days were independent; warm spells and warm years make it more. Measured over 20 days
 * from March to September, 2012–2015, Seattle 13 and New York 8 (single sine and averages of the catalogue's models): 8 is
 * taken, and weighs as `ASSUMED_FREEDOM` degrees of freedom beside what the source's own years show.
 */
const ASSUMED_PERSISTENCE = 8;
const ASSUMED_FREEDOM = 8;
/** Stretches of one year are alike in part, so that each adds less than a whole degree of freedom. Own choice. */
const FREEDOM_OF_STRETCH = 0.5;
const STRETCH_DAYS = 20;
const STRETCHES = 18;
/** A line through fewer days shows no scatter about it. */
const LEAST_DAYS = 15;

/** A warm spell lasts some days, so that c grows with N: as N/(N + 3), about what a correlation of 0.5 to 0.6 between days makes. */
const lasting = (days: number): number => days / (days + SPELL_DAYS);
const SPELL_DAYS = 3;

/** One past year: the day from which heat is summed (its wait is 1), and the wait in days and parts of one; ∞: not within the horizon. */
export interface YearWait {
  readonly first: Day;
  readonly wait: number;
}

/**
 * Variance of one more wait about the mean of all years, as the heat of the source in all its stretches has it, in days²:
 * c·N·d² over the square of the day's heat about the time of the event. Null where no wait is finite, or the days
 * show no scatter at all.
 */
export function scatterOfWaits(track: HeatTrack, years: readonly YearWait[]): number | null {
  const reached = years.filter(({ wait }) => Number.isFinite(wait));
  if (reached.length === 0) return null;
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const days = mean(reached.map(({ wait }) => wait));
  const pace = mean(reached.map(({ first, wait }) => paceAt(track, addDays(first, Math.ceil(wait) - 1))));
  const variance = mean(
    reached.map(({ first, wait }) => aboutLine(heats(track, first, Math.max(LEAST_DAYS, Math.ceil(wait)))) ?? 0),
  );
  const persistence =
    persistenceOf(
      track,
      years.map(({ first }) => first),
    ) *
    (lasting(days) / lasting(STRETCH_DAYS));
  const scatter = (persistence * days * variance) / pace ** 2;
  return scatter > 0 ? scatter : null;
}

const PACE_DAYS = 3;

/** Mean heat of the days about `on`. */
function paceAt(track: HeatTrack, on: Day): number {
  const about = heats(track, addDays(on, -PACE_DAYS), 2 * PACE_DAYS + 1).filter((heat) => !Number.isNaN(heat));
  return about.reduce((sum, heat) => sum + heat, 0) / about.length;
}

/** c, from stretches of the same dates in every year of a source, the assumed one weighed in. */
function persistenceOf(track: HeatTrack, firsts: readonly Day[]): number {
  const n = firsts.length;
  if (n < 2) return ASSUMED_PERSISTENCE;
  let [between, within, stretches] = [0, 0, 0];
  for (let s = 0; s < STRETCHES; s++) {
    const own = firsts.map((first) => heats(track, addDays(first, STRETCH_DAYS * (s - STRETCHES / 2)), STRETCH_DAYS));
    const variances = own.map(aboutLine);
    if (own.some((days) => days.length < STRETCH_DAYS) || variances.includes(null)) continue;
    const totals = own.map((days) => days.reduce((sum, heat) => sum + heat, 0));
    const mean = totals.reduce((sum, total) => sum + total, 0) / n;
    const spread = variances.reduce<number>((sum, variance) => sum + variance!, 0) / n;
    if (!(spread > 0)) continue;
    between += totals.reduce((sum, total) => sum + (total - mean) ** 2, 0) / (n - 1) / (STRETCH_DAYS * spread);
    within += 1;
    stretches += 1;
  }
  const freedom = FREEDOM_OF_STRETCH * stretches * (n - 1);
  const seen = stretches === 0 ? 0 : between / within;
  return (ASSUMED_FREEDOM * ASSUMED_PERSISTENCE + freedom * seen) / (ASSUMED_FREEDOM + freedom);
}

/** Known or not, as far as the track goes. */
function heats(track: HeatTrack, first: Day, days: number): Float64Array {
  const from = daysBetween(track.start, first);
  return track.daily.subarray(Math.max(0, from), Math.max(0, from + days));
}

/** Days that differ by no more are alike. */
const ROUNDING = 1e-12;

/** Variance of daily heat about a straight line through it; null with a day unknown or too few. */
function aboutLine(values: Float64Array): number | null {
  const n = values.length;
  if (n < LEAST_DAYS) return null;
  let [meanX, mean] = [(n - 1) / 2, 0];
  for (const value of values) mean += value / n;
  let [spread, slope, squares] = [0, 0, 0];
  for (let i = 0; i < n; i++) {
    spread += (i - meanX) ** 2;
    slope += (i - meanX) * (values[i]! - mean);
  }
  slope /= spread;
  for (let i = 0; i < n; i++) squares += (values[i]! - mean - slope * (i - meanX)) ** 2;
  if (Number.isNaN(squares)) return null;
  return squares < ROUNDING * mean ** 2 ? 0 : squares / (n - 2);
}
