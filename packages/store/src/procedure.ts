/**
 * Database work written once and run by either driver.
 *
 * A procedure yields statements and is handed their rows. SQLite runs it to its end without giving way, so a transaction
 * never stays open across other work in the process; PostgreSQL awaits each statement.
 */
import type { Compilable, CompiledQuery, Kysely, RawBuilder } from 'kysely';
import type { RevisionRow, Tables } from './tables.ts';
import type { Copied } from './types.ts';

export type Statement = CompiledQuery | { readonly insert: readonly RevisionRow[] };
export type Procedure<T> = Generator<Statement, T, unknown[]>;

/** What a procedure needs to know of where it runs. */
export interface Context {
  readonly program: string;
  /** Builds statements, never runs them. */
  readonly db: Kysely<Tables>;
  /** The right-hand side of `in`, as one parameter however long the list. */
  readonly list: (values: readonly string[]) => RawBuilder<string>;
}

export interface Driver {
  readonly db: Kysely<Tables>;
  readonly list: Context['list'];
  /** Run on one consistent snapshot. */
  read<T>(procedure: Procedure<T>): Promise<T>;
  /** Run in one transaction, with all other writers of the program kept out. */
  write<T>(program: string, procedure: Procedure<T>): Promise<T>;
  backup(file: string): Promise<Copied>;
  /** What the database's own check complains of. */
  integrity(): Promise<string[]>;
  /** Throws when its pages are not what they should be. */
  quickCheck(): Promise<void>;
  close(): Promise<void>;
}

export function* rows<R>(query: Compilable<R>): Procedure<R[]> {
  return (yield query.compile()) as R[];
}

export function* run(query: Compilable<unknown>): Procedure<void> {
  yield query.compile();
}

export function* insert(revisions: readonly RevisionRow[]): Procedure<void> {
  if (revisions.length > 0) yield { insert: revisions };
}
