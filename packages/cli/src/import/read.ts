import { existsSync, statSync } from 'node:fs';
import { basename, join } from 'node:path';
import { ok, type Program, type Result } from '@duskwatch/core';
import {
  DATA_PACKAGE_FILE,
  decodeText,
  type ReadTableOptions,
  readBytes,
  readProgramFolder,
  tableOfHeader,
} from '@duskwatch/exchange';
import { headerOf } from './header.ts';
import { readSheet, type SheetOptions } from './sheet.ts';
import { readLooseTable } from './table.ts';

export type ReadImportOptions = SheetOptions & ReadTableOptions;

/** What a folder or file holds, checked in itself and against what the database holds. */
export async function readImport(path: string, held: Program, options: ReadImportOptions): Promise<Result<Partial<Program>>> {
  if (statSync(path, { throwIfNoEntry: false })?.isDirectory()) return readFolder(path, held, options);
  if (options.match !== undefined || options.sheet !== undefined) return readSheet(path, held, options);
  const bytes = await readBytes(path);
  if (!bytes.ok) return bytes;
  const text = decodeText(bytes.value, basename(path));
  const kind = text.ok ? tableOfHeader(headerOf(text.value)) : null;
  if (text.ok && kind !== null) return readLooseTable(kind, text.value, basename(path), held, options);
  return readSheet(path, held, options);
}

async function readFolder(path: string, held: Program, options: ReadTableOptions): Promise<Result<Partial<Program>>> {
  const read = await readProgramFolder(path, options);
  if (!read.ok) return read;
  // A folder that does not say what it is called does not rename the program it joins.
  const isNamed = existsSync(join(path, DATA_PACKAGE_FILE)) || held.fields.length === 0;
  const { settings, ...records } = read.value;
  return ok(isNamed ? read.value : records);
}
