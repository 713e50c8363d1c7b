/** A program folder packed as a zip, as the app gives it: read without a file system. */
import { allTables, emptyProgram, ok, type Program, type RecordKind, type Result, refuse } from '@duskwatch/core';
import { unzipSync } from 'fflate';
import { decodeSheetText } from '../files/decode-sheet-text.ts';
import { unpackedBytes } from '../sheet/unpacked-bytes.ts';
import type { ReadTableOptions } from '../table/read-table.ts';
import { DATA_PACKAGE_FILE, settingsFrom } from './data-package.ts';
import { missingFile, problemLists, programOf } from './read-tables.ts';

const MOST_UNPACKED_MB = 300;

const TABLES = new Map<string, RecordKind>(allTables.map(({ file, kind }) => [file, kind]));

/** The name of a file within the folder that was packed, whatever the folder is called. */
const baseName = (path: string): string => path.split('/').at(-1)!.toLowerCase();

/** Whether a zip holds the tables of a program rather than a workbook: by its names, nothing is unpacked. */
export function isProgramZip(bytes: Uint8Array): boolean {
  const names = new Set<string>();
  try {
    unzipSync(bytes, {
      filter: ({ name }) => {
        names.add(baseName(name));
        return false;
      },
    });
  } catch {
    return false;
  }
  return allTables.some(({ file, required }) => required && names.has(file));
}

/** Refused with every problem of every table, each with its row; nothing is read in part. */
export function readProgramZip(bytes: Uint8Array, file: string, options: ReadTableOptions = {}): Result<Program> {
  const unpacked = unpackedBytes(bytes);
  if (unpacked === null || unpacked > MOST_UNPACKED_MB * 1e6) {
    return refuse({
      where: { file },
      got: unpacked === null ? 'a damaged zip' : `a zip that unpacks to ${Math.round(unpacked / 1e6)} MB`,
      expected: `a program folder of at most ${MOST_UNPACKED_MB} MB`,
      fix: 'Pack the folder of tables anew, or import it with the command.',
    });
  }
  let entries: Record<string, Uint8Array>;
  try {
    entries = unzipSync(bytes, { filter: ({ name }) => TABLES.has(baseName(name)) || baseName(name) === DATA_PACKAGE_FILE });
  } catch (error) {
    return refuse({
      where: { file },
      got: `a damaged zip: ${(error as Error).message}`,
      expected: 'a zip that is whole',
      fix: 'Pack the folder of tables anew.',
    });
  }
  const lists = problemLists(options.maxProblems);
  const texts = new Map<RecordKind, string>();
  const fallback = {
    ...emptyProgram().settings,
    name: file.replace(/\.zip$/i, '').slice(0, 120) || emptyProgram().settings.name,
  };
  let settings: ReturnType<typeof settingsFrom> = ok(fallback);
  for (const [path, packed] of Object.entries(entries)) {
    const name = baseName(path);
    const text = decodeSheetText(packed) ?? '';
    const kind = TABLES.get(name);
    if (name === DATA_PACKAGE_FILE) settings = settingsFrom(text, fallback);
    else if (kind !== undefined) texts.set(kind, text);
  }
  for (const { kind, file: wanted, required } of allTables)
    if (required && !texts.has(kind)) lists[kind].add(missingFile(wanted, Object.keys(entries).map(baseName)));
  return programOf(texts, lists, settings, fallback, options);
}
