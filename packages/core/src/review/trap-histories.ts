import { type Day, formatDay } from '../base/day.ts';
import { groupBy } from '../base/group-by.ts';
import { catchIntervals } from '../catch/intervals.ts';
import type { TrapHistory } from '../catch/types.ts';
import type { Program } from '../records/program.ts';
import type { TrapRecord } from '../records/schema.ts';

export interface TrapWithHistory {
  readonly trap: TrapRecord;
  readonly history: TrapHistory;
}

/** Every trap hung by the day `on`, with all that its visits told by then. */
export function trapHistories(program: Program, on: Day): TrapWithHistory[] {
  const checks = groupBy(program.checks, ({ trapId }) => trapId);
  const lures = groupBy(program.lures, ({ trapId }) => trapId);
  return program.traps
    .filter(({ hungOn }) => hungOn <= formatDay(on))
    .map((trap) => ({
      trap,
      history: catchIntervals(trap, checks.get(trap.trapId) ?? [], lures.get(trap.trapId) ?? [], on),
    }));
}
