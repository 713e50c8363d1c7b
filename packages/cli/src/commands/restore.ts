import { resolve } from 'node:path';
import { readBackup } from '@duskwatch/server/backup';
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
  const restored = await readBackup(resolve(backup), data);
  if (!restored.ok) return faulty(...restored.problems);
  note(`Restored to ${data}, and read back: ${told(restored.value)}`);
  return done;
}
