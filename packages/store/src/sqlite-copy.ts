/** Copies of a database, under another name until they are whole and checked: one cut short is never taken for a backup. */
import { copyFileSync, existsSync, renameSync, rmSync } from 'node:fs';
import { DatabaseSync } from 'node:sqlite';
import { StoreError } from './error.ts';
import { asStoreError, damaged, isDamage, openFile, refuseGarbage } from './sqlite-file.ts';
import type { Copied } from './types.ts';

/** How many revisions a copy must hold: from, to. A source in use may grow while it is copied. */
export type Expected = readonly [least: number, most: number];

/** Fill a new file, check it, and only then give it its name. Whatever fails, nothing is left of it. */
export async function newCopy(to: string, fill: (part: string) => Promise<Expected>): Promise<Copied> {
  if (existsSync(to))
    throw new StoreError('file-exists', `${to} exists already, and a backup never overwrites. Name another file.`);
  const part = `${to}.part`;
  clear(part);
  try {
    const expected = await fill(part);
    forgetOrigin(part);
    const held = checked(part, to, expected);
    renameSync(part, to);
    return held;
  } catch (error) {
    throw asStoreError(error, to);
  } finally {
    clear(part);
  }
}

/**
 * Bring a backup's file, or any copy of a database, to where a store will open it. The copy given is only read, and may
 * lie on a medium that cannot be written.
 */
export const restoreFile = (from: string, to: string): Promise<Copied> =>
  newCopy(to, async (part) => {
    refuseGarbage(from);
    for (const log of ['', '-wal']) if (log === '' || existsSync(from + log)) copyFileSync(from + log, part + log);
    const database = openFile(part, from);
    try {
      refuseDamage(database, from);
      const revisions = revisionsNumbered(database);
      return [revisions, revisions];
    } catch (error) {
      throw asStoreError(error, from);
    } finally {
      database.close();
    }
  });

export const revisionsNumbered = (database: DatabaseSync): number =>
  Number(database.prepare('select coalesce(sum(last_sequence), 0) as n from programs').get()!.n);

/** Throws when the database's own check finds anything. */
export function refuseDamage(database: DatabaseSync, file: string, check: Check = 'integrity_check'): void {
  const [found, ...more] = complaints(database, check);
  if (found !== undefined) throw damaged(file, more.length > 0 ? `${found}; and ${more.length} more` : found);
}

/** The quick one does not hold each index against its table (sqlite.org/pragma.html#pragma_quick_check). */
type Check = 'integrity_check' | 'quick_check';

/** What SQLite's own check complains of; all of the file is read. */
export function complaints(database: DatabaseSync, check: Check = 'integrity_check'): string[] {
  try {
    const found = database
      .prepare(`pragma ${check}`)
      .all()
      .map((row) => String(row[check]));
    const foreign = database.prepare('pragma foreign_key_check').all();
    return [...found.filter((text) => text !== 'ok'), ...foreign.map((row) => `${row.table} row ${row.rowid} has no program`)];
  } catch (error) {
    if (isDamage(error)) return [error.message];
    throw error;
  }
}

/**
 * Whoever finds a backup, or restores it, is signed in nowhere; and what is written to it from there on is a history of its
 * own. Without a write-ahead log it is one file, which opens also where nothing can be written.
 */
function forgetOrigin(file: string): void {
  const copy = new DatabaseSync(file);
  try {
    copy.exec('pragma secure_delete = ON; delete from sessions; update programs set epoch = null; pragma journal_mode = DELETE');
  } finally {
    copy.close();
  }
}

/** Reads the copy back. */
function checked(part: string, to: string, [least, most]: Expected): Copied {
  const copy = new DatabaseSync(part, { readOnly: true });
  try {
    const [found] = complaints(copy);
    if (found !== undefined) throw spoilt(to, found);
    const { revisions } = copy.prepare('select count(*) as revisions from revisions').get() as { revisions: number };
    if (revisions !== revisionsNumbered(copy) || revisions < least || revisions > most)
      throw spoilt(to, `${revisions} revisions, not ${least === most ? least : `${least} to ${most}`}`);
    const photos = copy
      .prepare(
        `select distinct json_extract(value, '$.photo') as photo from revisions
        where kind in ('checks', 'samples') and json_valid(value) and json_extract(value, '$.photo') is not null order by photo`,
      )
      .all()
      .map(({ photo }) => String(photo));
    return { revisions, photos };
  } finally {
    copy.close();
  }
}

const spoilt = (to: string, found: string): StoreError =>
  new StoreError(
    'damaged',
    `The copy for ${to} did not come out as it was written: ${found}. Nothing of it was kept. Write it to another disk, and have this one looked at.`,
  );

function clear(part: string): void {
  for (const log of ['', '-wal', '-shm', '-journal']) rmSync(part + log, { force: true });
}
