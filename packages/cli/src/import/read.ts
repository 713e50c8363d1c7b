import { existsSync, statSync } from 'node:fs';
import { basename, join } from 'node:path';
import { ok, type Program, type Result, refuse, tables } from '@duskwatch/core';
import { DATA_PACKAGE_FILE, type ReadTableOptions, readProgramFolder, readText, tableOfHeader } from '@duskwatch/exchange';
import { headerOf } from './header.ts';
import { readLooseTable } from './table.ts';

/** What a folder or file holds, checked in itself and against what the database holds. */
export async function readImport(path: string, held: Program, options: ReadTableOptions): Promise<Result<Partial<Program>>> {
  if (statSync(path).isDirectory()) return readFolder(path, held, options);
  const text = await readText(path);
  if (!text.ok) return text;
  const file = basename(path);
  const header = headerOf(text.value);
  const kind = tableOfHeader(header);
  if (kind !== null) return readLooseTable(kind, text.value, file, held, options);
  return refuse({
    where: { file, row: 1 },
    got: header.join(', '),
    expected: `the columns of ${Object.values(tables)
      .map((table) => table.file)
      .join(', ')}`,
    fix: 'Correct the header.',
  });
}

async function readFolder(path: string, held: Program, options: ReadTableOptions): Promise<Result<Partial<Program>>> {
  const read = await readProgramFolder(path, options);
  if (!read.ok) return read;
  // A folder that does not say what it is called does not rename the program it joins.
  const isNamed = existsSync(join(path, DATA_PACKAGE_FILE)) || held.fields.length === 0;
  const { settings, ...records } = read.value;
  return ok(isNamed ? read.value : records);
}
