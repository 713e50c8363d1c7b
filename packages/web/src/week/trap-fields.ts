import type { WeekView } from '@duskwatch/core';

/** For each trap that stands in the week's evidence, a field that rests on it: where a due trap leads. */
export function fieldsOfTraps(view: WeekView): ReadonlyMap<string, string> {
  const fields = new Map<string, string>();
  for (const { fieldId, cells } of view.fields)
    for (const { advice } of cells)
      for (const item of advice.because) {
        const traps = item.kind === 'rate' ? item.checks.map((check) => check.trapId) : 'trapId' in item ? [item.trapId] : [];
        for (const trap of traps) if (trap !== null && !fields.has(trap)) fields.set(trap, fieldId);
      }
  return fields;
}
