import { StoreError } from './error.ts';
import { openSqlite } from './sqlite.ts';
import { storeOn } from './store.ts';
import type { OpenOptions, Store } from './types.ts';

/**
 * Open a program's store: a path or `sqlite:path` for a SQLite file (made when missing), `postgres://…` for a
 * PostgreSQL database. The schema is brought up to date first. Throws a `StoreError` when that cannot be done.
 */
export async function openStore(url: string, { program = 'main' }: OpenOptions = {}): Promise<Store> {
  if (/^postgres(ql)?:\/\//.test(url)) {
    const { openPostgres } = await import('./postgres.ts');
    return storeOn(await openPostgres(url, program), program);
  }
  const path = url.replace(/^sqlite:(\/\/)?/, '');
  const scheme = /^([a-z][a-z0-9+.-]+):\/\//i.exec(path);
  if (scheme) {
    throw new StoreError('cannot-open', `${scheme[1]} databases are unknown here. Give a file path or postgres://….`);
  }
  return storeOn(openSqlite(path, program), program);
}
