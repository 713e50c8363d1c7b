import { createReadStream } from 'node:fs';
import { mkdir, mkdtemp, open, rm } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import type { Result } from '@duskwatch/core';
import { type Kept, readBackup } from '@duskwatch/server/backup';
import { unzipBackup } from '@duskwatch/server/unzip-backup';
import { type DataOption, dataFolder, isElsewhere } from '../database.ts';
import { done, faulty, misused, type Outcome, optionProblem } from '../outcome.ts';
import { note } from '../terminal.ts';
import { told } from './backup.ts';

export async function restore(backup: string, options: DataOption): Promise<Outcome> {
  if (isElsewhere(options))
    return misused(
      optionProblem('--data', '', 'a data folder: a backup is not restored into PostgreSQL', 'Name one, as --data restored.'),
    );
  const data = dataFolder(options);
  const restored = await readBackupOrZip(resolve(backup), data);
  if (!restored.ok) return faulty(...restored.problems);
  note(`Restored to ${data}, and read back: ${told(restored.value)}`);
  return done;
}

/** A backup as the app gives it is one zip: unpacked beside where it goes, and read as the folder it then is. */
async function readBackupOrZip(backup: string, data: string): Promise<Result<Kept>> {
  if (!(await isZip(backup))) return readBackup(backup, data);
  await mkdir(dirname(data), { recursive: true });
  const work = await mkdtemp(join(dirname(data), '.duskwatch-unzip-'));
  try {
    const unzipped = await unzipBackup(createReadStream(backup), join(work, 'backup'));
    return unzipped.ok ? await readBackup(join(work, 'backup'), data) : unzipped;
  } finally {
    await rm(work, { recursive: true, force: true });
  }
}

async function isZip(path: string): Promise<boolean> {
  const file = await open(path, 'r');
  try {
    if (!(await file.stat()).isFile()) return false;
    const { buffer, bytesRead } = await file.read(Buffer.alloc(4), 0, 4, 0);
    return bytesRead === 4 && buffer.readUInt32LE(0) === ZIP_SIGNATURE;
  } finally {
    await file.close();
  }
}

/** Of the first entry (APPNOTE of the zip format, section 4.3.7). */
const ZIP_SIGNATURE = 0x04034b50;
