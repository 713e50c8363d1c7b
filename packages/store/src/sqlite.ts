/** SQLite: one file, write-ahead log, every commit on disk before it is reported. */
import { existsSync, renameSync, rmSync } from 'node:fs';
import { backup as copyPages, DatabaseSync, type SQLInputValue, type StatementSync } from 'node:sqlite';
import { DummyDriver, Kysely, SqliteAdapter, SqliteIntrospector, SqliteQueryCompiler, sql } from 'kysely';
import { StoreError } from './error.ts';
import type { Driver, Procedure, Statement } from './procedure.ts';
import { asStoreError, inTransaction, isBusy, isDamage, openFile } from './sqlite-file.ts';
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

/** SQLite waits in this thread, and everybody with it: so long at most. */
const HELD_UP_MS = 20;
/** A write waits for its turn so long, with room for others in between. */
const PATIENCE_MS = 10_000;
const LOOK_AGAIN_MS = 25;

export function openSqlite(file: string, program: string, patienceMs = PATIENCE_MS): Driver {
  const database = openFile(file);
  try {
    beginEpoch(database, program);
    database.exec(`pragma busy_timeout = ${HELD_UP_MS}`);
  } catch (error) {
    database.close();
    throw asStoreError(error, file);
  }

  const prepared = new Map<string, Prepared>();
  const prepare = (text: string): Prepared => {
    const known = prepared.get(text) ?? prepareOn(database, text);
    prepared.set(text, known);
    return known;
  };

  const execute = (statement: Statement): unknown[] => {
    if ('insert' in statement) {
      const insert = prepare(INSERT);
      for (const row of statement.insert) insert.statement.run(...valuesOf(row));
      return [];
    }
    return rowsOf(prepare(statement.sql), statement.parameters as SQLInputValue[]);
  };

  const finish = <T>(procedure: Procedure<T>): T => {
    let step = procedure.next();
    while (!step.done) step = procedure.next(execute(step.value));
    return step.value;
  };
  const attempt = async <T>(work: () => T): Promise<T> => {
    try {
      return work();
    } catch (error) {
      throw asStoreError(error, file);
    }
  };

  /** Another process may write for seconds: nothing of the procedure is begun before it is this one's turn. */
  const inTurn = async <T>(procedure: Procedure<T>): Promise<T> => {
    const until = performance.now() + patienceMs;
    for (;;) {
      let begun = false;
      try {
        return inTransaction(database, 'immediate', () => {
          begun = true;
          return finish(procedure);
        });
      } catch (error) {
        if (begun || !isBusy(error) || performance.now() > until) throw asStoreError(error, file);
      }
      await new Promise((resolve) => setTimeout(resolve, LOOK_AGAIN_MS));
    }
  };

  return {
    db,
    list: (values) => sql<string>`(select value from json_each(${JSON.stringify(values)}))`,
    read: (procedure) => attempt(() => inTransaction(database, 'deferred', () => finish(procedure))),
    write: (_program, procedure) => inTurn(procedure),
    backup: (to) => backup(database, to),
    integrity: () => attempt(() => complaints(database)),
    close: async () => {
      if (database.isOpen) database.close();
    },
  };
}

interface Prepared {
  readonly statement: StatementSync;
  /** Of the rows it yields; none for a statement that yields no rows. */
  readonly columns: readonly string[];
}

function prepareOn(database: DatabaseSync, text: string): Prepared {
  const statement = database.prepare(text);
  // Node makes an object of a row in twice the time that it takes here.
  statement.setReturnArrays(true);
  return { statement, columns: statement.columns().map(({ name }) => name) };
}

function rowsOf({ statement, columns }: Prepared, parameters: readonly SQLInputValue[]): unknown[] {
  if (columns.length === 0) {
    statement.run(...parameters);
    return [];
  }
  const rows = statement.all(...parameters) as unknown as unknown[][];
  return rows.map((values) => {
    const row: Record<string, unknown> = {};
    for (let i = 0; i < columns.length; i++) row[columns[i]!] = values[i];
    return row;
  });
}

function beginEpoch(database: DatabaseSync, program: string): void {
  database.prepare('insert into programs (program_id) values (?) on conflict do nothing').run(program);
  database.prepare('update programs set epoch = ? where program_id = ? and epoch is null').run(uuidv7(), program);
}

const valuesOf = (row: RevisionRow): SQLInputValue[] => [
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
async function backup(database: DatabaseSync, to: string): Promise<void> {
  if (existsSync(to))
    throw new StoreError('file-exists', `${to} exists already, and a backup never overwrites. Name another file.`);
  const part = `${to}.part`;
  try {
    await copyPages(database, part);
    forgetOrigin(part);
    renameSync(part, to);
  } finally {
    rmSync(part, { force: true });
  }
}

/** Whoever finds a backup, or restores it, is signed in nowhere; and what is written to it from there on is a history of its own. */
export function forgetOrigin(file: string): void {
  const copy = new DatabaseSync(file);
  try {
    copy.exec('pragma secure_delete = ON; delete from sessions; update programs set epoch = null');
  } finally {
    copy.close();
  }
}

function complaints(database: DatabaseSync): string[] {
  try {
    const found = database
      .prepare('pragma integrity_check')
      .all()
      .map((row) => String(row.integrity_check));
    const foreign = database.prepare('pragma foreign_key_check').all();
    return [...found.filter((text) => text !== 'ok'), ...foreign.map((row) => `${row.table} row ${row.rowid} has no program`)];
  } catch (error) {
    if (isDamage(error)) return [error.message];
    throw error;
  }
}
