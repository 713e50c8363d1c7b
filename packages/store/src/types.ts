/** What a store promises, whichever database stands behind it. */
import type { Problem, Program, ProgramSettings, RecordKind, RecordOf, Result } from '@duskwatch/core';
import type { AccountStore } from './accounts/types.ts';
import type { CalendarStore } from './calendars/types.ts';
import type { FetchStore } from './fetches/types.ts';
import type { ImportedFile, KeptImport } from './imports/types.ts';

/** The kinds a store keeps: every kind of record, and the program's settings as a kind of one record. */
export type StoredKind = RecordKind | 'settings';
export type ValueOf<K extends StoredKind> = K extends RecordKind ? RecordOf<K> : ProgramSettings;

/**
 * One thing somebody said about one record, never changed afterwards.
 *
 * Made where it is written (a phone without signal), so it carries its own identity and may be sent any number
 * of times, in any order.
 */
export interface Revision<K extends StoredKind = StoredKind> {
  /** UUIDv7, made by the writer. */
  readonly revisionId: string;
  /** UUIDv7 of the record; the id of its first revision serves well. */
  readonly recordId: string;
  readonly kind: K;
  /** The revision the writer had before them; null for a new record. */
  readonly baseRevisionId: string | null;
  /** Rival revisions the writer also had before them, and decided over. */
  readonly settles?: readonly string[];
  readonly author: string;
  /** ISO 8601 instant; kept in UTC with milliseconds. */
  readonly at: string;
  /** The record as it then was; null: removed. */
  readonly value: ValueOf<K> | null;
}

/** How revisions reached a server. */
export interface Arrival {
  /** ISO 8601 instant by the server's clock. */
  readonly receivedAt: string;
  /** The writer's clock minus the server's, in ms, as measured on arrival; null when it could not be. */
  readonly skewMs: number | null;
}

/**
 * - `current`: what the program says now; at most one per kind and natural key.
 * - `removed`: the last word on a record that was removed.
 * - `rival`: said without knowledge of what is now current, and not yet decided by a person.
 * - `past`: built upon or decided over.
 */
export type RevisionStanding = 'current' | 'removed' | 'rival' | 'past';

export interface StoredRevision<K extends StoredKind = StoredKind> extends Revision<K> {
  /** The record's natural key at this revision. */
  readonly key: string;
  /** Order of arrival in this program, from 1, without gaps. */
  readonly sequence: number;
  readonly standing: RevisionStanding;
  /** Null: written at the database itself. */
  readonly arrival: Arrival | null;
  /** The instant it counts from when two edits compete: `at` put right by what is known of the writer's clock. */
  readonly countedAt: string;
}

/** A record as it now is; `revisionId` is the base for the next edit. */
export type CurrentRecord<K extends StoredKind> = StoredRevision<K> & { readonly value: ValueOf<K> };

export interface Conflict {
  /** `same-record`: two edits of one base. `same-key`: two records that claim to be the same thing. */
  readonly reason: 'same-record' | 'same-key';
  readonly kind: StoredKind;
  readonly key: string;
  /** What is held now because it is the latest: a live revision or a removal. */
  readonly held: StoredRevision;
  /** What else was said, oldest first. */
  readonly rivals: readonly StoredRevision[];
}

export interface Appended {
  /** Revision ids, in the order given. */
  readonly added: readonly string[];
  readonly alreadyThere: readonly string[];
  /** Open conflicts that touch the records just sent. */
  readonly conflicts: readonly Conflict[];
}

/** Records by what the import did to them. A record removed earlier and brought back counts as added. */
export interface Imported {
  readonly added: number;
  readonly changed: number;
  readonly unchanged: number;
}

export interface ImportOptions {
  readonly author: string;
  /** ISO 8601 instant. */
  readonly at: string;
  /** Keeps what comes in as one, to be taken back together; the same import sent again does nothing. */
  readonly as?: ImportedFile;
  /** Called after each batch, inside the transaction; throwing abandons the import, and nothing of it stays. */
  readonly onProgress?: (progress: { readonly done: number; readonly total: number }) => void;
}

export interface ImportStore {
  /** Newest first. */
  list(): Promise<KeptImport[]>;
  /** The revisions that an import wrote, as they stand now; null where there is no such import. */
  revisions(importId: string): Promise<StoredRevision[] | null>;
  /**
   * Says again of every record what was said before the import, and removes what it added. Refused whole, with the first
   * few of them, where records were changed since.
   */
  undo(importId: string, by: { readonly author: string; readonly at: string }): Promise<Result<{ readonly undone: number }>>;
}

export interface Counts {
  /** Current records of each kind. */
  readonly records: Readonly<Record<StoredKind, number>>;
  readonly revisions: number;
  /** Revisions that await a person's decision. */
  readonly rivals: number;
  /** Sequence of the newest revision; 0 in an empty program. */
  readonly lastSequence: number;
}

export interface Verification {
  /** Revisions read and parsed. */
  readonly checked: number;
  /** Empty when all is well. */
  readonly problems: readonly Problem[];
}

/** What a copy of a database was found to hold. */
export interface Copied {
  /** Of all its programs. */
  readonly revisions: number;
  /** Names of the photos that any revision of a check or a sample ever named. */
  readonly photos: readonly string[];
}

/** One program in one database. Several handles, also in several processes, may be open at once. */
export interface Store {
  readonly program: string;
  readonly accounts: AccountStore;
  readonly calendars: CalendarStore;
  readonly fetches: FetchStore;
  readonly imports: ImportStore;
  /**
   * Names this database's own history: kept as long as it goes on, another one once a backup is opened in its place.
   */
  epoch(): Promise<string>;
  /** All of them or, when any is faulty, none. */
  append(revisions: readonly Revision[], arrival?: Arrival): Promise<Result<Appended>>;
  /**
   * Bring in many records at once. Each is compared by natural key with what is current: the same adds nothing,
   * a different value becomes a new revision, an unknown key a new record. Kinds that are absent are left alone,
   * and so are records that the import does not name.
   */
  importProgram(program: Partial<Program>, options: ImportOptions): Promise<Result<Imported>>;
  /** What the program says now; each kind in the order of its natural keys (UTF-8 bytes). */
  loadProgram(): Promise<Program>;
  current<K extends StoredKind>(kind: K): Promise<CurrentRecord<K>[]>;
  /** Every revision of a record, or of all records that ever had this key, in order of arrival. */
  history(of: string | { readonly kind: StoredKind; readonly key: string }): Promise<StoredRevision[]>;
  /** Those of the revisions named that are here. */
  revisions(revisionIds: readonly string[]): Promise<StoredRevision[]>;
  /** Say again what an earlier revision said; decides over all rivals of its record. */
  restore(revisionId: string, by: { readonly author: string; readonly at: string }): Promise<Result<Appended>>;
  conflicts(): Promise<Conflict[]>;
  /** Revisions that arrived after `sequence`, oldest first, at most `limit` (default 1,000). */
  changesSince(sequence: number, limit?: number): Promise<StoredRevision[]>;
  counts(): Promise<Counts>;
  /**
   * Copy the whole database, all programs, while it is in use, into one new SQLite file. The source is checked before, and
   * the copy before it gets its name. Throws a `StoreError`: `file-exists`, or `damaged` for either.
   */
  backup(file: string): Promise<Copied>;
  /** Throws a `StoreError` when the database's pages are not what they should be: quicker than `verify`, and no value is read. */
  check(): Promise<void>;
  /** The database's own integrity check, and every value against its schema. */
  verify(): Promise<Verification>;
  close(): Promise<void>;
}

export interface OpenOptions {
  /** Which program of the database; made when missing. Default `main`. */
  readonly program?: string;
}
