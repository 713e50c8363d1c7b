import { addDays, type Day, daysBetween, formatDay, type IsoDay } from '../base/day.ts';

export interface LureChange {
  readonly on: IsoDay;
  /** Days that the lure taken out has hung. */
  readonly ageDays: number;
  /** True when no check falls within the lure's life, so that somebody must come for the lure alone. */
  readonly extraVisit: boolean;
}

/**
 * When to change the lures of a trap from its hanging to its taking down.
 *
 * A lure is changed at the last check at or before the end of its life, so it never hangs longer than it lasts and nobody
 * drives for it. Where its life ends before the next check, it is changed on its last day, by a visit of its own. The
 * last lure stays until the trap comes down. `checkDays` ascend. A life is at least one day.
 */
export function lureChanges(hungOn: Day, takeDownOn: Day, lifeDays: number, checkDays: readonly Day[]): LureChange[] {
  const changes: LureChange[] = [];
  let placed = hungOn;
  while (addDays(placed, lifeDays) < takeDownOn) {
    const ends = addDays(placed, lifeDays);
    const check = checkDays.findLast((on) => placed < on && on <= ends) ?? null;
    const on = check ?? ends;
    changes.push({ on: formatDay(on), ageDays: daysBetween(placed, on), extraVisit: check === null });
    placed = on;
  }
  return changes;
}
