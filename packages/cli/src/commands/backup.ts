import { resolve } from 'node:path';
import { type Kept, writeBackup } from '@duskwatch/server/backup';
import { type DataOption, photoFolder, withDatabase } from '../database.ts';
import { done, faulty, type Outcome } from '../outcome.ts';
import { note } from '../terminal.ts';

export async function backup(folder: string, options: DataOption): Promise<Outcome> {
  const to = resolve(folder);
  const written = await withDatabase(options, (store) => writeBackup(store, photoFolder(options), to));
  if (!written.ok) return faulty(...written.problems);
  note(`Backed up to ${to}, and read back: ${told(written.value)}`);
  return done;
}

/** What a backup holds, and what it cannot. */
export function told({ revisions, photos, missing }: Kept): string {
  const held = `${revisions} revisions of records, ${photos} photos.`;
  if (missing.length === 0) return held;
  const [example] = missing;
  return `${held}\nNot here: ${missing.length} photos that checks name, such as ${example}. They may still be on the phones that took them.`;
}
