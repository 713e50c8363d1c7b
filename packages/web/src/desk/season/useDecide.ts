/** Records of planning, read and written in place. */
import type { RecordKind, RecordOf } from '@duskwatch/core';
import { useQuery, useQueryClient } from '@tanstack/react-query';
import { keyOfValue, recordName } from '../../shared/record/naming.ts';
import { recordsQuery, type StoredVersion } from '../../shared/record/queries.ts';
import { useAround } from '../../shared/record/useAround.ts';
import { useWriteRecords } from '../../shared/record/write-records.ts';
import type { Base } from '../../sync/types.ts';
import { recordWords } from '../../text/record.ts';

export interface Held<K extends RecordKind> {
  readonly base: Base;
  readonly value: RecordOf<K>;
}

type Read<K extends RecordKind> = readonly (StoredVersion<K> & { readonly value: RecordOf<K> })[] | undefined;

const byKey = <K extends RecordKind>(kind: K, read: Read<K>): ReadonlyMap<string, Held<K>> =>
  new Map(
    (read ?? []).map(({ recordId, revisionId, value }) => [keyOfValue(kind, value), { base: { recordId, revisionId }, value }]),
  );

/** The records of a kind by their natural key, each with what an edit builds on. */
export function useHeld<K extends RecordKind>(kind: K): ReadonlyMap<string, Held<K>> {
  return byKey(kind, useQuery(recordsQuery(kind)).data);
}

/** Gives a record from what it is now; null: it is not to be. */
type Change<K extends RecordKind> = (now: RecordOf<K> | null) => RecordOf<K> | null;
type Write<K extends RecordKind> = (key: string, change: Change<K>) => void;

/** One change after the other: boxes that are left quickly must not build on what they have not yet seen. */
let last: Promise<unknown> = Promise.resolve();

/** Writes a record in place. What would change nothing is not written. */
export function useWrite<K extends RecordKind>(kind: K): Write<K> {
  const queries = useQueryClient();
  const say = useWriteRecords();
  const { names } = useAround();
  return (key, change) => {
    last = last.then(async () => {
      const held = byKey(kind, await queries.ensureQueryData(recordsQuery(kind))).get(key) ?? null;
      const before = held?.value ?? null;
      const value = change(before);
      if (JSON.stringify(value) === JSON.stringify(before)) return;
      const name = recordName(kind, key, names);
      const { saved, removed } = recordWords.toast;
      await say(value ? saved(name) : removed(name), { kind, value, base: held?.base ?? null, before });
    });
  };
}
