import { day, type IsoDay, type Person, type Prepared, type Program, prepare, scopeProgram, withChecks } from '@duskwatch/core';
import type { Store } from '@duskwatch/store';
import { withWritten } from './written-since.ts';

/** What reading asks of a store. */
export type ReadableStore = Pick<Store, 'loadProgram' | 'changesSince' | 'counts' | 'history'>;

/** The program as the store now has it, and what was prepared from it; each person is given what they may know. */
export interface ProgramReader {
  /** All of it. Nothing of this may reach a person. */
  everything(): Promise<Program>;
  program(person: Person): Promise<Program>;
  prepared(person: Person, on: IsoDay): Promise<Prepared>;
  /** What was made of the person's part of the program under a key, made again only after something was written. */
  kept<T>(person: Person, key: string, make: (program: Program) => Promise<T>): Promise<T>;
}

/** Days people look back at side by side; each holds a season's sums. */
const DAYS_KEPT = 8;
/** Parts of the program that are kept cut out. */
const SCOPES_KEPT = 50;
/** Results of long sums kept for each part. */
const SUMS_KEPT = 30;
/** Revisions that are put into what was read; with more of them reading all of it is quicker. */
const CHANGES_TAKEN = 1_000;

interface Scope {
  readonly program: Program;
  readonly days: Map<IsoDay, KeptDay>;
  readonly sums: Map<string, Promise<unknown>>;
}

/** A day as it was prepared, and the traps whose checks were written since. */
interface KeptDay {
  readonly prepared: Prepared;
  readonly touched: ReadonlySet<string>;
}

interface Snapshot {
  readonly sequence: number;
  readonly whole: Scope;
  readonly parts: Map<string, Scope>;
  /** Days that were prepared of each part before checks were written; the part itself is not cut again yet. */
  readonly before: ReadonlyMap<string, ReadonlyMap<IsoDay, KeptDay>>;
}

/**
 * Reads a program once, and cuts and prepares it once for each part and day asked for, until something is written
 * to the store, by this process or any other. Checks are then put into what was read and prepared; anything else is
 * read and prepared anew.
 */
export function programReader(store: ReadableStore): ProgramReader {
  let snapshot: Promise<Snapshot> | null = null;

  async function load(): Promise<Snapshot> {
    // The sequence first: a write in between then costs one reading more, and is never missed.
    const { lastSequence } = await store.counts();
    return { sequence: lastSequence, whole: scopeOn(await store.loadProgram()), parts: new Map(), before: new Map() };
  }

  /** What was read, with what was written since. */
  async function brought(held: Snapshot, changes: Awaited<ReturnType<ReadableStore['changesSince']>>): Promise<Snapshot> {
    const updated = changes.length < CHANGES_TAKEN ? await withWritten(held.whole.program, changes, store) : null;
    if (updated === null) return load();
    const { program, touched } = updated;
    const before = new Map(held.before);
    for (const [key, { days }] of held.parts) {
      before.delete(key);
      before.set(key, days);
    }
    return {
      sequence: changes.at(-1)!.sequence,
      whole: scopeOn(program, carried(held.whole.days, touched)),
      parts: new Map(),
      before: new Map([...before].slice(-SCOPES_KEPT).map(([key, days]) => [key, carried(days, touched)])),
    };
  }

  async function current(): Promise<Snapshot> {
    const held = snapshot;
    if (held === null) return keep(load());
    const known = await held;
    const changes = await store.changesSince(known.sequence, CHANGES_TAKEN);
    // Somebody else was quicker, with what may have been written only after their look: look again.
    if (snapshot !== held) return current();
    return changes.length === 0 ? known : keep(brought(known, changes));
  }

  function keep(reading: Promise<Snapshot>): Promise<Snapshot> {
    snapshot = reading;
    reading.catch(() => {
      if (snapshot === reading) snapshot = null;
    });
    return reading;
  }

  async function scopeOf(person: Person): Promise<Scope> {
    const { whole, parts, before } = await current();
    const key = JSON.stringify([person.role, person.disabled, ...person.farms]);
    const cut = () => {
      // A reader’s traps go by numbers, so what was prepared of them is not found again by a trap’s id.
      const days = person.role === 'reader' ? undefined : before.get(key);
      return scopeOn(scopeProgram(whole.program, person), new Map(days));
    };
    const part = latest(parts, key, SCOPES_KEPT, cut);
    // Whoever may know everything shares what was prepared from it.
    return part.program === whole.program ? whole : part;
  }

  return {
    everything: async () => (await current()).whole.program,
    program: async (person) => (await scopeOf(person)).program,
    async prepared(person, on) {
      const { program, days } = await scopeOf(person);
      const held = days.get(on);
      if (held && held.touched.size > 0)
        days.set(on, { prepared: withChecks(held.prepared, program, held.touched), touched: NONE });
      return latest(days, on, DAYS_KEPT, () => ({ prepared: prepare(program, { on: day(on) }), touched: NONE })).prepared;
    },
    async kept<T>(person: Person, key: string, make: (program: Program) => Promise<T>) {
      const { program, sums } = await scopeOf(person);
      const made = latest(sums, key, SUMS_KEPT, () => make(program));
      made.catch(() => sums.delete(key));
      return made as Promise<T>;
    },
  };
}

const NONE: ReadonlySet<string> = new Set();

const scopeOn = (program: Program, days = new Map<IsoDay, KeptDay>()): Scope => ({ program, days, sums: new Map() });

/** Days as they were prepared, with more traps touched since. */
const carried = (days: ReadonlyMap<IsoDay, KeptDay>, touched: ReadonlySet<string>): Map<IsoDay, KeptDay> =>
  new Map(
    [...days].map(([on, { prepared, touched: earlier }]) => [on, { prepared, touched: new Set([...earlier, ...touched]) }]),
  );

/** What is held under a key, made when missing; what was asked for longest ago makes room. */
function latest<V>(held: Map<string, V>, key: string, limit: number, make: () => V): V {
  const found = held.get(key) ?? make();
  held.delete(key);
  held.set(key, found);
  if (held.size > limit) held.delete(held.keys().next().value!);
  return found;
}
