import { groupBy } from '@duskwatch/core';
import { sql } from 'kysely';
import { type Context, type Procedure, rows } from './procedure.ts';
import { atKeys, byRecord, type JudgedRow, revisionsOf, toSaid, toStored } from './queries.ts';
import { claimOf, readRecord } from './standing.ts';
import type { Conflict } from './types.ts';

/** Everything that awaits a person's decision. */
export function* conflicts(context: Context): Procedure<Conflict[]> {
  const open = yield* rows(revisionsOf(context).where('standing', '=', sql.lit('rival')).orderBy('sequence'));
  const records = yield* byRecord(
    context,
    open.map((row) => row.record_id),
  );
  const found: Conflict[] = [];
  const losers: JudgedRow[] = [];
  for (const revisions of records.values()) {
    const { head, rivals } = readRecord(revisions);
    if (rivals.length > 0) found.push(conflict('same-record', head, rivals));
    if (head.row.standing === 'rival') losers.push(head);
  }
  const holders = yield* holdersOf(context, losers);
  for (const [claim, heads] of groupBy(losers, claimOf)) found.push(conflict('same-key', holders.get(claim)!, heads));
  return found;
}

function* holdersOf(context: Context, losers: readonly JudgedRow[]): Procedure<Map<string, JudgedRow>> {
  const holders = new Map<string, JudgedRow>();
  for (const [kind, heads] of groupBy(losers, ({ kind }) => kind)) {
    const keys = [...new Set(heads.map(({ key }) => key))];
    for (const row of yield* atKeys(context, kind, keys, 'current')) holders.set(claimOf(toSaid(row)), toSaid(row));
  }
  return holders;
}

function conflict(reason: Conflict['reason'], held: JudgedRow, rivals: readonly JudgedRow[]): Conflict {
  const stored = rivals.map(({ row }) => toStored(row)).sort((a, b) => (a.countedAt < b.countedAt ? -1 : 1));
  return { reason, kind: held.kind, key: held.key, held: toStored(held.row), rivals: stored };
}
