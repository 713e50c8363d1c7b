/** SQLite: one file, write-ahead log, every commit on disk before it is reported. */
import { existsSync, renameSync, rmSync } from 'node:fs';
import Database from 'better-sqlite3';
import { DummyDriver, Kysely, SqliteAdapter, SqliteIntrospector, SqliteQueryCompiler, sql } from 'kysely';
import { StoreError } from './error.ts';
import type { Driver, Plan, Statement } from './plan.ts';
import { asStoreError, openFile } from './sqlite-file.ts';
import { REVISION_COLUMNS, type RevisionRow, type Tables } from './tables.ts';
import { uuidv7 } from './uuid.ts';

const db = new Kysely<Tables>({
  dialect: {
    createAdapter: () => new SqliteAdapter(),
    createDriver: () => new DummyDriver(),
    createIntrospector: (of) => new SqliteIntrospector(of),
    createQueryCompiler: () => new SqliteQueryCompiler(),
  },
});

const INSERT = `insert into revisions (${REVISION_COLUMNS.join(', ')}) values (${REVISION_COLUMNS.map(() => '?').join(', ')})`;

export function openSqlite(file: string, program: string): Driver {
  const database = openFile(file);
  try {
    beginEpoch(database, program);
  } catch (error) {
    database.close();
    throw asStoreError(error, file);
  }

  const prepared = new Map<string, Database.Statement>();
  const prepare = (text: string): Database.Statement => {
    const known = prepared.get(text) ?? database.prepare(text);
    prepared.set(text, known);
    return known;
  };

  const execute = (statement: Statement): unknown[] => {
    if ('insert' in statement) {
      const insert = prepare(INSERT);
      for (const row of statement.insert) insert.run(valuesOf(row));
      return [];
    }
    const query = prepare(statement.sql);
    if (query.reader) return query.all(...statement.parameters);
    query.run(...statement.parameters);
    return [];
  };

  const finish = database.transaction(<T>(plan: Plan<T>): T => {
    let step = plan.next();
    while (!step.done) step = plan.next(execute(step.value));
    return step.value;
  });
  const attempt = async <T>(work: () => T): Promise<T> => {
    try {
      return work();
    } catch (error) {
      throw asStoreError(error, file);
    }
  };

  return {
    db,
    list: (values) => sql<string>`(select value from json_each(${JSON.stringify(values)}))`,
    read: (plan) => attempt(() => finish.deferred(plan) as never),
    write: (_program, plan) => attempt(() => finish.immediate(plan) as never),
    backup: (to) => backup(database, to),
    integrity: () => attempt(() => complaints(database)),
    close: async () => void database.close(),
  };
}

function beginEpoch(database: Database.Database, program: string): void {
  database.prepare('insert into programs (program_id) values (?) on conflict do nothing').run(program);
  database.prepare('update programs set epoch = ? where program_id = ? and epoch is null').run(uuidv7(), program);
}

const valuesOf = (row: RevisionRow): unknown[] => [
  row.program_id,
  row.sequence,
  row.revision_id,
  row.record_id,
  row.kind,
  row.natural_key,
  row.base_revision_id,
  row.settles,
  row.author,
  row.at,
  row.value,
  row.standing,
  row.received_at,
  row.skew_ms,
];

/** Under another name until it is whole, so that a backup cut short is never taken for one. */
async function backup(database: Database.Database, to: string): Promise<void> {
  if (existsSync(to))
    throw new StoreError('file-exists', `${to} exists already, and a backup never overwrites. Name another file.`);
  const part = `${to}.part`;
  try {
    await database.backup(part);
    forgetOrigin(part);
    renameSync(part, to);
  } finally {
    rmSync(part, { force: true });
  }
}

/** Whoever finds a backup, or restores it, is signed in nowhere; and what is written to it from there on is a history of its own. */
export function forgetOrigin(file: string): void {
  const copy = new Database(file);
  try {
    copy.pragma('secure_delete = ON');
    copy.exec('delete from sessions; update programs set epoch = null');
  } finally {
    copy.close();
  }
}

function complaints(database: Database.Database): string[] {
  try {
    const found = (database.pragma('integrity_check') as { integrity_check: string }[]).map((row) => row.integrity_check);
    const foreign = database.pragma('foreign_key_check') as { table: string; rowid: number }[];
    return [...found.filter((text) => text !== 'ok'), ...foreign.map((row) => `${row.table} row ${row.rowid} has no program`)];
  } catch (error) {
    if (error instanceof Database.SqliteError && error.code.startsWith('SQLITE_CORRUPT')) return [error.message];
    throw error;
  }
}
