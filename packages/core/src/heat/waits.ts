/** How many days the heat still to come takes: in other years, or at the pace of the last days. */
import { addDays, type Day, dayOf, partsOf, yearOf } from '../base/day.ts';
import { degreeDaysIn } from '../base/temperature.ts';
import type { HeatTrack } from './types.ts';
import type { PastWaits, WaitWindow } from './wait-window.ts';
import { scatterOfWaits, type YearWait } from './year-scatter.ts';

/** An event further off than this is not dated. Common practice, no source. */
export const PROJECTION_HORIZON_DAYS = 200;
/** Last days that speak where past years do not; at least half of them must be known. Common practice, no source. */
export const PROJECTION_RECENT_DAYS = 14;
/** Standard normal deviate exceeded one time in ten. */
const Z_90 = 1.2815515655446004;

/** The years before that of `next` which the series holds from the same date on, newest first. */
export function pastYears(track: HeatTrack, next: Day): number[] {
  const years: number[] = [];
  for (let year = yearOf(next) - 1; sameDayIn(year, next) >= track.start; year--) years.push(year);
  return years;
}

/**
 * Days from the beginning of the date of `next` that `remaining` degree-days take in each of `years`; Infinity where past
 * the horizon. A year with a gap before the heat has come says nothing and is left out.
 */
export function waitsInYears(track: HeatTrack, next: Day, remaining: number, years: readonly number[]): PastWaits {
  const waits: YearWait[] = [];
  for (const year of years) {
    const first = sameDayIn(year, next);
    const last = addDays(first, PROJECTION_HORIZON_DAYS - 1);
    const reached = track.dayReaching(first, remaining);
    if (reached !== null && reached <= last) waits.push({ first, wait: waitUntil(track, first, reached, remaining) });
    else if (track.total(first, last).ok) waits.push({ first, wait: Number.POSITIVE_INFINITY });
  }
  return pastWaits(track, waits);
}

/** Waits of past years with what the heat of the source shows of their scatter. */
export const pastWaits = (track: HeatTrack, waits: readonly YearWait[]): PastWaits => ({
  sorted: waits.map(({ wait }) => wait).sort((a, b) => a - b),
  variance: scatterOfWaits(track, waits),
});

/** Days from the beginning of `first` until the heat was there, some way through the day `reached`. */
export function waitUntil(track: HeatTrack, first: Day, reached: Day, heat: number): number {
  const before = track.total(first, addDays(reached, -1));
  const ofDay = track.daily[reached - track.start]!;
  return reached - first + (before.ok && ofDay > 0 ? Math.min(1, Math.max(1e-9, (heat - before.degreeDays) / ofDay)) : 1);
}

/** The same date in another year; 29 February becomes 1 March. */
export function sameDayIn(year: number, on: Day): Day {
  const { month, date } = partsOf(on);
  return dayOf(year, month, date);
}

/**
 * Correlation of a day's heat with the next day's, within two weeks; 0.54 in Seattle and 0.47 in New York, April to
 * September 2012–2015 (single sine, 10/30 °C).
 */
const DAY_TO_DAY_CORRELATION = 0.5;
/**
 * How much the daily heat rises or falls per day as the season goes on, root mean square from one fortnight to the next;
 * 0.147 °C·d in Seattle and 0.169 in New York, in the same months and by the same rule.
 */
const SEASONAL_DRIFT_C = 0.15;

/**
 * Waits after `end` at the pace m of the last days: after n days the sum is expected at n·m. Its variance has three
 * parts: the days to come, n·s²; the mean itself, n²·s²/k, from k days seen (both times (1 + ρ)/(1 − ρ), because a warm
 * day follows a warm day); and the season, (d·n²/2)², because spring warms and autumn cools. Null when too few of the
 * days are known.
 */
export function recentWaits(track: HeatTrack, end: Day, remaining: number): WaitWindow | null {
  const past = end - track.start + 1;
  const heats = track.daily.subarray(Math.max(0, past - PROJECTION_RECENT_DAYS), past).filter((heat) => !Number.isNaN(heat));
  const k = heats.length;
  if (k < PROJECTION_RECENT_DAYS / 2) return null;
  const mean = heats.reduce((sum, heat) => sum + heat, 0) / k;
  const deviation = Math.sqrt(heats.reduce((sum, heat) => sum + (heat - mean) ** 2, 0) / (k - 1));
  const persistence = (1 + DAY_TO_DAY_CORRELATION) / (1 - DAY_TO_DAY_CORRELATION);
  const drift = degreeDaysIn(SEASONAL_DRIFT_C, track.rule.unit);
  const spreadAfter = (n: number): number =>
    Math.sqrt(persistence * deviation ** 2 * (n + (n * n) / k) + ((drift * n * n) / 2) ** 2);
  const firstDay = (deviate: number): number => {
    for (let n = 1; n <= PROJECTION_HORIZON_DAYS; n++) if (n * mean + deviate * spreadAfter(n) >= remaining) return n;
    return Number.POSITIVE_INFINITY;
  };
  return { early: firstDay(Z_90), middle: firstDay(0), late: firstDay(-Z_90) };
}
