import { copyFile, lstat, mkdir, mkdtemp, open, rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { type Program, RECORD_KINDS, tables } from '@duskwatch/core';
import { DATA_PACKAGE_FILE } from './data-package.ts';
import { programFiles } from './program-files.ts';

/**
 * Writes a program as a folder of CSV files that is a Data Package. All files are written and flushed beside their
 * place first and then moved in; when anything fails, what was there before is put back. A table of ours that no
 * longer has rows is removed; files that are not ours stay.
 */
export async function writeProgramFolder(program: Program, dir: string): Promise<void> {
  const files = programFiles(program);
  await mkdir(dir, { recursive: true });
  const work = await mkdtemp(join(dir, '.writing-'));
  try {
    for (const [file, text] of files) await writeFlushed(join(work, file), text);
    await replaceFiles(dir, work, [...files.keys()]);
  } finally {
    await rm(work, { recursive: true, force: true });
  }
}

const OUR_FILES = [...RECORD_KINDS.map((kind) => tables[kind].file), DATA_PACKAGE_FILE];

async function replaceFiles(dir: string, work: string, written: readonly string[]): Promise<void> {
  const before = join(work, 'before');
  await mkdir(before);
  const kept = new Set<string>();
  for (const file of OUR_FILES) if (await keepCopy(join(dir, file), join(before, file))) kept.add(file);
  try {
    for (const file of written) await rename(join(work, file), join(dir, file));
    for (const file of kept) if (!written.includes(file)) await rm(join(dir, file));
  } catch (error) {
    for (const file of OUR_FILES) {
      if (kept.has(file)) await rename(join(before, file), join(dir, file));
      else await rm(join(dir, file), { force: true });
    }
    throw error;
  }
}

/** False when there is nothing to keep; throws where something other than a file has the name of ours. */
async function keepCopy(from: string, to: string): Promise<boolean> {
  const about = await lstat(from).catch(() => null);
  if (about === null) return false;
  if (!about.isFile()) throw new Error(`cannot write ${from}: something that is not a file is in the way`);
  await copyFile(from, to);
  return true;
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
