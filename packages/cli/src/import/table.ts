import {
  type Context,
  checkReferences,
  checkTable,
  ok,
  type Program,
  type RecordKind,
  type Result,
  withNewRecords,
} from '@duskwatch/core';
import { catalogueWords, ProblemList, parseTable, type ReadTableOptions } from '@duskwatch/exchange';

/** One table of a program, held against the rest of the program as the database has it. Every problem is listed. */
export function readLooseTable<K extends RecordKind>(
  kind: K,
  text: string,
  file: string,
  held: Program,
  { maxProblems, onProgress }: ReadTableOptions,
): Result<Partial<Program>> {
  const problems = new ProblemList(file, maxProblems);
  const { records, rows, claimed } = parseTable(kind, text, problems, onProgress);
  const context: Context = {
    locate: (of, index) => (of === kind ? { file, row: rows[index]! } : { file: `${of} in the database` }),
    words: catalogueWords,
    report: problems.add,
  };
  checkTable(kind, records, context);
  // What an unreadable row names is there all the same, and not missing from the table that refers to it.
  const claims = { fields: new Set<string>(), traps: new Set<string>(), [kind]: claimed };
  checkReferences(withNewRecords(held, { [kind]: records }), context, claims);
  return problems.isEmpty ? ok({ [kind]: records }) : { ok: false, problems: problems.all() };
}
