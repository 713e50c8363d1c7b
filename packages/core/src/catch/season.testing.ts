/** Short ways to write down a trap's season in tests. */

import { addDays, day, formatDay } from '../base/day.ts';
import type { CheckRecord, LureRecord, TrapRecord } from '../records/schema.ts';
import { catchIntervals } from './intervals.ts';

export const HUNG = day('2025-06-01');

/** The day `nights` nights after the hanging. */
export const after = (nights: number) => addDays(HUNG, nights);

export function trap(over: Partial<TrapRecord> = {}): TrapRecord {
  return {
    trapId: 'T1',
    station: 'North gate',
    insect: 'helicoverpa-zea',
    design: 'mesh-cone',
    latitude: null,
    longitude: null,
    hungOn: formatDay(HUNG),
    takenDownOn: null,
    informs: ['F1'],
    ...over,
  };
}

/** A fit visit `nights` nights after the hanging that found `targetCount` moths and emptied the trap. */
export function check(nights: number, targetCount: number | null, over: Partial<CheckRecord> = {}): CheckRecord {
  return {
    trapId: 'T1',
    checkedOn: formatDay(after(nights)),
    visit: 1,
    targetCount,
    otherCount: null,
    condition: 'fit',
    emptied: true,
    note: null,
    ...over,
  };
}

export function lure(nights: number, lifeDays: number | null): LureRecord {
  return { trapId: 'T1', placedOn: formatDay(after(nights)), lifeDays };
}

/** The history of a trap that was checked `visits`: [nights since hanging, moths, what else was noted]. */
export function season(
  visits: readonly (readonly [number, number | null, Partial<CheckRecord>?])[],
  over: Partial<TrapRecord> = {},
) {
  const record = trap(over);
  const checks = visits.map(([nights, moths, noted]) => check(nights, moths, { trapId: record.trapId, ...noted }));
  return { trap: record, history: catchIntervals(record, checks, [], after(365)) };
}
