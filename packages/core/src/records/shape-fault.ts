import type { Fault } from '../base/fault.ts';
import { unreadable } from './cells.ts';
import type { RecordKind } from './program.ts';
import { tables } from './tables.ts';

/** What a schema has against a property of a record, as far as its column says; null: the property has no column. */
export function shapeFault(kind: RecordKind, property: string): Fault | null {
  const column = tables[kind].columns.find(({ key }) => key === property);
  return column ? unreadable(column, { kind: 'correct' }) : null;
}
