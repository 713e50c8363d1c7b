import type pg from 'pg';
import { BACKED_UP_TABLES } from './accounts/tables.ts';
import { type Driver, insert, type Procedure, run } from './procedure.ts';
import { openSqlite } from './sqlite.ts';
import { newCopy } from './sqlite-copy.ts';
import type { RevisionRow } from './tables.ts';
import type { Copied } from './types.ts';

const PAGE = 5_000;

/** Every program of a PostgreSQL database, as one transaction sees it, in a SQLite file that opens as a store. */
export const copyToSqlite = (client: pg.PoolClient, to: string): Promise<Copied> =>
  newCopy(to, async (part) => {
    const { rows } = await client.query<{ program_id: string }>('select program_id from programs order by program_id');
    for (const { program_id } of rows) await copyProgram(client, program_id, part);
    const [counted] = (await client.query<{ n: number }>('select count(*)::integer as n from revisions')).rows;
    return [counted!.n, counted!.n];
  });

async function copyProgram(client: pg.PoolClient, program: string, file: string): Promise<void> {
  const copy = openSqlite(file, program);
  try {
    await copyAccounts(client, program, copy);
    for (let last = 0; ; ) {
      const { rows } = await client.query<RevisionRow>(
        'select * from revisions where program_id = $1 and sequence > $2 order by sequence limit $3',
        [program, last, PAGE],
      );
      if (rows.length === 0) return;
      last = rows.at(-1)!.sequence;
      const counted = copy.db.updateTable('programs').set({ last_sequence: last }).where('program_id', '=', program);
      await copy.write(
        program,
        (function* () {
          yield* insert(rows);
          yield* run(counted);
        })(),
      );
    }
  } finally {
    await copy.close();
  }
}

async function copyAccounts(client: pg.PoolClient, program: string, copy: Driver): Promise<void> {
  for (const table of BACKED_UP_TABLES) {
    const { rows } = await client.query(`select * from ${table} where program_id = $1`, [program]);
    await copy.write(
      program,
      (function* (): Procedure<void> {
        for (const row of rows) yield* run(copy.db.insertInto(table).values(row));
      })(),
    );
  }
}
