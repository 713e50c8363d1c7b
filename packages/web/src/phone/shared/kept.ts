/** What the round keeps on this machine beside the outbox: the last view that was read, and the round under way. */
import type { IsoDay, Role, RoundView, ScoutingView } from '@duskwatch/core';
import { type DBSchema, openDB } from 'idb';
import type { UnsavedCheck } from '../../shared/check/unsaved-check.ts';
import type { Clock } from './clock.ts';
import type { Round } from './progress.ts';
import type { Walk } from './walk.ts';

export interface KeptView {
  /** Whose view it is: another person signed in here must not see it. */
  readonly person: string;
  readonly view: RoundView;
  /** A program that stopped at a day is walked as of that day. */
  readonly pinnedOn: IsoDay | null;
  /** By this machine's clock, in ms since 1970. */
  readonly fetchedMs: number;
}

/** What may be sampled, with the plans for it. */
export type KeptScouting = Omit<KeptView, 'view'> & { readonly view: ScoutingView };

export interface KeptDraft {
  readonly on: IsoDay;
  readonly draft: UnsavedCheck;
}

interface Facts {
  view: KeptView;
  scouting: KeptScouting;
  /** Samples that somebody is taking. */
  walks: readonly Walk[];
  round: Round & { readonly person: string };
  /** What was put in and not yet saved. */
  drafts: { readonly person: string; readonly byTrap: Readonly<Record<string, KeptDraft>> };
  clock: Clock;
  role: Role;
  /** Who last signed in here. */
  person: string;
}

interface Schema extends DBSchema {
  facts: { key: keyof Facts; value: Facts[keyof Facts] };
}

export interface Kept {
  get<K extends keyof Facts>(fact: K): Promise<Facts[K] | undefined>;
  /** On disk when it resolves; undefined forgets. */
  set<K extends keyof Facts>(fact: K, value: Facts[K] | undefined): Promise<void>;
}

export async function openKept(name = 'duskwatch-round'): Promise<Kept> {
  const db = await openDB<Schema>(name, 1, { upgrade: (fresh) => void fresh.createObjectStore('facts') });
  return {
    get: async (fact) => (await db.get('facts', fact)) as never,
    async set(fact, value) {
      const write = db.transaction('facts', 'readwrite', { durability: 'strict' });
      await (value === undefined ? write.store.delete(fact) : write.store.put(value, fact));
      await write.done;
    },
  };
}
