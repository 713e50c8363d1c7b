import { emptyProgram, groupBy, type Problem, type Program } from '@duskwatch/core';
import { sql } from 'kysely';
import { valueProblem } from './prepare.ts';
import { type Context, type Procedure, rows } from './procedure.ts';
import { atKeys, byRecord, byRevision, revisionsOf, toStored } from './queries.ts';
import type { Counts, CurrentRecord, StoredKind, StoredRevision, Verification } from './types.ts';
import { keyOf, STORED_KINDS, valueSchemas } from './values.ts';

const PAGE = 5_000;

export function* loadProgram({ db, program }: Context): Procedure<Program> {
  const found = yield* rows(
    db
      .selectFrom('revisions')
      .select(['kind', 'value'])
      .where('program_id', '=', program)
      .where('standing', '=', sql.lit('current'))
      .orderBy('kind')
      .orderBy('natural_key'),
  );
  const loaded: Record<string, unknown> = { ...emptyProgram() };
  for (const [kind, ofKind] of groupBy(found, (row) => row.kind)) {
    // One parse of one long text is twice as quick as many small ones.
    const values = JSON.parse(`[${ofKind.map((row) => row.value).join(',')}]`) as unknown[];
    loaded[kind] = kind === 'settings' ? values[0] : values;
  }
  return loaded as unknown as Program;
}

export function* current<K extends StoredKind>(context: Context, kind: K): Procedure<CurrentRecord<K>[]> {
  const query = revisionsOf(context).where('kind', '=', kind).where('standing', '=', sql.lit('current')).orderBy('natural_key');
  return (yield* rows(query)).map(toStored) as CurrentRecord<K>[];
}

export function* history(context: Context, of: string | { kind: StoredKind; key: string }): Procedure<StoredRevision[]> {
  const ids = typeof of === 'string' ? [of] : yield* recordsAt(context, of.kind, of.key);
  const said = [...(yield* byRecord(context, ids)).values()].flat();
  return said.map(({ row }) => toStored(row)).sort((a, b) => a.sequence - b.sequence);
}

function* recordsAt(context: Context, kind: StoredKind, key: string): Procedure<string[]> {
  const found = [...(yield* atKeys(context, kind, [key], 'current')), ...(yield* atKeys(context, kind, [key], 'not current'))];
  return found.map((row) => row.record_id);
}

export function* revisions(context: Context, ids: readonly string[]): Procedure<StoredRevision[]> {
  return (yield* byRevision(context, ids)).map(toStored);
}

export function* epoch({ db, program }: Context): Procedure<string> {
  const [row] = yield* rows(db.selectFrom('programs').select('epoch').where('program_id', '=', program));
  return row!.epoch!;
}

export function* changesSince(context: Context, sequence: number, limit: number): Procedure<StoredRevision[]> {
  return (yield* rows(revisionsOf(context).where('sequence', '>', sequence).orderBy('sequence').limit(limit))).map(toStored);
}

export function* counts({ db, program }: Context): Procedure<Counts> {
  const number = sql<number>`cast(count(*) as integer)`.as('n');
  const revisions = db.selectFrom('revisions').where('program_id', '=', program);
  const byKind = yield* rows(revisions.where('standing', '=', sql.lit('current')).groupBy('kind').select(['kind', number]));
  const [rivals] = yield* rows(revisions.where('standing', '=', sql.lit('rival')).select(number));
  const [last] = yield* rows(db.selectFrom('programs').select('last_sequence').where('program_id', '=', program));
  const records = Object.fromEntries(STORED_KINDS.map((kind) => [kind, 0])) as Record<StoredKind, number>;
  for (const { kind, n } of byKind) records[kind] = n;
  // The sequence has no gaps, so its last number counts the revisions.
  return { records, revisions: last!.last_sequence, rivals: rivals!.n, lastSequence: last!.last_sequence };
}

/** Every value of the program against its schema and its key. */
export function* verifyValues(context: Context): Procedure<Verification> {
  const problems: Problem[] = [];
  let checked = 0;
  for (let page = yield* changesSince(context, 0, PAGE); page.length > 0; ) {
    checked += page.length;
    problems.push(...page.flatMap(faultsOf));
    page = yield* changesSince(context, page.at(-1)!.sequence, PAGE);
  }
  const [last] = yield* rows(context.db.selectFrom('programs').select('last_sequence').where('program_id', '=', context.program));
  if (last!.last_sequence !== checked) {
    problems.push({
      where: { file: 'revisions' },
      got: `${checked} revisions`,
      expected: `${last!.last_sequence}, as were numbered`,
      fix: 'Restore the newest backup that verifies.',
    });
  }
  return { checked, problems };
}

function faultsOf({ kind, key, value, revisionId }: StoredRevision): Problem[] {
  if (value === null) return [];
  const file = `revision ${revisionId}`;
  const parsed = valueSchemas[kind].safeParse(value);
  if (!parsed.success) {
    return parsed.error.issues.map((issue) => {
      const problem = valueProblem(issue, value);
      return { ...problem, where: { ...problem.where, file } };
    });
  }
  const expected = keyOf(kind, value);
  return key === expected ? [] : [{ where: { file, column: 'natural_key' }, got: key, expected, fix: 'Restore from a backup.' }];
}
