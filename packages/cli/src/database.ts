import { mkdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { OtherProgram } from '@duskwatch/server';
import { DATABASE_FILE, PHOTOS } from '@duskwatch/server/backup';
import type { Store } from '@duskwatch/store';
import { checkoutRoot } from './checkout.ts';
import { finishRestoring } from './restoring.ts';

/** One's own, or the invented demo to try things on. */
export type ProgramKind = OtherProgram['kind'];

export interface DataOption {
  readonly data?: string;
}

/** Where the data lies: a folder named on the command line goes before DATABASE_URL, and that before the default. */
function databaseUrl({ data }: DataOption): string {
  const url = process.env.DATABASE_URL;
  if (data === undefined && url) return url;
  return join(dataFolder({ data }), DATABASE_FILE);
}

/** Photos lie beside the database, or where it would lie. */
export const photoFolder = (options: DataOption): string => join(dataFolder(options), PHOTOS);

export const dataFolder = ({ data }: { readonly data?: string | undefined }): string =>
  resolve(data ?? process.env.DUSKWATCH_DATA ?? join(checkoutRoot, 'data'));

/**
 * Folders of the two programs of one machine, which never mix: one's own in the data folder and the invented demo in a
 * folder within; where the demo was loaded into the data folder itself, the other way about.
 */
export const besideIn = (options: DataOption, other: ProgramKind): { readonly data: string } => ({
  data: join(dataFolder(options), other),
});

/** Whether the data lie in a PostgreSQL database rather than in a folder. */
export const isElsewhere = (options: DataOption): boolean => databaseUrl(options).includes('://');

/** The place of the data as a person may read it: an address without its password. */
export function describeDatabase(options: DataOption): string {
  const url = databaseUrl(options);
  if (!url.includes('://')) return url;
  const address = new URL(url);
  if (address.password) address.password = '…';
  return address.href;
}

export async function openDatabase(options: DataOption): Promise<Store> {
  const url = databaseUrl(options);
  if (!isElsewhere(options)) {
    mkdirSync(join(url, '..'), { recursive: true });
    finishRestoring(join(url, '..'));
  }
  const { openStore } = await import('@duskwatch/store');
  return openStore(url);
}

/** Opens the store for one piece of work and closes it whatever happens. */
export async function withDatabase<T>(options: DataOption, work: (store: Store) => Promise<T>): Promise<T> {
  const store = await openDatabase(options);
  try {
    return await work(store);
  } finally {
    await store.close();
  }
}
