/** Records as they are, were and compete: the shapes of the server's answers. */
import type { RecordKind, RecordOf } from '@duskwatch/core';
import { queryOptions } from '@tanstack/react-query';
import { getJson } from '../../api/client.ts';
import type { StoredKind, ValueOf } from '../../sync/types.ts';

export type RevisionStanding = 'current' | 'removed' | 'rival' | 'past';

/** One thing that was said of a record. */
export interface StoredVersion<K extends StoredKind = StoredKind> {
  readonly revisionId: string;
  readonly recordId: string;
  readonly kind: K;
  readonly baseRevisionId: string | null;
  readonly author: string;
  readonly authorName: string;
  /** By the clock it was written with. */
  readonly at: string;
  /** As far as can be known. */
  readonly countedAt: string;
  readonly key: string;
  readonly standing: RevisionStanding;
  /** Null: removed. */
  readonly value: ValueOf<K> | null;
}

export interface Conflict {
  readonly reason: 'same-record' | 'same-key';
  readonly kind: StoredKind;
  readonly key: string;
  readonly held: StoredVersion;
  readonly rivals: readonly StoredVersion[];
}

export const recordsQuery = <K extends RecordKind>(kind: K) =>
  queryOptions({
    queryKey: ['records', kind],
    queryFn: ({ signal }) =>
      getJson<readonly (StoredVersion<K> & { readonly value: RecordOf<K> })[]>(`/api/records/${kind}`, signal),
  });

/** Oldest first. */
export const historyQuery = (kind: StoredKind, key: string) =>
  queryOptions({
    queryKey: ['history', kind, key],
    queryFn: ({ signal }) => getJson<readonly StoredVersion[]>(`/api/records/${kind}/${encodeURIComponent(key)}/history`, signal),
    staleTime: 0,
  });

export const conflictsQuery = queryOptions({
  queryKey: ['conflicts'],
  queryFn: ({ signal }) => getJson<readonly Conflict[]>('/api/conflicts', signal),
});
