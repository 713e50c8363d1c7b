import { day, type IsoDay, type Prepared, type Program, prepare } from '@duskwatch/core';
import type { Store } from '@duskwatch/store';

/** What the server asks of a store: it only reads. */
export type ReadableStore = Pick<Store, 'loadProgram' | 'changesSince' | 'counts'>;

/** The program as the store now has it, and what was prepared from it. */
export interface ProgramReader {
  program(): Promise<Program>;
  prepared(on: IsoDay): Promise<Prepared>;
}

/** Days people look back at side by side; each holds a season's sums. */
const DAYS_KEPT = 8;

interface Snapshot {
  readonly sequence: number;
  readonly program: Program;
  /** Least recently asked for first. */
  readonly days: Map<IsoDay, Prepared>;
}

/**
 * Reads a program once and prepares it once for each day asked for, until something is written to the store, by
 * this process or any other.
 */
export function programReader(store: ReadableStore): ProgramReader {
  let snapshot: Promise<Snapshot> | null = null;

  async function load(): Promise<Snapshot> {
    // The sequence first: a write in between then costs one reading more, and is never missed.
    const { lastSequence } = await store.counts();
    return { sequence: lastSequence, program: await store.loadProgram(), days: new Map() };
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

  return {
    program: async () => (await current()).program,
    async prepared(on) {
      const { program, days } = await current();
      const found = days.get(on) ?? prepare(program, { on: day(on) });
      days.delete(on);
      days.set(on, found);
      if (days.size > DAYS_KEPT) days.delete(days.keys().next().value!);
      return found;
    },
  };
}
