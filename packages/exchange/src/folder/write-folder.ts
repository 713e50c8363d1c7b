import { mkdir, mkdtemp, open, rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { type Program, RECORD_KINDS, tables } from '@duskwatch/core';
import { writeTable } from '../table/write-table.ts';
import { DATA_PACKAGE_FILE, dataPackage, tablesToWrite } from './data-package.ts';

/**
 * Writes a program as a folder of CSV files that is a Data Package. All files are written and flushed beside their
 * place first and then moved in one by one, so that a full disk or a lost connection leaves what was there before.
 * A table of ours that no longer has rows is removed; files that are not ours stay.
 */
export async function writeProgramFolder(program: Program, dir: string): Promise<void> {
  const files = new Map(tablesToWrite(program).map((kind) => [tables[kind].file, writeTable(kind, program[kind])]));
  files.set(DATA_PACKAGE_FILE, `${JSON.stringify(dataPackage(program), null, 2)}\n`);
  await mkdir(dir, { recursive: true });
  const staged = await mkdtemp(join(dir, '.writing-'));
  try {
    for (const [file, text] of files) await writeFlushed(join(staged, file), text);
    for (const file of files.keys()) await rename(join(staged, file), join(dir, file));
    const empty = RECORD_KINDS.map((kind) => tables[kind].file).filter((file) => !files.has(file));
    for (const file of empty) await rm(join(dir, file), { force: true });
  } finally {
    await rm(staged, { recursive: true, force: true });
  }
}

async function writeFlushed(path: string, text: string): Promise<void> {
  const file = await open(path, 'w');
  try {
    await file.writeFile(text);
    await file.sync();
  } finally {
    await file.close();
  }
}
