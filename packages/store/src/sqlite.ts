/** SQLite: one file, write-ahead log, every commit on disk before it is reported. */
import { backup as copyPages, type DatabaseSync, type SQLInputValue, type StatementSync } from 'node:sqlite';
import { DummyDriver, Kysely, SqliteAdapter, SqliteIntrospector, SqliteQueryCompiler, sql } from 'kysely';
import type { Driver, Procedure, Statement } from './procedure.ts';
import { complaints, newCopy, refuseDamage, revisionsNumbered } from './sqlite-copy.ts';
import { asStoreError, inTransaction, isBusy, openFile } from './sqlite-file.ts';
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
  const attempt = async <T>(work: () => T | Promise<T>): Promise<T> => {
    try {
      return await work();
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
    backup: (to) =>
      newCopy(to, (part) =>
        attempt(async () => {
          refuseDamage(database, file);
          const least = revisionsNumbered(database);
          await copyPages(database, part);
          return [least, revisionsNumbered(database)];
        }),
      ),
    integrity: () => attempt(() => complaints(database)),
    quickCheck: () => attempt(() => refuseDamage(database, file, 'quick_check')),
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
