import { checkDue, hanging } from '../advice/due.ts';
import type { Prepared } from '../advice/prepare.ts';
import { labelCautions } from '../advice/treatment.ts';
import { type Day, formatDay, type IsoDay } from '../base/day.ts';
import { groupBy } from '../base/group-by.ts';
import type { TrapRecord } from '../records/schema.ts';
import type { DueStation, TimeWindow } from './round-types.ts';

/**
 * Stations with a trap to check up to the day `until`, as rounds need them: due when their first trap is, and closed as
 * long as a re-entry interval holds at a field that one of their traps informs, as far as it is recorded.
 */
export function dueStations(prepared: Prepared, until: Day, window: TimeWindow | null = null): DueStation[] {
  const stations = groupBy(hanging(prepared, [...prepared.traps.values()]), ({ station }) => station);
  return [...stations].flatMap(([id, traps]): DueStation[] => {
    const due = Math.min(...traps.map((trap) => checkDue(prepared, trap))) as Day;
    if (due > until) return [];
    const at = traps.find(({ latitude, longitude }) => latitude !== null && longitude !== null);
    return [
      {
        id,
        latitude: at?.latitude ?? null,
        longitude: at?.longitude ?? null,
        due: formatDay(due),
        traps: traps.length,
        window,
        keepOutUntil: keepOutUntil(prepared, traps),
      },
    ];
  });
}

function keepOutUntil(prepared: Prepared, traps: readonly TrapRecord[]): IsoDay | null {
  const fields = new Set(traps.flatMap(({ informs }) => informs));
  const ends = [...fields]
    .map((id) => prepared.fields.get(id))
    .filter((field) => field !== undefined)
    .flatMap((field) => labelCautions(prepared, field))
    .flatMap((caution) => (caution.kind === 'reentry' ? [caution.until] : []));
  return ends.sort().at(-1) ?? null;
}
