import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { readBackup } from '@duskwatch/server/backup';
import { done, faulty, type Outcome } from '../outcome.ts';
import { note } from '../terminal.ts';
import { told } from './backup.ts';

/** Brings a backup back into a folder that is cleared away again: what a restore would say, and nothing is changed. */
export async function verify(backup: string): Promise<Outcome> {
  const work = await mkdtemp(join(tmpdir(), 'duskwatch-verify-'));
  try {
    const read = await readBackup(resolve(backup), join(work, 'data'));
    if (!read.ok) return faulty(...read.problems);
    note(`${resolve(backup)} can be restored: ${told(read.value)}`);
    return done;
  } finally {
    await rm(work, { recursive: true, force: true });
  }
}
