import { formatDay, type Prepared, type Problem, type TrapRecord } from '@duskwatch/core';

/** Traps that hang or will, by station: all of them, or those named. Problems name the others. */
export function trapsToLabel(prepared: Prepared, trapIds: readonly string[] | null): TrapRecord[] | Problem[] {
  const today = formatDay(prepared.on);
  const all = [...prepared.traps.values()]
    .filter(({ takenDownOn }) => takenDownOn === null || takenDownOn > today)
    .sort((a, b) => compare(a.station, b.station) || compare(a.trapId, b.trapId));
  if (trapIds === null) return all;
  const wanted = new Set(trapIds);
  const known = new Set(all.map(({ trapId }) => trapId));
  const unknown = trapIds.filter((id) => !known.has(id));
  if (unknown.length > 0)
    return unknown.map((got) => ({
      where: { parameter: 'trapIds' },
      got,
      expected: 'a trap that hangs or is to be hung',
      fix: 'take it off the list',
    }));
  return all.filter(({ trapId }) => wanted.has(trapId));
}

export const areProblems = (found: TrapRecord[] | Problem[]): found is Problem[] => found[0] !== undefined && 'fix' in found[0];

const compare = (a: string, b: string): number => a.localeCompare(b, 'en', { numeric: true });
