import { existsSync, statSync } from 'node:fs';
import { basename, join } from 'node:path';
import { newSources, ok, type Program, type Result } from '@duskwatch/core';
import {
  DATA_PACKAGE_FILE,
  decodeText,
  isNoaaHeader,
  isProgramZip,
  type NoaaUnits,
  noaaStations,
  type ReadTableOptions,
  readBytes,
  readNoaaDaily,
  readProgramFolder,
  readProgramZip,
  tableOfHeader,
} from '@duskwatch/exchange';
import { headerOf } from './header.ts';
import { readSheet, type SheetOptions } from './sheet.ts';
import { readLooseTable } from './table.ts';

export interface ReadImportOptions extends SheetOptions, ReadTableOptions {
  /** Units of a station file that does not say. */
  readonly units?: NoaaUnits;
}

/** What a folder or file holds, checked in itself and against what the database holds. */
export async function readImport(path: string, held: Program, options: ReadImportOptions): Promise<Result<Partial<Program>>> {
  if (statSync(path, { throwIfNoEntry: false })?.isDirectory()) return readFolder(path, held, options);
  if (options.match !== undefined || options.sheet !== undefined || options.answers !== undefined)
    return onlyNewSources(await readSheet(path, held, options), held);
  const bytes = await readBytes(path);
  if (!bytes.ok) return bytes;
  const file = basename(path);
  if (isProgramZip(bytes.value)) return joining(readProgramZip(bytes.value, file, options), held, true);
  const text = decodeText(bytes.value, file);
  // What is no text is a workbook, or refused as neither.
  if (!text.ok) return onlyNewSources(await readSheet(path, held, options), held);
  const header = headerOf(text.value);
  if (isNoaaHeader(header)) return onlyNewSources(readStation(text.value, file, options), held);
  const kind = tableOfHeader(header);
  return kind === null
    ? onlyNewSources(await readSheet(path, held, options), held)
    : readLooseTable(kind, text.value, file, held, options);
}

function readStation(text: string, file: string, { units }: ReadImportOptions): Result<Partial<Program>> {
  const read = readNoaaDaily(text, file, units === undefined ? {} : { units });
  return read.ok ? ok({ weather: read.value, sources: noaaStations(text) }) : read;
}

function onlyNewSources(read: Result<Partial<Program>>, held: Program): Result<Partial<Program>> {
  if (!read.ok) return read;
  return ok({ ...read.value, sources: newSources(read.value.sources ?? [], held.sources) });
}

async function readFolder(path: string, held: Program, options: ReadTableOptions): Promise<Result<Partial<Program>>> {
  return joining(await readProgramFolder(path, options), held, existsSync(join(path, DATA_PACKAGE_FILE)));
}

/** A folder that does not say what it is called does not rename the program it joins. */
function joining(read: Result<Program>, held: Program, saysItsName: boolean): Result<Partial<Program>> {
  if (!read.ok) return read;
  const { settings, ...records } = read.value;
  return ok(saysItsName || held.fields.length === 0 ? { ...records, settings } : records);
}
