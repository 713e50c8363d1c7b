import { ok, type Problem, type Program, type Result, refuse } from '@duskwatch/core';
import { nextSequence, setStanding } from './append.ts';
import { importById } from './imports/store.ts';
import type { ImportedFile } from './imports/types.ts';
import { faultsOf, normalInstant, valueProblem } from './prepare.ts';
import { type Context, insert, type Procedure, rows, run } from './procedure.ts';
import { atKeys } from './queries.ts';
import type { RevisionRow } from './tables.ts';
import type { Imported, ImportOptions, StoredKind, ValueOf } from './types.ts';
import { uuidv7 } from './uuid.ts';
import { keyOf, STORED_KINDS, toJson, valueSchemas, valuesOf } from './values.ts';

const BATCH = 5_000;

/** One record to bring in. */
interface Entry {
  readonly key: string;
  readonly json: string;
}

export function* importProgram(
  context: Context,
  program: Partial<Program>,
  { author, at, as, onProgress }: ImportOptions,
): Procedure<Result<Imported>> {
  const read = readEntries(program);
  const problems = [...faultsOf({ author, at }), ...(read.ok ? [] : read.problems)];
  if (!read.ok || problems.length > 0) return refuse(...problems);

  const earlier = as === undefined ? null : yield* importById(context, as.importId);
  if (earlier !== null) return ok({ added: 0, changed: 0, unchanged: earlier.added + earlier.changed });
  const first = (yield* lastSequence(context)) + 1;
  const said = { author, at: normalInstant(at)! };
  const total = [...read.value.values()].reduce((sum, entries) => sum + entries.length, 0);
  const counts = { added: 0, changed: 0, unchanged: 0 };
  let done = 0;
  for (const [kind, entries] of read.value) {
    for (let from = 0; from < entries.length; from += BATCH) {
      const batch = entries.slice(from, from + BATCH);
      yield* importBatch(context, kind, batch, said, counts);
      done += batch.length;
      onProgress?.({ done, total });
    }
  }
  if (as !== undefined) yield* keep(context, as, said, { first, last: yield* lastSequence(context) }, counts);
  return ok(counts);
}

function* lastSequence({ db, program }: Context): Procedure<number> {
  const [row] = yield* rows(db.selectFrom('programs').select('last_sequence').where('program_id', '=', program));
  return row!.last_sequence;
}

function* keep(
  { db, program }: Context,
  { importId, file, reading, match }: ImportedFile,
  said: { author: string; at: string },
  sequences: { first: number; last: number },
  { added, changed }: { added: number; changed: number },
): Procedure<void> {
  const row = {
    program_id: program,
    import_id: importId,
    file,
    ...said,
    first_sequence: sequences.first,
    last_sequence: sequences.last,
    added,
    changed,
    reading: reading === null ? null : JSON.stringify(reading),
    match: match === null ? null : JSON.stringify(match),
    undone_by: null,
    undone_at: null,
  };
  yield* run(db.insertInto('imports').values(row));
}

function readEntries(program: Partial<Program>): Result<Map<StoredKind, Entry[]>> {
  const read = new Map<StoredKind, Entry[]>();
  const problems: Problem[] = [];
  for (const kind of STORED_KINDS) {
    const byKey = new Map<string, Entry>();
    for (const [index, value] of (valuesOf(program, kind) ?? []).entries()) {
      const where = { file: kind, row: index + 1 };
      const parsed = valueSchemas[kind].safeParse(value);
      if (!parsed.success) {
        problems.push(...parsed.error.issues.map((issue) => withPlace(valueProblem(issue, value), where)));
        continue;
      }
      const entry = entryOf(kind, parsed.data);
      const before = byKey.get(entry.key);
      if (before && before.json !== entry.json) {
        problems.push({
          where,
          got: `${entry.json} and ${before.json}`,
          expected: `one record for ${entry.key}`,
          fix: 'Keep the right one of the two.',
        });
      }
      byKey.set(entry.key, entry);
    }
    read.set(kind, [...byKey.values()]);
  }
  return problems.length > 0 ? refuse(...problems) : ok(read);
}

const entryOf = (kind: StoredKind, value: ValueOf<StoredKind>): Entry => ({ key: keyOf(kind, value), json: toJson(kind, value) });

const withPlace = (problem: Problem, place: Problem['where']): Problem => ({ ...problem, where: { ...problem.where, ...place } });

/**
 * The standing of what comes in is known without asking the records' whole histories: it builds on what is current,
 * or on a removal, and where there is neither nobody else claims the key.
 */
function* importBatch(
  context: Context,
  kind: StoredKind,
  batch: readonly Entry[],
  said: { author: string; at: string },
  counts: { added: number; changed: number; unchanged: number },
): Procedure<void> {
  const keys = batch.map((entry) => entry.key);
  const current = new Map((yield* atKeys(context, kind, keys, 'current')).map((row) => [row.natural_key, row]));
  const removed = new Map((yield* atKeys(context, kind, keys, 'removed')).map((row) => [row.natural_key, row]));
  const outdated: string[] = [];
  const fresh: RevisionRow[] = [];
  for (const { key, json } of batch) {
    const held = current.get(key);
    if (held?.value === json) {
      counts.unchanged += 1;
      continue;
    }
    const base = held ?? removed.get(key);
    if (held) counts.changed += 1;
    else counts.added += 1;
    if (base) outdated.push(base.revision_id);
    const id = uuidv7();
    fresh.push({
      program_id: context.program,
      sequence: 0,
      revision_id: id,
      record_id: base?.record_id ?? id,
      kind,
      natural_key: key,
      base_revision_id: base?.revision_id ?? null,
      settles: null,
      ...said,
      value: json,
      standing: 'current',
      received_at: null,
      skew_ms: null,
    });
  }
  if (fresh.length === 0) return;
  yield* setStanding(context, outdated, 'past');
  const next = yield* nextSequence(context, fresh.length);
  for (const [index, row] of fresh.entries()) row.sequence = next + index;
  yield* insert(fresh);
}
