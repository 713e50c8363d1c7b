/** What this machine writes: through the outbox, so that it is kept at once and sent when there is a server. */
import type { Problem } from '@duskwatch/core';
import { useSyncExternalStore } from 'react';
import { ApiError, getJson } from '../../api/client.ts';
import { newRevision, openOutbox, THIS_MACHINE } from '../../sync/index.ts';
import type { Base, NewRevision, Outbox, OutboxEntry, OutboxStatus, StoredKind, ValueOf } from '../../sync/types.ts';

/** One record to be said: new (no base), edited, or removed (value null). */
export interface Change<K extends StoredKind = StoredKind> {
  readonly kind: K;
  readonly value: ValueOf<K> | null;
  readonly base: Base | null;
  /** What the base said; null: nothing, or removed. */
  readonly before: ValueOf<K> | null;
}

export interface DeskState {
  readonly entries: readonly OutboxEntry[];
  readonly status: OutboxStatus | null;
}

export interface Written {
  /** `kept`: on this machine, not known to have arrived. */
  readonly outcome: 'sent' | 'kept' | 'refused';
  readonly problems: readonly Problem[];
  readonly revisions: readonly NewRevision[];
  readonly undo: () => Promise<Written>;
}

const NOTHING: DeskState = { entries: [], status: null };
/** A server that is slow must not hold up the page: what is kept is kept. */
const PATIENCE_MS = 4_000;

let state = NOTHING;
let opened: Promise<Outbox> | null = null;
const listeners = new Set<() => void>();

const subscribe = (listener: () => void) => {
  listeners.add(listener);
  return () => void listeners.delete(listener);
};

export const useDesk = (): DeskState => useSyncExternalStore(subscribe, () => state);

/** Opens the outbox of whoever is signed in, once for the page. */
export function desk(): Promise<Outbox> {
  opened ??= open().catch((error) => {
    opened = null;
    throw error;
  });
  return opened;
}

async function open(): Promise<Outbox> {
  const outbox = await openOutbox({ person: await whoWrites() });
  const read = async () => {
    state = { entries: await outbox.all(), status: outbox.status() };
    for (const tell of listeners) tell();
  };
  outbox.subscribe(() => void read());
  await read();
  void outbox.sync();
  return outbox;
}

const LAST_PERSON = 'duskwatch.person';

/** The person signed in; without an answer, who it was last on this machine. */
async function whoWrites(): Promise<string> {
  try {
    const { person } = await getJson<{ person: { id: string } | null }>('/api/session', AbortSignal.timeout(PATIENCE_MS));
    const id = person?.id ?? THIS_MACHINE;
    remember(id);
    return id;
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
    return remembered() ?? THIS_MACHINE;
  }
}

function remember(id: string): void {
  try {
    localStorage.setItem(LAST_PERSON, id);
  } catch {}
}

function remembered(): string | null {
  try {
    return localStorage.getItem(LAST_PERSON);
  } catch {
    return null;
  }
}

/** Keeps the changes, all or none, then waits a moment for the server. Rejects only when the browser keeps nothing. */
export async function write(...changes: readonly Change[]): Promise<Written> {
  const outbox = await desk();
  const nowMs = Date.now();
  const revisions = changes.map(({ kind, value, base }) => newRevision(kind, value, base, nowMs));
  await outbox.put(...revisions);
  await Promise.race([outbox.sync(), new Promise((resolve) => setTimeout(resolve, PATIENCE_MS))]);
  const own = new Set(revisions.map(({ revisionId }) => revisionId));
  const entries = (await outbox.all()).filter(({ revision }) => own.has(revision.revisionId));
  const refused = entries.filter((entry) => entry.state === 'refused');
  const outcome = refused.length > 0 ? 'refused' : entries.every((entry) => entry.state === 'acknowledged') ? 'sent' : 'kept';
  return {
    outcome,
    problems: refused.flatMap((entry) => entry.problems),
    revisions,
    undo: () => write(...changes.map((change, index) => reversed(change, revisions[index]!)).reverse()),
  };
}

const reversed = ({ kind, value, before }: Change, { revisionId, recordId }: NewRevision): Change => ({
  kind,
  value: before,
  base: { revisionId, recordId },
  before: value,
});
