/** Opening a SQLite file: nothing is written before it is known to be new, empty or ours. */
import { closeSync, openSync, readSync } from 'node:fs';
import Database from 'better-sqlite3';
import { StoreError } from './error.ts';
import { SCHEMA_VERSION, statementsFrom } from './migrations.ts';

/** First bytes of every SQLite database (sqlite.org/fileformat2.html, 1.3). */
const MAGIC = 'SQLite format 3\0';
/** Marks a SQLite file as Duskwatch's own (the header's application id): "Dusk" in ASCII. */
const APPLICATION_ID = 0x4475736b;
const BUSY_TIMEOUT_MS = 10_000;

export function openFile(file: string): Database.Database {
  refuseGarbage(file);
  let database: Database.Database;
  try {
    database = new Database(file, { timeout: BUSY_TIMEOUT_MS });
  } catch (error) {
    throw new StoreError(
      'cannot-open',
      `${file} cannot be opened: ${(error as Error).message}. Check the folder and its permissions.`,
    );
  }
  try {
    refuseForeign(database, file);
    database.pragma('journal_mode = WAL');
    database.pragma('synchronous = FULL');
    database.pragma('foreign_keys = ON');
    database.transaction(() => migrate(database, file)).immediate();
    return database;
  } catch (error) {
    database.close();
    throw asStoreError(error, file);
  }
}

/** Looked at here, because SQLite itself takes a short text for an empty database and writes over it. */
function refuseGarbage(file: string): void {
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
  } finally {
    closeSync(handle);
  }
}

function refuseForeign(database: Database.Database, file: string): void {
  const owner = database.pragma('application_id', { simple: true });
  if (owner === APPLICATION_ID) return;
  const { objects } = database.prepare('select count(*) as objects from sqlite_schema').get() as { objects: number };
  if (owner !== 0 || objects > 0) {
    throw new StoreError(
      'foreign-database',
      `${file} is the database of another program. Nothing was changed. Name another file.`,
    );
  }
}

function migrate(database: Database.Database, file: string): void {
  const version = database.pragma('user_version', { simple: true }) as number;
  for (const statement of statementsFrom(version, 'sqlite', file)) database.exec(statement);
  if (version === SCHEMA_VERSION) return;
  database.pragma(`application_id = ${APPLICATION_ID}`);
  database.pragma(`user_version = ${SCHEMA_VERSION}`);
}

const notADatabase = (file: string, cause?: unknown): StoreError =>
  new StoreError('not-a-database', `${file} is not a database. Nothing was changed. Name another file.`, { cause });

/** SQLite's own refusals, said so that a person can act on them; anything else as it is. */
export function asStoreError(error: unknown, file: string): unknown {
  const code = error instanceof Database.SqliteError ? error.code : '';
  if (code === 'SQLITE_NOTADB') return notADatabase(file, error);
  if (code.startsWith('SQLITE_BUSY')) {
    return new StoreError('busy', `${file} is being written by another process. Nothing was changed. Try again.`, {
      cause: error,
    });
  }
  return error;
}
