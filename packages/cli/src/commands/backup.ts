import { resolve } from 'node:path';
import { type DataOption, withDatabase } from '../database.ts';
import { done, type Outcome } from '../outcome.ts';
import { note } from '../terminal.ts';

export async function backup(file: string, options: DataOption): Promise<Outcome> {
  await withDatabase(options, (store) => store.backup(resolve(file)));
  note(`Backed up to ${resolve(file)}`);
  return done;
}
