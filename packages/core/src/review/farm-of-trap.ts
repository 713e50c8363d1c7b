import type { FieldRecord, TrapRecord } from '../records/schema.ts';

/** The farm of the first field a trap informs; null when it informs none that is known. */
export function farmOfTrap(trap: TrapRecord, fields: ReadonlyMap<string, FieldRecord>): string | null {
  for (const fieldId of trap.informs) {
    const field = fields.get(fieldId);
    if (field) return field.farm;
  }
  return null;
}
