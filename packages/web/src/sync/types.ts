/** What a phone has to say, and how far it has got. */
import type { Problem, ProgramSettings, RecordKind, RecordOf } from '@duskwatch/core';

export type StoredKind = RecordKind | 'settings';
export type ValueOf<K extends StoredKind> = K extends RecordKind ? RecordOf<K> : ProgramSettings;

/**
 * One thing said about one record, never changed afterwards. It carries its own identity, so that it may be sent
 * any number of times. The server adds the author: the person signed in.
 */
export interface NewRevision<K extends StoredKind = StoredKind> {
  /** UUIDv7. */
  readonly revisionId: string;
  /** UUIDv7; a record is named after its first revision. */
  readonly recordId: string;
  readonly kind: K;
  /** The revision the writer had before them; null for a new record. */
  readonly baseRevisionId: string | null;
  /** Rival revisions the writer also had before them, and decided over. */
  readonly settles?: readonly string[];
  /** ISO 8601 instant by this machine's own clock. */
  readonly at: string;
  /** The record as it now is; null: removed. */
  readonly value: ValueOf<K> | null;
}

/** What an edit builds on: a record of `/api/records`, or an own revision not yet sent. */
export interface Base {
  readonly revisionId: string;
  readonly recordId: string;
  /** Revision ids of rivals that the edit decides over. */
  readonly rivals?: readonly string[];
}

/**
 * - `pending`: not known to have arrived.
 * - `acknowledged`: the server has it on disk. Kept a while, to be offered again should the server lose it.
 * - `refused`: the server said why not. Kept until the person retries or discards it.
 */
export type EntryState = 'pending' | 'acknowledged' | 'refused';

export interface OutboxEntry<K extends StoredKind = StoredKind> {
  /** Order of writing on this machine, from 1. */
  readonly place: number;
  /** Who wrote it: the id of a person. Sent only while that person is signed in. */
  readonly person: string;
  readonly revision: NewRevision<K>;
  readonly state: EntryState;
  /** Why it was refused; empty otherwise. */
  readonly problems: readonly Problem[];
  /** When the server last answered for it, in ms since 1970; null while it has not. */
  readonly answeredMs: number | null;
}

/**
 * Why sending stopped before its end. Nothing is lost in any of these, and each ends by itself but for two:
 * `signed-out` waits for the person to sign in again, `other-person` for the one who wrote to come back.
 */
export type Trouble = 'unreachable' | 'signed-out' | 'other-person';

export interface OutboxStatus {
  /** Revisions of this person not known to have arrived, and those refused. */
  readonly pending: number;
  readonly refused: number;
  /** Photos of this person not known to have arrived. */
  readonly photos: number;
  /** Photos the server would not take; what was written stays without them. */
  readonly photosRefused: number;
  /** Revisions of other people that wait on this machine. */
  readonly ofOthers: number;
  readonly sending: boolean;
  readonly trouble: Trouble | null;
  /** When it tries again by itself, in ms since 1970; null when it does not. */
  readonly nextTryMs: number | null;
  /** This machine's clock minus the server's as the server last measured it; null while not known. */
  readonly clockSkewMs: number | null;
}

/** `sent`: all that was there arrived or was refused. `busy`: another page of this app is sending. */
export type SyncOutcome = 'sent' | 'busy' | Trouble;

export interface Outbox {
  /** Keeps revisions on disk, all or none, in the order given; then tries to send. Resolves when they are kept. */
  put(...revisions: readonly NewRevision[]): Promise<void>;
  /** Keeps a photo on disk and gives its name, for `CheckRecord.photo`. Photos are sent after all that was written. */
  putPhoto(image: Blob): Promise<string>;
  /** The bytes of a photo that is on this machine, else null. */
  photo(name: string): Promise<Blob | null>;
  /** Not known to have arrived, in the order of writing. */
  pending(): Promise<OutboxEntry[]>;
  refused(): Promise<OutboxEntry[]>;
  /** Everything this person wrote here and that is still kept, in the order of writing. */
  all(): Promise<OutboxEntry[]>;
  /** Offer a refused revision again, as it is. */
  retry(revisionId: string): Promise<void>;
  /** Give up a refused revision. What is pending or acknowledged cannot be discarded: write its removal. */
  discard(revisionId: string): Promise<void>;
  /** Send all that is pending, in order. Never rejects for want of a server. */
  sync(): Promise<SyncOutcome>;
  /** The same object until something changes. */
  status(): OutboxStatus;
  /** Called after every change of `status()`; returns how to stop. */
  subscribe(listener: () => void): () => void;
  /** Stops sending and trying; what is kept stays kept. */
  close(): void;
}

export interface OutboxOptions {
  /** Id of the person signed in. Default: whoever sits at a machine without accounts. */
  readonly person?: string;
  /** Send after each `put`, when the network comes back, and after a failure. Default true. */
  readonly auto?: boolean;
  readonly databaseName?: string;
  readonly fetch?: (url: string, init: RequestInit) => Promise<Response>;
  readonly now?: () => number;
  /** In [0, 1). */
  readonly random?: () => number;
  readonly batchSize?: number;
  readonly timeoutMs?: number;
  readonly keepDays?: number;
}
