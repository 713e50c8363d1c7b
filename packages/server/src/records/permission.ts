/** Who may write what. */
import type { Person, Problem, Program } from '@duskwatch/core';
import type { StoredKind, ValueOf } from '@duskwatch/store';

const SCOUTS_WRITE: ReadonlySet<StoredKind> = new Set(['checks', 'skips', 'lures', 'stages', 'samples', 'answers']);
const GROWERS_WRITE: ReadonlySet<StoredKind> = new Set(['treatments', 'decisions', 'samples', 'stages']);

/**
 * Whether a person may turn what was said of a record (`before`, all of it) into `after`. Coordinators may write
 * everything; scouts what is seen and done on a round, not the traps themselves; growers what happens in the fields
 * of their own farms; readers nothing.
 */
export function mayWrite(
  person: Person,
  kind: StoredKind,
  before: readonly (ValueOf<StoredKind> | null)[],
  after: ValueOf<StoredKind> | null,
  program: Program,
): Problem | null {
  const allowed = { coordinator: null, scout: SCOUTS_WRITE, grower: GROWERS_WRITE, reader: new Set<StoredKind>() }[person.role];
  if (person.disabled || (allowed !== null && !allowed.has(kind))) {
    return {
      where: { column: 'kind' },
      got: kind,
      expected: `what a ${person.role} may write`,
      fix: 'Ask a coordinator to write it.',
      fault: { kind: 'may-not-write', role: person.role },
    };
  }
  if (person.role !== 'grower') return null;
  const own = new Set(program.fields.filter((field) => person.farms.includes(field.farm)).map((field) => field.fieldId));
  for (const value of [...before, after]) {
    if (value === null || ('fieldId' in value && own.has(value.fieldId))) continue;
    // What is there already belongs to somebody else, and whose it is stays untold.
    const got = value === after && 'fieldId' in value ? value.fieldId : 'a record of another farm';
    return {
      where: { column: 'field_id' },
      got,
      expected: 'a field of your own farm',
      fix: 'Ask a coordinator to write it.',
      fault: { kind: 'other-farm' },
    };
  }
  return null;
}
