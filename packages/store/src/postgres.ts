/** PostgreSQL, for networks that outgrow one file. */
import { DummyDriver, Kysely, PostgresAdapter, PostgresIntrospector, PostgresQueryCompiler, sql } from 'kysely';
import pg from 'pg';
import { StoreError } from './error.ts';
import { SCHEMA_VERSION, statementsFrom } from './migrations.ts';
import { copyToSqlite } from './postgres-backup.ts';
import type { Driver, Procedure, Statement } from './procedure.ts';
import { REVISION_COLUMNS, type Tables } from './tables.ts';
import { uuidv7 } from './uuid.ts';

/** Lets one process at a time bring the schema up to date. Any number will do, if it is always the same. */
const MIGRATION_LOCK = 0x4475736b;

const db = new Kysely<Tables>({
  dialect: {
    createAdapter: () => new PostgresAdapter(),
    createDriver: () => new DummyDriver(),
    createIntrospector: (of) => new PostgresIntrospector(of),
    createQueryCompiler: () => new PostgresQueryCompiler(),
  },
});

const NUMBERS: Readonly<Record<string, string>> = { sequence: 'integer', skew_ms: 'double precision' };
const INSERT = `insert into revisions (${REVISION_COLUMNS.join(', ')}) select * from unnest(${REVISION_COLUMNS.map(
  (column, index) => `$${index + 1}::${NUMBERS[column] ?? 'text'}[]`,
).join(', ')})`;

export async function openPostgres(url: string, program: string): Promise<Driver> {
  const pool = new pg.Pool({ connectionString: url });
  // An idle connection that the server drops is replaced at the next use.
  pool.on('error', () => undefined);
  // One that is in use says so twice: here, and to whoever waits for its answer.
  pool.on('connect', (client) => client.on('error', () => undefined));
  try {
    await transaction(pool, 'begin', (client) => migrate(client, url));
    await pool.query('insert into programs (program_id) values ($1) on conflict do nothing', [program]);
    await pool.query('update programs set epoch = $2 where program_id = $1 and epoch is null', [program, uuidv7()]);
  } catch (error) {
    await pool.end();
    throw cannotOpen(error);
  }
  return {
    db,
    list: (values) => sql<string>`(select unnest(${values}::text[]))`,
    read: (procedure) =>
      transaction(pool, 'begin isolation level repeatable read read only', (client) => finish(client, procedure)),
    write: (of, procedure) =>
      transaction(pool, 'begin', async (client) => {
        await client.query('select 1 from programs where program_id = $1 for update', [of]);
        return finish(client, procedure);
      }),
    backup: (file) =>
      transaction(pool, 'begin isolation level repeatable read read only', (client) => copyToSqlite(client, file)),
    // The server watches over its own pages; what can be asked from here is whether it answers.
    integrity: async () => (await pool.query('select 1')) && [],
    quickCheck: async () => void (await pool.query('select 1')),
    close: async () => void (pool.ended || (await pool.end())),
  };
}

const cannotOpen = (error: unknown): unknown =>
  error instanceof StoreError && error.code === 'away'
    ? new StoreError(
        'cannot-open',
        `PostgreSQL cannot be reached: ${(error.cause as Error).message}. Check the address and the account.`,
      )
    : error;

async function transaction<T>(pool: pg.Pool, begin: string, work: (client: pg.PoolClient) => Promise<T>): Promise<T> {
  const client = await connect(pool);
  let broken: Error | undefined;
  try {
    await client.query(begin);
    const result = await work(client);
    await client.query('commit');
    return result;
  } catch (error) {
    await client.query('rollback').catch((failure: Error) => {
      broken = failure;
    });
    throw asStoreError(error);
  } finally {
    client.release(broken);
  }
}

/** Troubles of the machine that PostgreSQL runs on (appendix A of its manual: classes 53, 25 and XX). */
const OF_THE_SERVER: Readonly<Record<string, readonly [StoreError['code'], string]>> = {
  '53100': ['disk-full', 'The disk of PostgreSQL is full. Make room, then do it again.'],
  '58030': ['disk-fault', 'The disk of PostgreSQL does not do what it is asked. Look into its log.'],
  '25006': ['read-only', 'This PostgreSQL may only be read. Name the server that is written to.'],
  XX001: ['damaged', 'PostgreSQL found damaged data. Look into its log, and bring back the newest backup that is sound.'],
  XX002: ['damaged', 'PostgreSQL found a damaged index. Look into its log; REINDEX may mend it.'],
};

/** PostgreSQL's own refusals, said so that a person can act on them; anything else as it is. */
function asStoreError(error: unknown): unknown {
  if (isAway(error)) return away(error);
  const trouble = OF_THE_SERVER[String((error as { code?: unknown }).code)];
  return trouble ? new StoreError(...trouble, { cause: error }) : error;
}

async function connect(pool: pg.Pool): Promise<pg.PoolClient> {
  try {
    return await pool.connect();
  } catch (error) {
    throw away(error);
  }
}

const away = (cause: unknown): StoreError =>
  new StoreError(
    'away',
    `PostgreSQL does not answer: ${(cause as Error).message}. What was not acknowledged can be sent again.`,
    {
      cause,
    },
  );

/** What PostgreSQL says when it shuts down, starts or drops a connection (appendix A of its manual, classes 08 and 57P). */
const AWAY = /^(08...|57P0[1-5]|ECONN(RESET|REFUSED|ABORTED)|EPIPE|ETIMEDOUT)$/;

function isAway(error: unknown): boolean {
  const { code, message } = error as { code?: unknown; message?: unknown };
  return typeof code === 'string'
    ? AWAY.test(code)
    : /^(Connection terminated|Client has encountered a connection error)/.test(String(message));
}

async function finish<T>(client: pg.PoolClient, procedure: Procedure<T>): Promise<T> {
  let step = procedure.next();
  while (!step.done) step = procedure.next(await execute(client, step.value));
  return step.value;
}

async function execute(client: pg.PoolClient, statement: Statement): Promise<unknown[]> {
  if ('insert' in statement) {
    await client.query(
      INSERT,
      REVISION_COLUMNS.map((column) => statement.insert.map((row) => row[column])),
    );
    return [];
  }
  return (await client.query(statement.sql, [...statement.parameters])).rows;
}

async function migrate(client: pg.PoolClient, url: string): Promise<void> {
  await client.query('select pg_advisory_xact_lock($1)', [MIGRATION_LOCK]);
  await client.query('create table if not exists duskwatch_schema (version integer not null)');
  const { rows } = await client.query<{ version: number }>('select version from duskwatch_schema');
  const version = rows[0]?.version ?? 0;
  for (const statement of statementsFrom(version, 'postgres', `The database at ${new URL(url).host}`))
    await client.query(statement);
  if (version === SCHEMA_VERSION) return;
  await client.query('delete from duskwatch_schema');
  await client.query('insert into duskwatch_schema values ($1)', [SCHEMA_VERSION]);
}
