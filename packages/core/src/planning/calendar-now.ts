import type { Prepared } from '../advice/prepare.ts';
import { formatDay } from '../base/day.ts';
import type { Person } from '../people/person.ts';
import { type CalendarEntry, calendarEntries, planEntries } from './calendar.ts';
import { currentSeason, plannedSeason, seasonRecord } from './from-records.ts';

/**
 * A person's calendar from today on: what is due by the records, and what the running and the next season plan where
 * somebody has planned them. Lures are ordered by whoever runs the program, not by a grower.
 *
 * @param prepared of what the person may know
 */
export function calendarOf(prepared: Prepared, { role }: Pick<Person, 'role'>): CalendarEntry[] {
  const today = formatDay(prepared.on);
  const running = currentSeason(prepared);
  const isPlanned = (season: number) => seasonRecord(prepared.program, season) !== null;
  const entries = [
    ...calendarEntries(prepared, isPlanned(running) ? plannedSeason(prepared, running) : null),
    ...(isPlanned(running + 1) ? planEntries(plannedSeason(prepared, running + 1)) : []),
  ];
  return entries
    .filter(({ on, kind }) => on >= today && (kind !== 'order-lures' || role !== 'grower'))
    .sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : a.uid < b.uid ? -1 : 1));
}
