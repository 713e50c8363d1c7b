/** Traps that were passed by and that nobody has been at since. */
import { once, type Prepared } from '../advice/prepare.ts';
import { formatDay } from '../base/day.ts';
import type { SkipRecord } from '../records/schema.ts';

/** The newest skip of a trap as known on the day. */
export const skipOf = (prepared: Prepared, trapId: string): SkipRecord | undefined =>
  once(prepared, 'no check', 'skips', () => newestByTrap(prepared)).get(trapId);

function newestByTrap({ program, on }: Prepared): Map<string, SkipRecord> {
  const today = formatDay(on);
  const newest = new Map<string, SkipRecord>();
  for (const skip of program.skips) {
    const known = newest.get(skip.trapId);
    if (skip.skippedOn <= today && (!known || known.skippedOn < skip.skippedOn)) newest.set(skip.trapId, skip);
  }
  return newest;
}
