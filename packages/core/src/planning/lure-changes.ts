import { addDays, type Day, daysBetween, formatDay } from '../base/day.ts';
import type { Shape } from '../base/shape.ts';
import type { lureChangeSchema } from './schema.ts';

export type LureChange = Shape<typeof lureChangeSchema>;

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
