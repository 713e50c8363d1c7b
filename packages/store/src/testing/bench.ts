/** What a contract needs of an adapter, and what its tests get. */
import type { Store } from '../types.ts';

export interface Harness {
  /** Address of a new, empty database. */
  fresh(): Promise<string>;
  /** Give the database a schema version from the future. */
  makeNewer(url: string): Promise<void>;
  /** Run a statement on it, past the store. */
  execute(url: string, statement: string): Promise<void>;
}

export interface Bench {
  /** A handle on a database of its own; closed after the test. */
  store(url?: string, program?: string): Promise<Store>;
  readonly harness: Harness;
}
