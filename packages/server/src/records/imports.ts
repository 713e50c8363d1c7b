/** Whether records that come in together may join the program, and whether those that came may leave it. */
import {
  type Context,
  catalogueWords,
  checkReferences,
  checkTable,
  emptyProgram,
  naturalKey,
  type Problem,
  type Program,
  RECORD_KINDS,
  type RecordKind,
  withNewRecords,
} from '@duskwatch/core';
import type { StoredRevision } from '@duskwatch/store';
import { futureDay } from './future-day.ts';

/** A program folder brings records of any kind. */
export type ImportedRecords = Partial<Omit<Program, 'settings'>>;

/** What is wrong with the records, in themselves and beside what the program holds; rows count within each table. */
export function faultsOfImport(held: Program, records: ImportedRecords, nowMs: number): Problem[] {
  if (held.settings.invented) return [intoInvented];
  const problems: Problem[] = [];
  const brought = { ...emptyProgram(), ...records };
  const added = Object.fromEntries(RECORD_KINDS.map((kind) => [kind, brought[kind].length]));
  const context: Context = {
    locate: (kind, index) => ({ file: index < (added[kind] ?? 0) ? kind : HELD, row: index + 1 }),
    words: catalogueWords,
    // What was wrong before is no fault of what comes in.
    report: (problem) => problem.where.file !== HELD && problems.push(problem),
  };
  for (const kind of RECORD_KINDS) checkTable(kind, brought[kind] as never, context);
  checkReferences(withNewRecords(held, records), context);
  brought.checks.forEach((check, index) => {
    const problem = futureDay('checks', check, nowMs);
    if (problem !== null) problems.push({ ...problem, where: { ...problem.where, file: 'checks', row: index + 1 } });
  });
  return problems;
}

const HELD = 'the program';

/** The other way about: what was invented would pass for what people counted. */
export const inventedFolder: Problem = {
  where: {},
  got: 'a program folder that says it is invented',
  expected: 'records of your own',
  fix: 'Look at it in the demo. If it is your own after all, set invented to false in its datapackage.json.',
};

const intoInvented: Problem = {
  where: {},
  got: 'a program that is invented, to try things on',
  expected: 'a program of your own',
  fix: 'Go over to your own program (under Program), and import there: invented and real records are never mixed.',
};

/** What would be left without what it stands on, were the revisions taken back: checks of traps that go, traps of fields. */
export function faultsOfUndoing(held: Program, revisions: readonly StoredRevision[]): Problem[] {
  const gone = new Set(
    revisions.filter(({ baseRevisionId }) => baseRevisionId === null).map(({ kind, key }) => `${kind} ${key}`),
  );
  const left = { ...emptyProgram(), ...held } as unknown as Record<RecordKind, readonly unknown[]>;
  for (const kind of RECORD_KINDS) {
    const keyOf = naturalKey[kind] as (record: unknown) => string;
    left[kind] = left[kind].filter((record) => !gone.has(`${kind} ${keyOf(record)}`));
  }
  const before = referenceFaults(held);
  return [...referenceFaults(left as unknown as Program)]
    .flatMap(([text, problem]) => (before.has(text) ? [] : [problem]))
    .slice(0, NAMED);
}

const NAMED = 20;

function referenceFaults(program: Program): Map<string, Problem> {
  const faults = new Map<string, Problem>();
  checkReferences(program, {
    locate: (kind) => ({ file: kind }),
    words: null,
    report: (problem) => faults.set(JSON.stringify(problem), problem),
  });
  return faults;
}
