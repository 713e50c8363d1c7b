import { statSync } from 'node:fs';
import { basename } from 'node:path';
import { ok, type Program, type Result, type SheetProposal, type SheetReading } from '@duskwatch/core';
import { decodeText, isNoaaHeader, readBytes, tableOfHeader } from '@duskwatch/exchange';
import { headerOf } from './header.ts';
import { type ReadImportOptions, readImport } from './read.ts';
import { proposeSheet } from './sheet.ts';

/** What a path holds and what is still open about it, whatever it is; nothing is imported. */
export async function proposeImport(path: string, held: Program, options: ReadImportOptions): Promise<Result<SheetProposal>> {
  if (statSync(path, { throwIfNoEntry: false })?.isDirectory() || (await isTable(path))) {
    const read = await readImport(path, held, options);
    return read.ok ? ok({ reading: readingOfProgram(read.value), asideSheets: [], questions: [], match: null }) : read;
  }
  return proposeSheet(path, held, options);
}

/** A table of a program folder, known by its header. */
async function isTable(path: string): Promise<boolean> {
  const bytes = await readBytes(path);
  const text = bytes.ok ? decodeText(bytes.value, basename(path)) : bytes;
  if (!text.ok) return false;
  const header = headerOf(text.value);
  return !isNoaaHeader(header) && tableOfHeader(header) !== null;
}

function readingOfProgram({ traps = [], checks = [], weather = [], ...others }: Partial<Program>): SheetReading {
  const rest = Object.values(others).some((records) => Array.isArray(records) && records.length > 0);
  const kind = traps.length > 0 || rest ? 'folder' : checks.length > 0 ? 'counts' : 'weather';
  const days = new Set(checks.length > 0 ? checks.map(({ checkedOn }) => checkedOn) : weather.map(({ date }) => date));
  const sorted = [...days].sort();
  return {
    kind,
    traps: traps.length > 0 ? traps.length : new Set(checks.map(({ trapId }) => trapId)).size,
    checks: checks.length,
    insects: [...new Set(traps.map(({ insect }) => insect))].sort(),
    from: sorted[0] ?? null,
    to: sorted.at(-1) ?? null,
    words: [],
    days: days.size,
  };
}
