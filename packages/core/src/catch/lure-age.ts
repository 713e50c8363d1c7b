import { type Day, day, daysBetween } from '../base/day.ts';
import type { LureRecord } from '../records/schema.ts';

export interface LureAge {
  readonly lureAgeDays: number | null;
  readonly lureLifeDays: number | null;
  readonly lurePastLife: boolean | null;
}

const UNKNOWN: LureAge = { lureAgeDays: null, lureLifeDays: null, lurePastLife: null };

/**
 * The lure that hung during the nights before a visit: the newest one placed before the day of the visit,
 * because a lure placed at a visit is for the nights after it.
 *
 * Returns a function of the visit's day. It must be asked in rising order of days, and walks the lures once.
 */
export function lureAges(lures: readonly LureRecord[]): (visit: Day) => LureAge {
  const placed = lures
    .map(({ placedOn, lifeDays }) => ({ placedOn: day(placedOn), lifeDays }))
    .sort((a, b) => a.placedOn - b.placedOn);
  let next = 0;
  return (visit) => {
    while (next < placed.length && placed[next]!.placedOn < visit) next++;
    const lure = placed[next - 1];
    if (lure === undefined) return UNKNOWN;
    const lureAgeDays = daysBetween(lure.placedOn, visit);
    return {
      lureAgeDays,
      lureLifeDays: lure.lifeDays,
      lurePastLife: lure.lifeDays === null ? null : lureAgeDays > lure.lifeDays,
    };
  };
}
