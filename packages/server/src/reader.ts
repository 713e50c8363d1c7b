import { day, type IsoDay, type Person, type Prepared, type Program, prepare, scopeProgram } from '@duskwatch/core';
import type { Store } from '@duskwatch/store';

/** What reading asks of a store. */
export type ReadableStore = Pick<Store, 'loadProgram' | 'changesSince' | 'counts'>;

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

interface Scope {
  readonly program: Program;
  readonly days: Map<IsoDay, Prepared>;
  readonly sums: Map<string, Promise<unknown>>;
}

interface Snapshot {
  readonly sequence: number;
  readonly whole: Scope;
  readonly parts: Map<string, Scope>;
}

/**
 * Reads a program once, and cuts and prepares it once for each part and day asked for, until something is written
 * to the store, by this process or any other.
 */
export function programReader(store: ReadableStore): ProgramReader {
  let snapshot: Promise<Snapshot> | null = null;

  async function load(): Promise<Snapshot> {
    // The sequence first: a write in between then costs one reading more, and is never missed.
    const { lastSequence } = await store.counts();
    return { sequence: lastSequence, whole: scopeOn(await store.loadProgram()), parts: new Map() };
  }

  async function current(): Promise<Snapshot> {
    const held = snapshot;
    if (held) {
      const { sequence } = await held;
      if ((await store.changesSince(sequence, 1)).length === 0) return held;
    }
    // Whoever comes second waits for the reading that the first one began.
    if (snapshot === held) {
      const loading = load();
      snapshot = loading;
      loading.catch(() => {
        if (snapshot === loading) snapshot = null;
      });
    }
    return snapshot!;
  }

  async function scopeOf(person: Person): Promise<Scope> {
    const { whole, parts } = await current();
    const cut = () => scopeOn(scopeProgram(whole.program, person));
    const part = latest(parts, JSON.stringify([person.role, person.disabled, ...person.farms]), SCOPES_KEPT, cut);
    // Whoever may know everything shares what was prepared from it.
    return part.program === whole.program ? whole : part;
  }

  return {
    everything: async () => (await current()).whole.program,
    program: async (person) => (await scopeOf(person)).program,
    async prepared(person, on) {
      const { program, days } = await scopeOf(person);
      return latest(days, on, DAYS_KEPT, () => prepare(program, { on: day(on) }));
    },
    async kept<T>(person: Person, key: string, make: (program: Program) => Promise<T>) {
      const { program, sums } = await scopeOf(person);
      const made = latest(sums, key, SUMS_KEPT, () => make(program));
      made.catch(() => sums.delete(key));
      return made as Promise<T>;
    },
  };
}

const scopeOn = (program: Program): Scope => ({ program, days: new Map(), sums: new Map() });

/** What is held under a key, made when missing; what was asked for longest ago makes room. */
function latest<V>(held: Map<string, V>, key: string, limit: number, make: () => V): V {
  const found = held.get(key) ?? make();
  held.delete(key);
  held.set(key, found);
  if (held.size > limit) held.delete(held.keys().next().value!);
  return found;
}
