import type { RecordKind, RecordOf } from '@duskwatch/core';
import type { Base } from '../../sync/types.ts';
import { keyOfValue } from './naming.ts';

export type Taken<K extends RecordKind> = ReadonlyMap<string, { readonly base: Base; readonly value: RecordOf<K> }>;

/** Which keys are taken, and what a record of such a key builds on. */
export const takenOf = <K extends RecordKind>(
  kind: K,
  stored: readonly { readonly recordId: string; readonly revisionId: string; readonly value: RecordOf<K> }[] | undefined,
): Taken<K> =>
  new Map(
    (stored ?? []).map(({ recordId, revisionId, value }) => [
      keyOfValue(kind, value as never),
      { base: { recordId, revisionId }, value },
    ]),
  );
