import { addDays } from '../base/day.ts';
import type { HeatTrack, Projection } from './types.ts';
import { usualWaits } from './usual-heat.ts';
import { waitWindow } from './wait-window.ts';
import { PROJECTION_HORIZON_DAYS, pastYears, recentWaits, waitsInYears } from './waits.ts';

/** Past years needed before they speak for this one. Common practice, no source. */
export const PROJECTION_MIN_YEARS = 2;

/**
 * When `remaining` degree-days (unit of the rule, above 0) more will have come after `track.end`.
 *
 * Each past year at the source, from the same calendar day on, is one equally likely continuation; early, middle and
 * late are the 10, 50 and 90 % points of the days one more year takes. With fewer than two such years the normals of the
 * source's months speak, where they are known, or else the mean of the last 14 days is carried on. Only days up to `track.end` are used. Null when the middle case does not come
 * within the horizon, when neither past nor recent days are known, or when nothing remains.
 */
export function projectEvent(track: HeatTrack, remaining: number): Projection | null {
  if (track.end === null || !(remaining > 0)) return null;
  const next = addDays(track.end, 1);
  const past = waitsInYears(track, next, remaining, pastYears(track, next));
  const yearsSpeak = past.sorted.length >= PROJECTION_MIN_YEARS;
  const { normals } = track;
  const waits = yearsSpeak
    ? waitWindow(past)
    : normals
      ? usualWaits(track, track.end, remaining, normals)
      : recentWaits(track, track.end, remaining);
  if (waits === null || waits.middle > PROJECTION_HORIZON_DAYS) return null;
  const lateOpen = waits.late > PROJECTION_HORIZON_DAYS;
  return {
    early: addDays(track.end, Math.max(1, waits.early)),
    middle: addDays(track.end, waits.middle),
    late: addDays(track.end, lateOpen ? PROJECTION_HORIZON_DAYS : waits.late),
    lateOpen,
    method: yearsSpeak ? 'past-years' : normals ? 'normals' : 'recent-days',
    years: yearsSpeak ? past.sorted.length : 0,
  };
}
