/** What is due at a trap: the next visit and the next lure. */

import { addDays, type Day, day, formatDay } from '../base/day.ts';
import { ASSUMPTIONS } from '../catalogue/index.ts';
import type { LureRecord, TrapRecord } from '../records/schema.ts';
import { historyOf, type Prepared } from './prepare.ts';

/** The next visit to a trap: its last visit, or the day it was hung, plus the rhythm it is visited in. */
export function checkDue(prepared: Prepared, trap: TrapRecord): Day {
  const last = historyOf(prepared, trap).intervals.at(-1)?.to ?? day(trap.hungOn);
  return addDays(last, checkRhythm(prepared, trap));
}

/** Days between visits to a trap: median of its last five gaps, at most a week; a week while there is no rhythm yet. */
export function checkRhythm(prepared: Prepared, trap: TrapRecord): number {
  const gaps = historyOf(prepared, trap)
    .intervals.slice(-5)
    .map((interval) => interval.nights)
    .sort((a, b) => a - b);
  const week = ASSUMPTIONS.usualCheckGapDays.value;
  return gaps.length < 2 ? week : Math.min(week, gaps[Math.floor(gaps.length / 2)]!);
}

/** The soonest visit among traps that still hang, which may have been due before today; null when none hangs. */
export function nextCheck(prepared: Prepared, traps: readonly TrapRecord[]): Day | null {
  const due = hanging(prepared, traps).map((trap) => checkDue(prepared, trap));
  return due.length === 0 ? null : (Math.min(...due) as Day);
}

export function hanging(prepared: Prepared, traps: readonly TrapRecord[]): TrapRecord[] {
  const today = formatDay(prepared.on);
  return traps.filter((trap) => trap.hungOn <= today && (trap.takenDownOn === null || trap.takenDownOn > today));
}

/** When the lure now in a trap ends its stated life; null when no lure or no life is recorded. */
export function lureEnds(prepared: Prepared, trap: TrapRecord): { readonly lure: LureRecord; readonly ends: Day } | null {
  const today = formatDay(prepared.on);
  const lures = (prepared.luresByTrap.get(trap.trapId) ?? []).filter((lure) => lure.placedOn <= today);
  const newest = lures.reduce<LureRecord | null>((best, lure) => (best && best.placedOn > lure.placedOn ? best : lure), null);
  if (!newest || newest.lifeDays === null) return null;
  return { lure: newest, ends: addDays(day(newest.placedOn), newest.lifeDays) };
}
