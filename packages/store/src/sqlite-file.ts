/** Opening a SQLite file: nothing is written before it is known to be new, empty or ours. */
import { closeSync, openSync, readSync } from 'node:fs';
import { DatabaseSync } from 'node:sqlite';
import { StoreError } from './error.ts';
import { SCHEMA_VERSION, statementsFrom } from './migrations.ts';

/** First bytes of every SQLite database (sqlite.org/fileformat2.html, 1.3). */
const MAGIC = 'SQLite format 3\0';
/** Marks a SQLite file as Duskwatch's own (the header's application id): "Dusk" in ASCII. */
const APPLICATION_ID = 0x4475736b;
const BUSY_TIMEOUT_MS = 10_000;

/** `called`: what a refusal calls it, where that is not the file's own name. */
export function openFile(file: string, called = file): DatabaseSync {
  refuseGarbage(file);
  let database: DatabaseSync;
  try {
    database = new DatabaseSync(file, { timeout: BUSY_TIMEOUT_MS });
  } catch (error) {
    throw new StoreError(
      'cannot-open',
      `${called} cannot be opened: ${(error as Error).message}. Check the folder and its permissions.`,
    );
  }
  try {
    refuseForeign(database, called);
    database.exec('pragma journal_mode = WAL; pragma synchronous = FULL; pragma foreign_keys = ON');
    inTransaction(database, 'immediate', () => migrate(database, called));
    return database;
  } catch (error) {
    database.close();
    throw asStoreError(error, called);
  }
}

/** Looked at here, because SQLite itself takes a short text for an empty database and writes over it. */
export function refuseGarbage(file: string): void {
  let handle: number;
  try {
    handle = openSync(file, 'r');
  } catch {
    return;
  }
  try {
    const start = Buffer.alloc(MAGIC.length);
    const length = readSync(handle, start, 0, MAGIC.length, 0);
    if (length > 0 && start.toString('latin1') !== MAGIC) throw notADatabase(file);
  } catch (error) {
    if (error instanceof StoreError) throw error;
    throw new StoreError(
      'cannot-open',
      `${file} cannot be read: ${(error as Error).message}. Name a file, and look at its disk.`,
    );
  } finally {
    closeSync(handle);
  }
}

function refuseForeign(database: DatabaseSync, file: string): void {
  const owner = pragma(database, 'application_id');
  if (owner === APPLICATION_ID) return;
  const { objects } = database.prepare('select count(*) as objects from sqlite_schema').get() as { objects: number };
  if (owner !== 0 || objects > 0) {
    throw new StoreError(
      'foreign-database',
      `${file} is the database of another program. Nothing was changed. Name another file.`,
    );
  }
}

function migrate(database: DatabaseSync, file: string): void {
  const version = pragma(database, 'user_version') as number;
  for (const statement of statementsFrom(version, 'sqlite', file)) database.exec(statement);
  if (version === SCHEMA_VERSION) return;
  database.exec(`pragma application_id = ${APPLICATION_ID}; pragma user_version = ${SCHEMA_VERSION}`);
}

/** What SQLite says of one of its settings. */
export const pragma = (database: DatabaseSync, name: string): unknown =>
  Object.values(database.prepare(`pragma ${name}`).get()!)[0];

/** All of the work is kept, or none of it. `immediate` waits for its turn to write before it begins. */
export function inTransaction<T>(database: DatabaseSync, kind: 'deferred' | 'immediate', work: () => T): T {
  database.exec(`begin ${kind}`);
  try {
    const result = work();
    database.exec('commit');
    return result;
  } catch (error) {
    // Some errors have ended it already (sqlite.org/lang_transaction.html, "Response To Errors Within A Transaction").
    if (database.isTransaction) database.exec('rollback');
    throw error;
  }
}

const notADatabase = (file: string, cause?: unknown): StoreError =>
  new StoreError(
    'not-a-database',
    `${file} is not a database, or damaged from its first bytes. Nothing was changed. Name another file, or bring back the newest backup that is sound: duskwatch restore BACKUP --data NEW-FOLDER.`,
    { cause },
  );

export const damaged = (file: string, found: string, cause?: unknown): StoreError =>
  new StoreError(
    'damaged',
    `${file} is damaged: ${found}. Keep the file as it is, and bring back the newest backup that is sound: duskwatch restore BACKUP --data NEW-FOLDER.`,
    { cause },
  );

/** Primary result codes (sqlite.org/rescode.html). */
const SQLITE_BUSY = 5;
const SQLITE_READONLY = 8;
const SQLITE_IOERR = 10;
const SQLITE_CORRUPT = 11;
const SQLITE_FULL = 13;
const SQLITE_CANTOPEN = 14;
const SQLITE_NOTADB = 26;

const NOT_KEPT = 'What was just being written is not kept; what was kept before is untouched.';

/** The last byte of SQLite's result code, which says what kind of refusal it is; null for an error that is none. */
const refusal = (error: unknown): number | null =>
  error instanceof Error && 'errcode' in error && typeof error.errcode === 'number' ? error.errcode & 0xff : null;

export const isDamage = (error: unknown): error is Error => refusal(error) === SQLITE_CORRUPT;

export const isBusy = (error: unknown): boolean => refusal(error) === SQLITE_BUSY;

/** Whatever the disk would not do, by SQLite's result code. */
const OF_THE_DISK: Readonly<Record<number, (file: string, said: string) => [StoreError['code'], string]>> = {
  [SQLITE_FULL]: (file) => ['disk-full', `The disk of ${file} is full. ${NOT_KEPT} Make room, then do it again.`],
  [SQLITE_READONLY]: (file) => [
    'read-only',
    `${file} cannot be written. ${NOT_KEPT} Let the account that runs Duskwatch write to the file and its folder.`,
  ],
  [SQLITE_IOERR]: (file, said) => [
    'disk-fault',
    `The disk of ${file} does not do what it is asked (${said}). ${NOT_KEPT} Look whether it is there and sound; keep a backup elsewhere.`,
  ],
  [SQLITE_CANTOPEN]: (file, said) => [
    'cannot-open',
    `${file} cannot be opened (${said}). Check that its folder is there and may be written.`,
  ],
};

/** SQLite's own refusals, said so that a person can act on them; anything else as it is. */
export function asStoreError(error: unknown, file: string): unknown {
  const code = refusal(error);
  if (code === SQLITE_NOTADB) return notADatabase(file, error);
  const trouble = code === null ? undefined : OF_THE_DISK[code];
  if (trouble) return new StoreError(...trouble(file, (error as Error).message), { cause: error });
  // Only what is stored is parsed here, and it was JSON when it was written.
  if (error instanceof SyntaxError) return damaged(file, 'a record cannot be read', error);
  if (isDamage(error)) return damaged(file, error.message, error);
  if (isBusy(error)) {
    return new StoreError('busy', `${file} is being written by another process. Nothing was changed. Try again.`, {
      cause: error,
    });
  }
  return error;
}
