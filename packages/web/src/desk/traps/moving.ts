/** A trap that stands elsewhere is a new record: the old one ends on the day, and the two catches stay two histories. */
import type { LureRecord, TrapRecord } from '@duskwatch/core';

/** `QU1-HZ-26` moves to `QU1-HZ-26-2`, that to `QU1-HZ-26-3`; the first of these that is free. */
export function nextTrapId(trapId: string, taken: ReadonlySet<string>): string {
  for (let place = 2; ; place++) {
    const next = `${trapId.slice(0, 76)}-${place}`;
    if (!taken.has(next)) return next;
  }
}

/** The lure that hangs in a trap, as it goes along: its age counts on from the day it was placed. */
export const lureAlong = (lure: Pick<LureRecord, 'placedOn' | 'lifeDays'>, trapId: string): LureRecord => ({
  trapId,
  placedOn: lure.placedOn,
  lifeDays: lure.lifeDays,
});

export const endedOn = (trap: TrapRecord, takenDownOn: string): TrapRecord => ({ ...trap, takenDownOn });
