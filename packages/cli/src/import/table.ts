import {
  type Context,
  checkReferences,
  type Locate,
  naturalKey,
  ok,
  type Problem,
  type Program,
  RECORD_KINDS,
  type RecordKind,
  type RecordOf,
  type Result,
} from '@duskwatch/core';
import { catalogueWords, type ReadTableOptions, readTable } from '@duskwatch/exchange';

/** One table of a program, held against the rest of the program as the database has it. */
export function readLooseTable<K extends RecordKind>(
  kind: K,
  text: string,
  file: string,
  held: Program,
  options: ReadTableOptions,
): Result<Partial<Program>> {
  const read = readTable(kind, text, file, options);
  if (!read.ok) return read;
  const { records, rows } = read.value;
  const problems = problemsWith({ [kind]: records }, held, (of, index) =>
    of === kind ? { file, row: rows[index]! } : { file: `${of} in the database` },
  );
  return problems.length > 0 ? { ok: false, problems } : ok({ [kind]: records });
}

/** What would be wrong between the tables once these records had joined those that are held. */
export function problemsWith(records: Partial<Program>, held: Program, locate: Locate): Problem[] {
  const problems: Problem[] = [];
  const context: Context = { locate, words: catalogueWords, report: (problem) => problems.push(problem) };
  checkReferences(joined(records, held), context);
  return problems;
}

/** The new records first, so that their index is that of the file; then the held ones that they do not restate. */
function joined(records: Partial<Program>, held: Program): Program {
  const join = <K extends RecordKind>(kind: K): readonly RecordOf<K>[] => {
    const added = records[kind] as readonly RecordOf<K>[] | undefined;
    if (!added) return held[kind] as readonly RecordOf<K>[];
    const keyOf = naturalKey[kind] as (record: RecordOf<K>) => string;
    const restated = new Set(added.map(keyOf));
    return [...added, ...(held[kind] as readonly RecordOf<K>[]).filter((record) => !restated.has(keyOf(record)))];
  };
  return { ...held, ...Object.fromEntries(RECORD_KINDS.map((kind) => [kind, join(kind)])) };
}
