/** The people behind the ids that revisions carry. */
import type { Store, StoredRevision } from '@duskwatch/store';
import { THIS_MACHINE } from '../people/guard.ts';

export type Named<R extends StoredRevision> = R & { readonly authorName: string };

/** Gives each revision the name its author has now; who is not known any more keeps the id. */
export async function namer(store: Pick<Store, 'accounts'>): Promise<<R extends StoredRevision>(said: R) => Named<R>> {
  const nameOf = await authorNames(store);
  return (said) => ({ ...said, authorName: nameOf(said.author) });
}

/** The name that somebody has now, by their id. */
export async function authorNames(store: Pick<Store, 'accounts'>): Promise<(author: string) => string> {
  const names = new Map((await store.accounts.people()).map((person) => [person.id, person.name]));
  names.set(THIS_MACHINE.id, THIS_MACHINE.name);
  return (author) => names.get(author) ?? author;
}
