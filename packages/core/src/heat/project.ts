import { addDays, type Day, dayOf, formatDay, yearOf } from '../units/day.ts';
import type { HeatTrack, Projection } from './types.ts';

/** An event further off than this is not dated. Common practice, no source. */
export const PROJECTION_HORIZON_DAYS = 200;
/** Past years needed before they speak for this one. Common practice, no source. */
export const PROJECTION_MIN_YEARS = 2;
/** Last days that speak where past years do not; at least half of them must be known. Common practice, no source. */
export const PROJECTION_RECENT_DAYS = 14;

const EARLY = 0.1;
const MIDDLE = 0.5;
const LATE = 0.9;
/** Standard normal deviate exceeded one time in ten. */
const Z_90 = 1.2815515655446004;

/**
 * When `remaining` degree-days (unit of the rule, above 0) more will have come after `track.end`.
 *
 * Each past year at the source, from the same calendar day on, is one equally likely continuation; early, middle and
 * late are the 10, 50 and 90 % points of the days they take. With fewer than two such years, the mean of the last 14
 * days is carried on instead. Only days up to `track.end` are used. Null when the middle case does not come within the
 * horizon, when neither past nor recent days are known, or when nothing remains.
 */
export function projectEvent(track: HeatTrack, remaining: number): Projection | null {
  if (track.end === null || !(remaining > 0)) return null;
  const past = daysInPastYears(track, track.end, remaining);
  const yearsSpeak = past.length >= PROJECTION_MIN_YEARS;
  const waits = yearsSpeak ? waitsOf(past) : recentWaits(track, track.end, remaining);
  if (waits === null || waits.middle > PROJECTION_HORIZON_DAYS) return null;
  const lateOpen = waits.late > PROJECTION_HORIZON_DAYS;
  return {
    early: addDays(track.end, waits.early),
    middle: addDays(track.end, waits.middle),
    late: addDays(track.end, lateOpen ? PROJECTION_HORIZON_DAYS : waits.late),
    lateOpen,
    method: yearsSpeak ? 'past-years' : 'recent-days',
    years: yearsSpeak ? past.length : 0,
  };
}

interface Waits {
  readonly early: number;
  readonly middle: number;
  readonly late: number;
}

/** Days each earlier year would take, ascending; Infinity where past the horizon. A year with a gap before then is out. */
function daysInPastYears(track: HeatTrack, end: Day, remaining: number): number[] {
  const waits: number[] = [];
  const next = addDays(end, 1);
  for (let year = yearOf(next) - 1; sameDayIn(year, next) >= track.start; year--) {
    const first = sameDayIn(year, next);
    const last = addDays(first, PROJECTION_HORIZON_DAYS - 1);
    const reached = track.dayReaching(first, remaining);
    if (reached !== null && reached <= last) waits.push(reached - first + 1);
    else if (track.total(first, last).ok) waits.push(Number.POSITIVE_INFINITY);
  }
  return waits.sort((a, b) => a - b);
}

/** The same date in another year; 29 February becomes 1 March. */
function sameDayIn(year: number, on: Day): Day {
  const [, month, date] = formatDay(on).split('-').map(Number);
  return dayOf(year, month!, date!);
}

function waitsOf(sorted: readonly number[]): Waits {
  return {
    early: Math.floor(quantile(sorted, EARLY)),
    middle: Math.round(quantile(sorted, MIDDLE)),
    late: Math.ceil(quantile(sorted, LATE)),
  };
}

/**
 * Quantile by Weibull's plotting positions, p(n + 1), held to the smallest and largest value: a new year is as likely to
 * fall below the smallest of n as into any other space between them. Type 6 of Hyndman & Fan 1996, Am. Stat. 50:361–365.
 */
function quantile(sorted: readonly number[], p: number): number {
  const position = Math.min(sorted.length, Math.max(1, p * (sorted.length + 1)));
  const below = sorted[Math.floor(position) - 1]!;
  const above = sorted[Math.ceil(position) - 1]!;
  return below === above ? below : below + (position - Math.floor(position)) * (above - below);
}

/**
 * Waits at the pace of the last days: after n days the sum is expected at n·m, with a spread of s·√(n + n²/k) from the
 * variation s of the k days seen, for the days to come and for the mean itself. It takes days as independent and the
 * season as standing still, so the true spread is wider.
 */
function recentWaits(track: HeatTrack, end: Day, remaining: number): Waits | null {
  const past = end - track.start + 1;
  const heats = track.daily.subarray(Math.max(0, past - PROJECTION_RECENT_DAYS), past).filter((heat) => !Number.isNaN(heat));
  const k = heats.length;
  if (k < PROJECTION_RECENT_DAYS / 2) return null;
  const mean = heats.reduce((sum, heat) => sum + heat, 0) / k;
  const deviation = Math.sqrt(heats.reduce((sum, heat) => sum + (heat - mean) ** 2, 0) / (k - 1));
  const firstDay = (deviate: number): number => {
    for (let n = 1; n <= PROJECTION_HORIZON_DAYS; n++)
      if (n * mean + deviate * deviation * Math.sqrt(n + (n * n) / k) >= remaining) return n;
    return Number.POSITIVE_INFINITY;
  };
  return { early: firstDay(Z_90), middle: firstDay(0), late: firstDay(-Z_90) };
}
