import { existsSync, readdirSync } from 'node:fs';
import { resolve } from 'node:path';
import { type DataOption, withDatabase } from '../database.ts';
import { done, misused, type Outcome, optionProblem } from '../outcome.ts';
import { note } from '../terminal.ts';

export async function exportFolder(folder: string, options: DataOption): Promise<Outcome> {
  const target = resolve(folder);
  if (isTaken(target)) return misused(takenFolder(target));
  const program = await withDatabase(options, (store) => store.loadProgram());
  const { writeProgramFolder } = await import('@duskwatch/exchange');
  await writeProgramFolder(program, target);
  note(`Exported ${program.settings.name} to ${target}`);
  return done;
}

/** Tables left over from another program would be read together with the new ones. */
export const isTaken = (folder: string): boolean => existsSync(folder) && readdirSync(folder).length > 0;

export const takenFolder = (folder: string) =>
  optionProblem('folder', folder, 'a new or empty folder', 'Name another folder, or empty this one first.');
