/** The outbox on disk: IndexedDB, written through before anybody is told that something is kept. */
import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { EntryState, NewRevision, OutboxEntry, OutboxStatus } from './types.ts';

export interface KeptPhoto {
  readonly photo: string;
  readonly person: string;
  readonly state: EntryState;
  readonly type: string;
  readonly bytes: ArrayBuffer;
  readonly answeredMs: number | null;
}

interface Schema extends DBSchema {
  entries: {
    key: number;
    value: OutboxEntry;
    indexes: { state: [person: string, state: EntryState]; revisionId: string };
  };
  photos: { key: string; value: KeptPhoto; indexes: { state: [person: string, state: EntryState] } };
  facts: { key: 'epoch'; value: string };
}

type Counts = Pick<OutboxStatus, 'pending' | 'refused' | 'photos' | 'photosRefused' | 'ofOthers'>;

export interface Answered {
  readonly revisionId: string;
  readonly state: EntryState;
  readonly problems: OutboxEntry['problems'];
}

/** Written to the disk itself, so that a battery that dies a moment later takes nothing along. */
const ON_DISK = { durability: 'strict' } as const;
const STATES: readonly EntryState[] = ['pending', 'acknowledged', 'refused'];

export async function openDatabase(name: string): Promise<OutboxDatabase> {
  const db = await openDB<Schema>(name, 1, {
    upgrade(fresh) {
      const entries = fresh.createObjectStore('entries', { keyPath: 'place', autoIncrement: true });
      entries.createIndex('state', ['person', 'state']);
      entries.createIndex('revisionId', 'revision.revisionId', { unique: true });
      fresh.createObjectStore('photos', { keyPath: 'photo' }).createIndex('state', ['person', 'state']);
      fresh.createObjectStore('facts');
    },
  });
  return new OutboxDatabase(db);
}

export class OutboxDatabase {
  private readonly db: IDBPDatabase<Schema>;

  constructor(db: IDBPDatabase<Schema>) {
    this.db = db;
  }

  /** All or none; a revision that is kept already stays as it is. */
  async add(person: string, revisions: readonly NewRevision[]): Promise<void> {
    const write = this.db.transaction('entries', 'readwrite', ON_DISK);
    for (const revision of revisions) {
      if ((await write.store.index('revisionId').getKey(revision.revisionId)) !== undefined) continue;
      // The place is left to the database, which counts on where it stopped.
      await write.store.add({ person, revision, state: 'pending', problems: [], answeredMs: null } as unknown as OutboxEntry);
    }
    await write.done;
  }

  inState(person: string, state: EntryState, limit?: number): Promise<OutboxEntry[]> {
    return this.db.getAllFromIndex('entries', 'state', [person, state], limit);
  }

  async ofPerson(person: string): Promise<OutboxEntry[]> {
    const all = await Promise.all(STATES.map((state) => this.inState(person, state)));
    return all.flat().sort((a, b) => a.place - b.place);
  }

  /** The newest revision of a person that the server said it has. */
  async lastAcknowledged(person: string): Promise<string | null> {
    const read = this.db.transaction('entries').store.index('state');
    const cursor = await read.openCursor([person, 'acknowledged'], 'prev');
    return cursor?.value.revision.revisionId ?? null;
  }

  async settle(answers: readonly Answered[], answeredMs: number): Promise<void> {
    const write = this.db.transaction('entries', 'readwrite', ON_DISK);
    for (const { revisionId, state, problems } of answers) {
      const entry = await write.store.index('revisionId').get(revisionId);
      if (entry) await write.store.put({ ...entry, state, problems, answeredMs });
    }
    await write.done;
  }

  /** Moves a refused revision; anything else stays where it is. */
  async moveRefused(revisionId: string, to: 'pending' | 'nowhere'): Promise<void> {
    const write = this.db.transaction('entries', 'readwrite', ON_DISK);
    const entry = await write.store.index('revisionId').get(revisionId);
    if (entry?.state === 'refused') {
      if (to === 'nowhere') await write.store.delete(entry.place);
      else await write.store.put({ ...entry, state: 'pending', problems: [] });
    }
    await write.done;
  }

  /** The server is not the one that acknowledged: everybody's acknowledged revisions and photos are to be sent again. */
  async offerAllAgain(epoch: string): Promise<void> {
    const write = this.db.transaction(['entries', 'photos', 'facts'], 'readwrite', ON_DISK);
    for await (const cursor of write.objectStore('entries')) {
      if (cursor.value.state === 'acknowledged') await cursor.update({ ...cursor.value, state: 'pending' });
    }
    for await (const cursor of write.objectStore('photos')) {
      if (cursor.value.state === 'acknowledged') await cursor.update({ ...cursor.value, state: 'pending' });
    }
    await write.objectStore('facts').put(epoch, 'epoch');
    await write.done;
  }

  /** Forgets what was acknowledged before an instant. */
  async forgetBefore(ms: number): Promise<void> {
    const write = this.db.transaction(['entries', 'photos'], 'readwrite');
    const old = ({ state, answeredMs }: OutboxEntry | KeptPhoto) => state === 'acknowledged' && (answeredMs ?? ms) < ms;
    for await (const cursor of write.objectStore('entries')) if (old(cursor.value)) await cursor.delete();
    for await (const cursor of write.objectStore('photos')) if (old(cursor.value)) await cursor.delete();
    await write.done;
  }

  async epoch(): Promise<string | null> {
    return (await this.db.get('facts', 'epoch')) ?? null;
  }

  async keepEpoch(epoch: string): Promise<void> {
    await this.db.put('facts', epoch, 'epoch');
  }

  async addPhoto(photo: KeptPhoto): Promise<void> {
    const write = this.db.transaction('photos', 'readwrite', ON_DISK);
    if ((await write.store.getKey(photo.photo)) === undefined) await write.store.add(photo);
    await write.done;
  }

  photo(name: string): Promise<KeptPhoto | undefined> {
    return this.db.get('photos', name);
  }

  nextPhoto(person: string): Promise<KeptPhoto | undefined> {
    return this.db.getFromIndex('photos', 'state', [person, 'pending']);
  }

  async settlePhoto(photo: KeptPhoto, state: EntryState, answeredMs: number): Promise<void> {
    const write = this.db.transaction('photos', 'readwrite', ON_DISK);
    await write.store.put({ ...photo, state, answeredMs });
    await write.done;
  }

  async counts(person: string): Promise<Counts> {
    const read = this.db.transaction(['entries', 'photos']);
    const entries = read.objectStore('entries').index('state');
    const kept = read.objectStore('photos').index('state');
    const [pending, refused, photos, photosRefused] = await Promise.all([
      entries.count([person, 'pending']),
      entries.count([person, 'refused']),
      kept.count([person, 'pending']),
      kept.count([person, 'refused']),
    ]);
    let ofOthers = 0;
    for await (const cursor of entries.iterate(null, 'nextunique')) {
      const { person: whose, state } = cursor.value;
      if (whose !== person && state === 'pending') ofOthers += await entries.count([whose, state]);
    }
    return { pending, refused, photos, photosRefused, ofOthers };
  }

  close(): void {
    this.db.close();
  }
}
