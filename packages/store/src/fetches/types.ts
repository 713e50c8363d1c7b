/** How fetching the days of each weather source has gone. */

/**
 * - `unreachable`, `late`: no answer; `status`: an answer that is none; `too-large`.
 * - `unreadable`: an answer or a file that is not as it should be, or leaves something open.
 * - `own-network`, `address`: what is not asked at all.
 * - `storage`: the days could not be kept.
 */
export const FETCH_TROUBLES = [
  'unreachable',
  'late',
  'status',
  'too-large',
  'unreadable',
  'own-network',
  'address',
  'storage',
] as const;

export interface FetchTrouble {
  readonly kind: (typeof FETCH_TROUBLES)[number];
  /** What exactly, in the words of whoever said it. */
  readonly detail: string;
}

export interface FetchState {
  readonly sourceId: string;
  /** ISO 8601 instant of the last attempt, in UTC. */
  readonly triedAt: string;
  /** Of the last attempt that was answered; null: none was. */
  readonly answeredAt: string | null;
  /** Not asked again before. */
  readonly nextAt: string;
  /** Whether the service itself asks for that patience. */
  readonly mustWait: boolean;
  /** Attempts in vain since the last answer. */
  readonly failures: number;
  /** What was wrong with the last attempt; null: nothing. */
  readonly trouble: FetchTrouble | null;
  /** Days that the last answer held. */
  readonly days: number;
  /** What each address said of its answer, to be asked again only for what has changed since. */
  readonly validators: Readonly<Record<string, { readonly etag: string | null; readonly lastModified: string | null }>>;
}

export interface FetchStore {
  list(): Promise<FetchState[]>;
  /** In the place of what was kept of the source. */
  keep(state: FetchState): Promise<void>;
}
