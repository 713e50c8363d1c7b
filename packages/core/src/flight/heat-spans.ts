import { addDays, type Day } from '../base/day.ts';
import type { TrapHistory } from '../catch/types.ts';
import type { HeatTrack } from '../heat/types.ts';

/** The moths of one interval of one trap, on the heat axis. */
export interface HeatSpan {
  /** Degree-days from the start of the axis to the beginning and the end of the nights. */
  readonly from: number;
  readonly to: number;
  readonly nights: number;
  readonly count: number;
}

export interface SpannedCatch {
  readonly spans: readonly HeatSpan[];
  /** Traps with at least one span. */
  readonly traps: number;
  /** Intervals that say nothing (unfit, a count that went down) or whose heat is not known: they add no zeros. */
  readonly leftOut: number;
}

/**
 * A season's intervals on the heat axis that begins at `start`, as known on `on`. A night has the heat of the day it
 * follows: the night of day d spans the heat up to d − 1 to the heat up to d.
 */
export function heatSpans(histories: readonly TrapHistory[], track: HeatTrack, start: Day, on: Day): SpannedCatch {
  const spans: HeatSpan[] = [];
  let [traps, leftOut] = [0, 0];
  for (const { intervals } of histories) {
    const before = spans.length;
    for (const { from, to, nights, count } of intervals) {
      if (from < start || to > on) continue;
      const begin = track.total(start, addDays(from, -1));
      const end = track.total(start, addDays(to, -1));
      if (count !== null && begin.ok && end.ok) spans.push({ from: begin.degreeDays, to: end.degreeDays, nights, count });
      else leftOut++;
    }
    if (spans.length > before) traps++;
  }
  return { spans, traps, leftOut };
}
