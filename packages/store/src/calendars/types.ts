/** Addresses under which people's calendars are fetched, and what was last sent there. */
import type { Person } from '@duskwatch/core';

/** Whoever knows the address's secret reads the calendar. Only a hash of that is kept. */
export interface CalendarFeed {
  readonly personId: string;
  readonly tokenHash: string;
  /** ISO 8601, in UTC. */
  readonly madeAt: string;
}

/** How an entry stood when it was last sent: a calendar tells a change from a repetition by it. */
export interface SentEntry {
  /** Of what the entry says. */
  readonly digest: string;
  /** Times it has changed. */
  readonly sequence: number;
  readonly changedAt: string;
  /** True once it is in the calendar no longer. */
  readonly gone: boolean;
}

/** By uid. */
export type SentEntries = Readonly<Record<string, SentEntry>>;

export interface CalendarStore {
  /** The person's only feed from now on: one made before ends. */
  make(feed: CalendarFeed): Promise<void>;
  feedOf(personId: string): Promise<CalendarFeed | null>;
  /** False when there was none. */
  revoke(personId: string): Promise<boolean>;
  /** `person` is null when nobody in the program, or somebody disabled, has that id. */
  feed(tokenHash: string): Promise<{
    readonly feed: CalendarFeed;
    readonly person: Person | null;
    readonly sent: SentEntries;
  } | null>;
  /** Nothing when the feed has ended since. */
  keepSent(tokenHash: string, sent: SentEntries): Promise<void>;
}
