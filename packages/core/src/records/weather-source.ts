import type { FieldRecord } from './schema.ts';

/** The weather source of a field: the one it names, the one named after it or its farm, or the program's only one. */
export function weatherSourceFor(field: FieldRecord, sources: ReadonlySet<string>): string | null {
  for (const id of [field.weatherSource, field.fieldId, field.farm]) {
    if (id !== null && sources.has(id)) return id;
  }
  if (field.weatherSource !== null || sources.size !== 1) return null;
  return [...sources][0]!;
}
