/**
 * A restored program in the place of the one that is there, which is set aside. What is to be moved is written down first,
 * so that a machine that stops in the middle goes on where it was when it starts again.
 */
import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { DATABASE_FILE, PHOTOS } from '@duskwatch/server/backup';

const MARK = 'restoring.json';
/** The database with its logs, in the order in which they may be gone. */
const MOVED = [`${DATABASE_FILE}-wal`, `${DATABASE_FILE}-shm`, DATABASE_FILE, PHOTOS] as const;

interface Moving {
  /** Folder of the restored program, within the data folder. */
  readonly from: string;
  /** Folder that takes what is there now. */
  readonly aside: string;
  /** What the restored program consists of. */
  readonly names: readonly string[];
  /** What was there, to be set aside. */
  readonly held: readonly string[];
}

/** Where the program that is there now will be set aside. */
export const asideFolder = (folder: string, now: Date): string =>
  join(folder, `before-restore-${now.toISOString().slice(0, 19).replaceAll(':', '')}`);

/** Writes down what is to be moved; from here on it will be. */
export function beginRestoring(folder: string, from: string, aside: string): void {
  const there = (of: string) => MOVED.filter((name) => existsSync(join(of, name)));
  const moving: Moving = { from, aside, names: there(from), held: there(folder) };
  mkdirSync(aside, { recursive: true });
  writeFileSync(join(folder, `${MARK}.part`), JSON.stringify(moving), { flush: true });
  renameSync(join(folder, `${MARK}.part`), join(folder, MARK));
}

/** Moves what was written down, from wherever it stopped; does nothing where nothing was. */
export function finishRestoring(folder: string): void {
  const mark = join(folder, MARK);
  if (!existsSync(mark)) return;
  const { from, aside, names, held } = JSON.parse(readFileSync(mark, 'utf8')) as Moving;
  for (const name of held) {
    // Set aside already: what stands there now is the restored one.
    if (!existsSync(join(aside, name)) && existsSync(join(folder, name))) renameSync(join(folder, name), join(aside, name));
  }
  for (const name of names) if (existsSync(join(from, name))) renameSync(join(from, name), join(folder, name));
  rmSync(mark);
  rmSync(dirname(from), { recursive: true, force: true });
}
