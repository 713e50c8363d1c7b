import { statSync } from 'node:fs';
import { basename } from 'node:path';
import { ok, type Program, type Result, type SheetProposal } from '@duskwatch/core';
import { decodeText, isNoaaHeader, isProgramZip, readBytes, readingOfProgram, tableOfHeader } from '@duskwatch/exchange';
import { headerOf } from './header.ts';
import { type ReadImportOptions, readImport } from './read.ts';
import { proposeSheet } from './sheet.ts';

/** What a path holds and what is still open about it, whatever it is; nothing is imported. */
export async function proposeImport(path: string, held: Program, options: ReadImportOptions): Promise<Result<SheetProposal>> {
  if (statSync(path, { throwIfNoEntry: false })?.isDirectory() || (await isTableOrZip(path))) {
    const read = await readImport(path, held, options);
    return read.ok ? ok({ reading: readingOfProgram(read.value), asideSheets: [], questions: [], match: null }) : read;
  }
  return proposeSheet(path, held, options);
}

/** A table of a program folder, known by its header, or all of one as a zip. */
async function isTableOrZip(path: string): Promise<boolean> {
  const bytes = await readBytes(path);
  if (bytes.ok && isProgramZip(bytes.value)) return true;
  const text = bytes.ok ? decodeText(bytes.value, basename(path)) : bytes;
  if (!text.ok) return false;
  const header = headerOf(text.value);
  return !isNoaaHeader(header) && tableOfHeader(header) !== null;
}
