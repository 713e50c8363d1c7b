import { ok, type Problem, type Result, refuse } from '@duskwatch/core';
import { append } from '../append.ts';
import { faultsOf, normalInstant } from '../prepare.ts';
import { type Context, type Driver, type Procedure, rows, run } from '../procedure.ts';
import { byRevision, revisionsOf, toStored } from '../queries.ts';
import type { RevisionRow } from '../tables.ts';
import type { ImportStore } from '../types.ts';
import { uuidv7 } from '../uuid.ts';
import type { ImportRow } from './tables.ts';
import type { KeptImport } from './types.ts';

export function importStoreOn({ read, write }: Pick<Driver, 'read' | 'write'>, context: Context): ImportStore {
  const { program } = context;
  return {
    list: () => read(list(context)),
    revisions: (importId) => read(revisions(context, importId)),
    undo: (importId, by) => write(program, undo(context, importId, by)),
  };
}

function* list({ db, program }: Context): Procedure<KeptImport[]> {
  const found = yield* rows(
    db.selectFrom('imports').selectAll().where('program_id', '=', program).orderBy('first_sequence', 'desc'),
  );
  return found.map(toKept);
}

const toKept = (row: ImportRow): KeptImport => ({
  importId: row.import_id,
  file: row.file,
  reading: row.reading === null ? null : JSON.parse(row.reading),
  match: row.match === null ? null : JSON.parse(row.match),
  author: row.author,
  at: row.at,
  added: row.added,
  changed: row.changed,
  undone: row.undone_by === null ? null : { author: row.undone_by, at: row.undone_at! },
});

export function* importById({ db, program }: Context, importId: string): Procedure<ImportRow | null> {
  const found = yield* rows(
    db.selectFrom('imports').selectAll().where('program_id', '=', program).where('import_id', '=', importId),
  );
  return found[0] ?? null;
}

function* rowsOf(context: Context, { first_sequence, last_sequence }: ImportRow): Procedure<RevisionRow[]> {
  const query = revisionsOf(context).where('sequence', '>=', first_sequence).where('sequence', '<=', last_sequence);
  return yield* rows(query.orderBy('sequence'));
}

function* revisions(context: Context, importId: string) {
  const found = yield* importById(context, importId);
  return found === null ? null : (yield* rowsOf(context, found)).map(toStored);
}

const BATCH = 2_000;
/** So many are enough to know what somebody changed. */
const NAMED = 20;

function* undo(context: Context, importId: string, by: { author: string; at: string }): Procedure<Result<{ undone: number }>> {
  const faults = faultsOf(by);
  if (faults.length > 0) return refuse(...faults);
  const found = yield* importById(context, importId);
  if (found === null) return refuse(noSuchImport(importId));
  if (found.undone_by !== null) return ok({ undone: 0 });
  const written = yield* rowsOf(context, found);
  const changed = written.filter(({ standing }) => standing !== 'current');
  if (changed.length > 0) return refuse(...changed.slice(0, NAMED).map((row) => changedSince(row, changed.length)));

  const at = normalInstant(by.at)!;
  for (let from = 0; from < written.length; from += BATCH) {
    const batch = written.slice(from, from + BATCH);
    const bases = yield* byRevision(
      context,
      batch.flatMap(({ base_revision_id }) => base_revision_id ?? []),
    );
    const before = new Map(bases.map((row) => [row.revision_id, row.value]));
    const taken = batch.map((row) => takenBack(row, before.get(row.base_revision_id ?? '') ?? null, { author: by.author, at }));
    const appended = yield* append(context, taken);
    if (!appended.ok) return appended;
  }
  yield* run(
    context.db
      .updateTable('imports')
      .set({ undone_by: by.author, undone_at: at })
      .where('program_id', '=', context.program)
      .where('import_id', '=', importId),
  );
  return ok({ undone: written.length });
}

const takenBack = (row: RevisionRow, value: string | null, by: { author: string; at: string }): RevisionRow => ({
  ...row,
  ...by,
  sequence: 0,
  revision_id: uuidv7(),
  base_revision_id: row.revision_id,
  settles: null,
  value,
  received_at: null,
  skew_ms: null,
});

const noSuchImport = (got: string): Problem => ({
  where: { column: 'importId' },
  got,
  expected: 'an import of this program',
  fix: 'Choose one from the list.',
});

const changedSince = ({ kind, natural_key }: RevisionRow, of: number): Problem => ({
  where: { file: kind },
  got: `${natural_key}, which was changed after the import (${of} in all)`,
  expected: 'records as the import left them',
  fix: 'Remove or correct what the import brought record by record; what people changed since is not taken from them.',
});
