import { readdir } from 'node:fs/promises';
import { basename, join, resolve } from 'node:path';
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
  refuse,
  tables,
} from '@duskwatch/core';
import { catalogueWords } from '../catalogue-words.ts';
import { ProblemList } from '../files/problem-list.ts';
import { readText } from '../files/read-text.ts';
import { type ParsedTable, parseTable, type ReadTableOptions } from '../table/read-table.ts';
import { DATA_PACKAGE_FILE, settingsFrom } from './data-package.ts';

export interface ReadFolderOptions extends ReadTableOptions {
  /** Largest file read, in bytes; 64 MB unless given. */
  readonly maxBytes?: number;
}

type Parsed = { readonly [K in RecordKind]: ParsedTable<K> | null };

/**
 * Reads a program folder. Fields, traps and checks must be there; any other table may be missing. Refused with every
 * problem of every file, each with its row; nothing is read in part.
 */
export async function readProgramFolder(dir: string, options: ReadFolderOptions = {}): Promise<Result<Program>> {
  const listing = await listFolder(dir);
  if (!listing.ok) return listing;
  const names = listing.value;
  const lists = Object.fromEntries(
    RECORD_KINDS.map((kind) => [kind, new ProblemList(tables[kind].file, options.maxProblems)]),
  ) as Record<RecordKind, ProblemList>;

  const texts = await readTexts(dir, names, lists, options);
  const parsed = parseAll(texts, lists, options.onProgress);
  const fallback = settingsWithout(dir);
  const settings = await readSettings(dir, names, fallback, options);
  const program = assemble(settings.ok ? settings.value : fallback, parsed);
  checkAll(program, parsed, lists, options);

  const problems = [...(settings.ok ? [] : settings.problems), ...RECORD_KINDS.flatMap((kind) => lists[kind].all())];
  return problems.length === 0 ? ok(program) : { ok: false, problems };
}

async function listFolder(dir: string): Promise<Result<string[]>> {
  try {
    return ok(await readdir(dir));
  } catch (error) {
    const got = (error as NodeJS.ErrnoException).code === 'ENOTDIR' ? 'a file' : 'no folder that can be read';
    return refuse({ where: { file: dir }, got, expected: 'a program folder', fix: 'Check the path.' });
  }
}

const pathOf = (dir: string, names: readonly string[], file: string): string | null => {
  const found = names.includes(file) ? file : names.find((name) => name.toLowerCase() === file);
  return found === undefined ? null : join(dir, found);
};

async function readTexts(
  dir: string,
  names: readonly string[],
  lists: Record<RecordKind, ProblemList>,
  { maxBytes }: ReadFolderOptions,
): Promise<Map<RecordKind, string>> {
  const texts = new Map<RecordKind, string>();
  for (const { kind, file, required } of allTables) {
    const path = pathOf(dir, names, file);
    if (path === null) {
      if (required) lists[kind].add(missingFile(file, names));
      continue;
    }
    const text = await readText(path, file, maxBytes);
    if (text.ok) texts.set(kind, text.value);
    else text.problems.forEach(lists[kind].add);
  }
  return texts;
}

function missingFile(file: string, names: readonly string[]): Problem {
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
  lists: Record<RecordKind, ProblemList>,
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

/** What a folder without a descriptor is called: by its own name. */
function settingsWithout(dir: string): ProgramSettings {
  const { settings } = emptyProgram();
  return { ...settings, name: basename(resolve(dir)).slice(0, 120) || settings.name };
}

async function readSettings(
  dir: string,
  names: readonly string[],
  fallback: ProgramSettings,
  options: ReadFolderOptions,
): Promise<Result<ProgramSettings>> {
  const path = pathOf(dir, names, DATA_PACKAGE_FILE);
  if (path === null) return ok(fallback);
  const text = await readText(path, DATA_PACKAGE_FILE, options.maxBytes);
  return text.ok ? settingsFrom(text.value, fallback) : text;
}

function assemble(settings: ProgramSettings, parsed: Parsed): Program {
  const records = Object.fromEntries(RECORD_KINDS.map((kind) => [kind, parsed[kind]?.records ?? []]));
  return { ...emptyProgram(), ...(records as Partial<Program>), settings };
}

function checkAll(program: Program, parsed: Parsed, lists: Record<RecordKind, ProblemList>, options: ReadFolderOptions): void {
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
