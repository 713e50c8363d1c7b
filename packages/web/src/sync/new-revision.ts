import type { Base, NewRevision, StoredKind, ValueOf } from './types.ts';
import { uuidv7 } from './uuid.ts';

/** A revision ready for the outbox: a new record without a base, an edit with one, a removal with the value null. */
export function newRevision<K extends StoredKind>(
  kind: K,
  value: ValueOf<K> | null,
  base: Base | null = null,
  nowMs: number = Date.now(),
): NewRevision<K> {
  const revisionId = uuidv7(nowMs);
  return {
    revisionId,
    recordId: base?.recordId ?? revisionId,
    kind,
    baseRevisionId: base?.revisionId ?? null,
    ...(base?.rivals?.length ? { settles: base.rivals } : {}),
    at: new Date(nowMs).toISOString(),
    value,
  };
}
