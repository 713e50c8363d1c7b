import type { Program, SheetReading } from '@duskwatch/core';

/** What a program folder, or some of its tables, hold, in the words of a sheet's reading. */
export function readingOfProgram({ traps = [], checks = [], weather = [], ...others }: Partial<Program>): SheetReading {
  const rest = Object.values(others).some((records) => Array.isArray(records) && records.length > 0);
  const kind = traps.length > 0 || rest ? 'folder' : checks.length > 0 ? 'counts' : 'weather';
  const days = new Set(checks.length > 0 ? checks.map(({ checkedOn }) => checkedOn) : weather.map(({ date }) => date));
  const sorted = [...days].sort();
  return {
    kind,
    traps: traps.length > 0 ? traps.length : new Set(checks.map(({ trapId }) => trapId)).size,
    checks: checks.length,
    insects: [...new Set(traps.map(({ insect }) => insect))].sort(),
    from: sorted[0] ?? null,
    to: sorted.at(-1) ?? null,
    words: [],
    days: days.size,
  };
}
