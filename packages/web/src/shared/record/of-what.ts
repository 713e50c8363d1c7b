/** What a record that is being written is of: the field or the trap, the insect, and the day. */
import { type FieldRecord, parseDay, type RecordKind, type TrapRecord } from '@duskwatch/core';
import { longDay } from '../../format/day.ts';
import { cropText, insectName } from '../../text/names.ts';

/** Kinds of what happens somewhere on a day, and the property that says which. */
const DAY_OF: Partial<Readonly<Record<RecordKind, string>>> = {
  stages: 'observedOn',
  lures: 'placedOn',
  checks: 'checkedOn',
  samples: 'sampledOn',
  treatments: 'appliedOn',
  decisions: 'decidedOn',
};

/** `Sparrow Corner, Dunnoch End · sweet corn · corn earworm · Wednesday 15 July 2026`; null where the boxes say all there is. */
export function ofWhat(
  kind: RecordKind,
  said: Readonly<Record<string, unknown>>,
  around: { readonly fields: readonly FieldRecord[]; readonly traps: readonly TrapRecord[] },
): string | null {
  const dayKey = DAY_OF[kind];
  if (dayKey === undefined) return null;
  const on = String(said[dayKey] ?? '');
  const field = around.fields.find(({ fieldId }) => fieldId === said.fieldId);
  const trap = around.traps.find(({ trapId }) => trapId === said.trapId);
  const insect = trap?.insect ?? (said.insect as string | undefined);
  const parts = [
    ...(field ? [`${field.name}, ${field.farm}`, cropText(field)] : []),
    ...(trap ? [trap.trapId, trap.station] : []),
    ...(insect ? [insectName(insect)] : []),
    ...(parseDay(on) === null ? [] : [longDay(on)]),
  ];
  return parts.length === 0 ? null : parts.join(' · ');
}
