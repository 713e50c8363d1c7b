import { dayOf } from '@duskwatch/core';
import { isoOf, monthText } from '../../format/day.ts';

export interface Tick {
  readonly at: number;
  readonly label: string;
}

/** The first of each month within the span; a month begun too late to hold its label goes unlabelled. */
export function monthTicks(from: number, to: number, leastDays = 0): Tick[] {
  const ticks: Tick[] = [];
  let year = Number(isoOf(from).slice(0, 4));
  let month = Number(isoOf(from).slice(5, 7));
  for (let at = dayOf(year, month, 1) as number; at <= to; at = dayOf(year, month, 1)) {
    if (at >= from) ticks.push({ at, label: to - at >= leastDays ? monthText(isoOf(at)) : '' });
    month += 1;
    if (month > 12) [year, month] = [year + 1, 1];
  }
  return ticks;
}

/** Mondays within the span. */
export function weekTicks(from: number, to: number): number[] {
  // Day 4 (1970-01-05) was a Monday.
  const first = from + ((((4 - from) % 7) + 7) % 7);
  const ticks: number[] = [];
  for (let at = first; at <= to; at += 7) ticks.push(at);
  return ticks;
}
