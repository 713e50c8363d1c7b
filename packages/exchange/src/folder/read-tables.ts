/** A program's tables as texts, whether they come from a folder or a zip of one. */
import {
  allTables,
  type Context,
  checkReferences,
  checkTable,
  emptyProgram,
  nearest,
  ok,
  type Problem,
  type Program,
  type ProgramSettings,
  RECORD_KINDS,
  type RecordKind,
  type Result,
  tables,
} from '@duskwatch/core';
import { catalogueWords } from '../catalogue-words.ts';
import { ProblemList } from '../files/problem-list.ts';
import { type ParsedTable, parseTable, type ReadTableOptions } from '../table/read-table.ts';

type Parsed = { readonly [K in RecordKind]: ParsedTable<K> | null };
export type ProblemLists = Record<RecordKind, ProblemList>;

export const problemLists = (maxProblems?: number): ProblemLists =>
  Object.fromEntries(RECORD_KINDS.map((kind) => [kind, new ProblemList(tables[kind].file, maxProblems)])) as ProblemLists;

/** The program that these texts hold; refused with every problem of every table, those found before among them. */
export function programOf(
  texts: ReadonlyMap<RecordKind, string>,
  lists: ProblemLists,
  settings: Result<ProgramSettings>,
  fallback: ProgramSettings,
  options: ReadTableOptions,
): Result<Program> {
  const parsed = parseAll(texts, lists, options.onProgress);
  const program = assemble(settings.ok ? settings.value : fallback, parsed);
  checkAll(program, parsed, lists, options);
  const problems = [...(settings.ok ? [] : settings.problems), ...RECORD_KINDS.flatMap((kind) => lists[kind].all())];
  return problems.length === 0 ? ok(program) : { ok: false, problems };
}

export function missingFile(file: string, names: readonly string[]): Problem {
  const ours = new Set<string>(allTables.map((table) => table.file));
  const close = nearest(
    file,
    names.filter((name) => !ours.has(name.toLowerCase())),
  );
  const fix = close === null ? `Add ${file}.` : `There is ${close}: rename it ${file} if that is the table.`;
  return { where: { file }, got: 'no such file', expected: 'fields.csv, traps.csv and checks.csv in the folder', fix };
}

function parseAll(
  texts: ReadonlyMap<RecordKind, string>,
  lists: ProblemLists,
  onProgress: ReadTableOptions['onProgress'],
): Parsed {
  const total = [...texts.values()].reduce((sum, text) => sum + text.length, 0);
  let before = 0;
  const parse = (kind: RecordKind) => {
    const text = texts.get(kind);
    if (text === undefined) return null;
    const table = parseTable(kind, text, lists[kind], (done) => onProgress?.(before + done, total));
    before += text.length;
    return table;
  };
  return Object.fromEntries(RECORD_KINDS.map((kind) => [kind, parse(kind)])) as Parsed;
}

function assemble(settings: ProgramSettings, parsed: Parsed): Program {
  const records = Object.fromEntries(RECORD_KINDS.map((kind) => [kind, parsed[kind]?.records ?? []]));
  return { ...emptyProgram(), ...(records as Partial<Program>), settings };
}

function checkAll(program: Program, parsed: Parsed, lists: ProblemLists, options: ReadTableOptions): void {
  const { words = catalogueWords } = options;
  const contextOf = (kind: RecordKind): Context => ({
    locate: (of, index) => ({ file: tables[of].file, row: parsed[of]!.rows[index]! }),
    words,
    report: lists[kind].add,
  });
  for (const kind of RECORD_KINDS) checkTable(kind, program[kind], contextOf(kind));
  const kindOf = new Map<string, RecordKind>(allTables.map((table) => [table.file, table.kind]));
  const report = (problem: Problem) => lists[kindOf.get(problem.where.file!)!].add(problem);
  const claimed = { fields: parsed.fields?.claimed ?? null, traps: parsed.traps?.claimed ?? null };
  checkReferences(program, { ...contextOf('fields'), report }, claimed);
}
