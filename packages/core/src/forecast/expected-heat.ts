import { addDays, type Day } from '../base/day.ts';
import { PROJECTION_MIN_YEARS } from '../heat/project.ts';
import type { HeatTrack } from '../heat/types.ts';
import { usualHeat } from '../heat/usual-heat.ts';
import { PROJECTION_RECENT_DAYS, pastYears, sameDayIn } from '../heat/waits.ts';

/** Heat of each day on one axis: known up to `knownThrough`, expected after it. */
export interface HeatOutlook {
  readonly start: Day;
  readonly knownThrough: Day;
  /** Degree-days of each day from `start` on, in the unit of the rule. */
  readonly daily: Float64Array;
  readonly method: 'past-years' | 'normals' | 'recent-days';
}

/**
 * The known heat from `start` on, followed by `days` days of expected heat: the mean of the past years on the same date,
 * or with fewer than two of them the usual heat by the normals of the source's months, or else the mean of the last 14 days. Null when heat since `start` has a gap or nothing speaks
 * for the days to come.
 */
export function expectedHeat(track: HeatTrack, start: Day, days: number): HeatOutlook | null {
  const { end } = track;
  if (end === null || start > end || !track.total(start, end).ok) return null;
  const known = track.daily.subarray(start - track.start, end - track.start + 1);
  const daily = new Float64Array(known.length + days);
  daily.set(known);
  const next = addDays(end, 1);
  const years = pastYears(track, next).filter((year) => yearHolds(track, sameDayIn(year, next), days));
  const byYears = years.length >= PROJECTION_MIN_YEARS;
  const usual = byYears || track.normals === null ? null : usualHeat(track.rule, track.normals);
  const recent = byYears || usual ? 0 : meanOf(track, addDays(end, 1 - PROJECTION_RECENT_DAYS), end);
  if (recent === null) return null;
  for (let i = 0; i < days; i++) {
    let heat = usual ? usual(addDays(next, i)).heat : recent;
    for (const year of byYears ? years : []) heat += heatOn(track, addDays(sameDayIn(year, next), i)) / years.length;
    daily[known.length + i] = heat;
  }
  return { start, knownThrough: end, daily, method: byYears ? 'past-years' : usual ? 'normals' : 'recent-days' };
}

const heatOn = (track: HeatTrack, on: Day): number => track.daily[on - track.start] ?? Number.NaN;

const yearHolds = (track: HeatTrack, from: Day, days: number): boolean => track.total(from, addDays(from, days - 1)).ok;

function meanOf(track: HeatTrack, from: Day, to: Day): number | null {
  const heats = track.daily.subarray(Math.max(0, from - track.start), to - track.start + 1).filter((heat) => !Number.isNaN(heat));
  return heats.length < PROJECTION_RECENT_DAYS / 2 ? null : heats.reduce((sum, heat) => sum + heat, 0) / heats.length;
}
