import { ok, type Problem, type Result, refuse } from '@duskwatch/core';
import { conflicts } from './conflicts.ts';
import { type Context, insert, type Procedure, rows, run } from './procedure.ts';
import { byRecord, byRevision, claimants, claimsOf, type JudgedRow, toSaid } from './queries.ts';
import { claimOf, deriveStandings, readRecord } from './standing.ts';
import type { RevisionRow } from './tables.ts';
import type { Appended, RevisionStanding } from './types.ts';

/** Add prepared revisions, and derive anew the standing of all they touch. */
export function* append(context: Context, prepared: readonly RevisionRow[]): Procedure<Result<Appended>> {
  const sorted = yield* sortOut(context, prepared);
  if (!sorted.ok) return sorted;
  const { fresh, alreadyThere } = sorted.value;

  const records = yield* byRecord(
    context,
    prepared.map((row) => row.record_id),
  );
  const problems = joinRecords(records, fresh);
  if (problems.length > 0) return refuse(...problems);

  const touched = [...records.values()].flat();
  const claims = claimsOf(touched);
  const others = (yield* claimants(context, touched)).filter((id) => !records.has(id));
  for (const [id, revisions] of yield* byRecord(context, others)) records.set(id, revisions);
  if (fresh.length > 0) yield* settle(context, fresh, [...records.values()], claims);

  const touches = (at: { recordId: string }) => records.has(at.recordId);
  const open = (yield* conflicts(context)).filter((c) => touches(c.held) || c.rivals.some(touches) || claims.has(claimOf(c)));
  return ok({ added: fresh.map((row) => row.revision_id), alreadyThere, conflicts: open });
}

/** New rows apart from those already there; the same id with other contents is a problem. */
function* sortOut(
  context: Context,
  prepared: readonly RevisionRow[],
): Procedure<Result<{ fresh: RevisionRow[]; alreadyThere: string[] }>> {
  const ids = prepared.map((row) => row.revision_id);
  const known = new Map((yield* byRevision(context, ids)).map((row) => [row.revision_id, row]));
  const fresh: RevisionRow[] = [];
  const alreadyThere: string[] = [];
  const problems: Problem[] = [];
  for (const [index, row] of prepared.entries()) {
    const before = known.get(row.revision_id);
    if (!before) {
      known.set(row.revision_id, row);
      fresh.push(row);
    } else if (contents(before) === contents(row)) alreadyThere.push(row.revision_id);
    else {
      problems.push({
        where: { row: index + 1, column: 'revisionId' },
        got: row.revision_id,
        expected: 'the contents this revision had when it was first sent',
        fix: 'Give a changed record a new revision id; a revision never changes.',
      });
    }
  }
  return problems.length > 0 ? refuse(...problems) : ok({ fresh, alreadyThere });
}

const contents = (row: RevisionRow): string =>
  JSON.stringify([row.record_id, row.kind, row.base_revision_id, row.settles, row.author, row.at, row.value]);

/** Put the new revisions into their records, and give each removal the key of what it removes. */
function joinRecords(records: Map<string, JudgedRow[]>, fresh: readonly RevisionRow[]): Problem[] {
  const problems: Problem[] = [];
  const join = (row: RevisionRow) => records.set(row.record_id, [...(records.get(row.record_id) ?? []), toSaid(row)]);
  for (const row of fresh.filter((row) => row.value !== null)) join(row);
  for (const row of fresh.filter((row) => row.value === null)) {
    const record = (records.get(row.record_id) ?? []).filter((said) => said.revisionId !== row.revision_id);
    const base = record.find((said) => said.revisionId === row.base_revision_id);
    const removed = base ?? (record.length > 0 ? readRecord(record).head : null);
    if (removed) {
      row.natural_key = removed.key;
      join(row);
    } else {
      problems.push({
        where: { column: 'recordId' },
        got: row.record_id,
        expected: 'a record this program has',
        fix: 'Send the revision that made the record before its removal, or together with it.',
      });
    }
  }
  for (const [id, revisions] of records) {
    const kinds = new Set(revisions.map((said) => said.kind));
    if (kinds.size < 2) continue;
    problems.push({
      where: { column: 'kind' },
      got: [...kinds].join(' and '),
      expected: `one kind for record ${id}`,
      fix: 'Give a record of another kind its own record id.',
    });
  }
  return problems;
}

/** Demote, insert, promote: in this order no two current rows ever hold one key. */
function* settle(
  context: Context,
  fresh: readonly RevisionRow[],
  records: readonly (readonly JudgedRow[])[],
  claims: ReadonlySet<string>,
): Procedure<void> {
  const standings = deriveStandings(records, claims);
  const freshIds = new Set(fresh.map((row) => row.revision_id));
  const moved = new Map<RevisionStanding, string[]>();
  for (const { row } of records.flat()) {
    const standing = standings.get(row.revision_id) ?? row.standing;
    if (standing !== row.standing && !freshIds.has(row.revision_id)) {
      moved.set(standing, [...(moved.get(standing) ?? []), row.revision_id]);
    }
  }
  for (const standing of ['past', 'removed', 'rival'] as const) yield* setStanding(context, moved.get(standing) ?? [], standing);
  const next = yield* nextSequence(context, fresh.length);
  yield* insert(
    fresh.map((row, index) => ({ ...row, sequence: next + index, standing: standings.get(row.revision_id) ?? row.standing })),
  );
  yield* setStanding(context, moved.get('current') ?? [], 'current');
}

export function* setStanding(context: Context, ids: readonly string[], standing: RevisionStanding): Procedure<void> {
  if (ids.length === 0) return;
  const { db, program, list } = context;
  const update = db.updateTable('revisions').set({ standing });
  yield* run(update.where('program_id', '=', program).where('revision_id', 'in', list(ids)));
}

/** Take `count` numbers of the program's sequence; the first of them. */
export function* nextSequence({ db, program }: Context, count: number): Procedure<number> {
  const [last] = yield* rows(
    db
      .updateTable('programs')
      .set((set) => ({ last_sequence: set('last_sequence', '+', count) }))
      .where('program_id', '=', program)
      .returning('last_sequence'),
  );
  return last!.last_sequence - count + 1;
}
