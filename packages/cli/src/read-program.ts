import type { IsoDay, Program, Result } from '@duskwatch/core';
import { readProgramFolder } from '@duskwatch/exchange';
import { readingDay } from '@duskwatch/server/clock';
import { type DataOption, withDatabase } from './database.ts';
import { dayOption } from './heat-options.ts';
import { faulty, misused, type Outcome } from './outcome.ts';

export interface ReadOptions extends DataOption {
  readonly on?: string;
  readonly json?: boolean;
}

export interface ProgramOnDay {
  readonly program: Program;
  readonly on: IsoDay;
}

/** The program in a folder, or else in the database, and the day to stand on; or why the command ends. */
export async function programOnDay(folder: string | undefined, options: ReadOptions): Promise<ProgramOnDay | Outcome> {
  const asked = options.on === undefined ? null : dayOption('--on', options.on);
  if (asked && !asked.ok) return misused(...asked.problems);
  const read = await readProgram(folder, options);
  if (!read.ok) return faulty(...read.problems);
  return { program: read.value, on: options.on ?? readingDay(read.value) };
}

async function readProgram(folder: string | undefined, options: DataOption): Promise<Result<Program>> {
  if (folder !== undefined) return readProgramFolder(folder);
  return { ok: true, value: await withDatabase(options, (store) => store.loadProgram()) };
}

/** The program's name, marked where it is invented, and the day. */
export const titleOf = ({ program: { settings }, on }: ProgramOnDay): string =>
  `${settings.name}${settings.invented ? ' (invented)' : ''}, ${on}`;
