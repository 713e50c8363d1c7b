/** Invented records to write down in tests. */
import type { CheckRecord, Result } from '@duskwatch/core';
import type { Revision, StoredKind } from '../types.ts';
import { uuidv7 } from '../uuid.ts';

export const at = (minute: number): string => new Date(Date.UTC(2026, 6, 14, 21, minute)).toISOString();

export const check = (targetCount: number, more: Partial<CheckRecord> = {}): CheckRecord => ({
  trapId: 'low-meadow-1',
  checkedOn: '2026-07-14',
  visit: 1,
  targetCount,
  otherCount: null,
  condition: 'fit',
  emptied: true,
  note: null,
  ...more,
});

/** A first revision. */
export function first(value: CheckRecord, minute: number, author = 'Ida'): Revision<'checks'> {
  const id = uuidv7();
  return { revisionId: id, recordId: id, kind: 'checks', baseRevisionId: null, author, at: at(minute), value };
}

/** A revision made with `base` in view. */
export const next = <K extends StoredKind>(
  base: Revision<K>,
  value: Revision<K>['value'],
  minute: number,
  author = 'Ida',
): Revision<K> => ({
  revisionId: uuidv7(),
  recordId: base.recordId,
  kind: base.kind,
  baseRevisionId: base.revisionId,
  author,
  at: at(minute),
  value,
});

export function accepted<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}
