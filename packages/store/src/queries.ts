/** Reading rows, and what they mean outside. */
import { groupBy } from '@duskwatch/core';
import { sql } from 'kysely';
import { countedAt } from './clock-skew.ts';
import { type Context, type Procedure, rows } from './procedure.ts';
import { claimOf, type JudgedRevision } from './standing.ts';
import type { RevisionRow } from './tables.ts';
import type { Arrival, StoredKind, StoredRevision, ValueOf } from './types.ts';

export interface JudgedRow extends JudgedRevision {
  readonly row: RevisionRow;
}

export const toSaid = (row: RevisionRow): JudgedRow => ({
  revisionId: row.revision_id,
  recordId: row.record_id,
  kind: row.kind,
  key: row.natural_key,
  baseRevisionId: row.base_revision_id,
  settles: row.settles === null ? [] : (JSON.parse(row.settles) as string[]),
  at: countedAt(row.at, arrivalOf(row)),
  json: row.value,
  row,
});

const arrivalOf = ({ received_at, skew_ms }: RevisionRow): Arrival | null =>
  received_at === null ? null : { receivedAt: received_at, skewMs: skew_ms };

export function toStored(row: RevisionRow): StoredRevision {
  const settles = row.settles === null ? {} : { settles: JSON.parse(row.settles) as string[] };
  return {
    revisionId: row.revision_id,
    recordId: row.record_id,
    kind: row.kind,
    baseRevisionId: row.base_revision_id,
    ...settles,
    author: row.author,
    at: row.at,
    value: row.value === null ? null : (JSON.parse(row.value) as ValueOf<StoredKind>),
    key: row.natural_key,
    sequence: row.sequence,
    standing: row.standing,
    arrival: arrivalOf(row),
    countedAt: countedAt(row.at, arrivalOf(row)),
  };
}

export const revisionsOf = ({ db, program }: Context) => db.selectFrom('revisions').selectAll().where('program_id', '=', program);

export function* byRevision(context: Context, ids: readonly string[]): Procedure<RevisionRow[]> {
  return yield* rows(revisionsOf(context).where('revision_id', 'in', context.list(ids)));
}

/** Sorted here, because asked to sort, SQLite walks the whole program in order instead of the index on the list. */
const inOrder = (a: RevisionRow, b: RevisionRow): number => a.sequence - b.sequence;

/** Whole records, each with all its revisions. */
export function* byRecord(context: Context, ids: Iterable<string>): Procedure<Map<string, JudgedRow[]>> {
  const list = context.list([...new Set(ids)]);
  const found = yield* rows(revisionsOf(context).where('record_id', 'in', list));
  return groupBy(found.sort(inOrder).map(toSaid), (said) => said.recordId);
}

/**
 * Rows at natural keys of a kind, of the standings named. The standings are written into the statement, because
 * only then do the partial indexes serve it.
 */
export function* atKeys(
  context: Context,
  kind: StoredKind,
  keys: readonly string[],
  standing: 'current' | 'removed' | 'rival' | 'not current',
): Procedure<RevisionRow[]> {
  const query = revisionsOf(context).where('kind', '=', kind).where('natural_key', 'in', context.list(keys));
  const others = query.where('standing', '<>', sql.lit('current'));
  const found = yield* rows(
    standing === 'current'
      ? query.where('standing', '=', sql.lit(standing))
      : standing === 'not current'
        ? others
        : others.where('standing', '=', sql.lit(standing)),
  );
  return found.sort(inOrder);
}

/** Records whose head may lay claim to any of these keys. */
export function* claimants(context: Context, said: readonly JudgedRevision[]): Procedure<string[]> {
  const found: string[] = [];
  for (const [kind, group] of groupBy(said, ({ kind }) => kind)) {
    const keys = [...new Set(group.map(({ key }) => key))];
    for (const standing of ['current', 'rival'] as const) {
      found.push(...(yield* atKeys(context, kind, keys, standing)).map((row) => row.record_id));
    }
  }
  return found;
}

export const claimsOf = (said: readonly JudgedRevision[]): Set<string> => new Set(said.map(claimOf));
