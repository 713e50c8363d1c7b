import { addDays, type Day } from '../base/day.ts';
import type { TrapHistory } from '../catch/types.ts';
import type { HeatTrack } from '../heat/types.ts';

/** The moths of one interval of one trap, on the heat axis. */
export interface HeatSpan {
  /** Which of the traps: its place in the list. */
  readonly trap: number;
  /** The day of its first night, and how many nights: traps out in the same nights share their weather. */
  readonly begins: number;
  readonly nights: number;
  /** Degree-days from the start of the axis to the beginning and the end of the nights. */
  readonly from: number;
  readonly to: number;
  readonly count: number;
}

export interface SpannedCatch {
  readonly spans: readonly HeatSpan[];
  /** Traps with at least one span; spans number them from 0. */
  readonly traps: number;
  /** Intervals that say nothing (unfit, a count that went down) or whose heat is not known: they add no zeros. */
  readonly leftOut: number;
}

/**
 * A season's intervals on the heat axis that begins at `start`, as known on `on`. A night has the heat of the day it
 * follows: the night of day d spans the heat up to d − 1 to the heat up to d.
 */
export function heatSpans(histories: readonly TrapHistory[], track: HeatTrack, start: Day, on: Day): SpannedCatch {
  return joined(histories.map((history) => trapSpans(history, track, start, on)));
}

/** The spans of several traps as one catch, each trap numbered; a trap without spans is none. */
export function joined(catches: readonly SpannedCatch[]): SpannedCatch {
  const spans: HeatSpan[] = [];
  let [traps, leftOut] = [0, 0];
  for (const one of catches) {
    for (const span of one.spans) spans.push({ ...span, trap: traps + span.trap });
    traps += one.traps;
    leftOut += one.leftOut;
  }
  return { spans, traps, leftOut };
}

function trapSpans({ intervals }: TrapHistory, track: HeatTrack, start: Day, on: Day): SpannedCatch {
  const spans: HeatSpan[] = [];
  let leftOut = 0;
  for (const { from, to, nights, count } of intervals) {
    if (from < start || to > on) continue;
    const begin = track.total(start, addDays(from, -1));
    const end = track.total(start, addDays(to, -1));
    if (count !== null && begin.ok && end.ok)
      spans.push({ trap: 0, begins: from, nights, from: begin.degreeDays, to: end.degreeDays, count });
    else leftOut++;
  }
  return { spans, traps: spans.length > 0 ? 1 : 0, leftOut };
}
