import { readdir } from 'node:fs/promises';
import { basename, join, resolve } from 'node:path';
import {
  allTables,
  emptyProgram,
  ok,
  type Program,
  type ProgramSettings,
  type RecordKind,
  type Result,
  refuse,
} from '@duskwatch/core';
import { readText } from '../files/read-text.ts';
import type { ReadTableOptions } from '../table/read-table.ts';
import { DATA_PACKAGE_FILE, settingsFrom } from './data-package.ts';
import { missingFile, type ProblemLists, problemLists, programOf } from './read-tables.ts';

export interface ReadFolderOptions extends ReadTableOptions {
  /** Largest file read, in bytes; 64 MB unless given. */
  readonly maxBytes?: number;
}

/**
 * Reads a program folder. Fields, traps and checks must be there; any other table may be missing. Refused with every
 * problem of every file, each with its row; nothing is read in part.
 */
export async function readProgramFolder(dir: string, options: ReadFolderOptions = {}): Promise<Result<Program>> {
  const listing = await listFolder(dir);
  if (!listing.ok) return listing;
  const names = listing.value;
  const lists = problemLists(options.maxProblems);

  const texts = await readTexts(dir, names, lists, options);
  const fallback = settingsWithout(dir);
  const settings = await readSettings(dir, names, fallback, options);
  return programOf(texts, lists, settings, fallback, options);
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
  lists: ProblemLists,
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
