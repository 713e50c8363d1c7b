import { adviseCell } from './decide.ts';
import type { Prepared } from './prepare.ts';
import type { Advice } from './types.ts';

export { adviseCell };

/** Advice for every field and every insect of the program, fields in their order, insects in the catalogue's. */
export function adviseAll(prepared: Prepared): Advice[] {
  return prepared.program.fields.flatMap((field) =>
    prepared.insects.map((insect) => adviseCell(prepared, field.fieldId, insect)),
  );
}
