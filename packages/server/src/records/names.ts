/** The people behind the ids that revisions carry. */
import type { Store, StoredRevision } from '@duskwatch/store';
import { THIS_MACHINE } from '../people/guard.ts';

export type Named<R extends StoredRevision> = R & { readonly authorName: string };

/** Gives each revision the name its author has now; who is not known any more keeps the id. */
export async function namer(store: Pick<Store, 'accounts'>): Promise<<R extends StoredRevision>(said: R) => Named<R>> {
  const names = new Map((await store.accounts.people()).map((person) => [person.id, person.name]));
  names.set(THIS_MACHINE.id, THIS_MACHINE.name);
  return (said) => ({ ...said, authorName: names.get(said.author) ?? said.author });
}
