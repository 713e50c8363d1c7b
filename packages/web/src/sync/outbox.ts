import { type OutboxDatabase, openDatabase } from './database.ts';
import { sendAll } from './sending.ts';
import { transportOver } from './transport.ts';
import type { Outbox, OutboxOptions, OutboxStatus, SyncOutcome, Trouble } from './types.ts';

/** The person at a machine without accounts. */
export const THIS_MACHINE = 'this-machine';

const FIRST_RETRY_MS = 2_000;
const LAST_RETRY_MS = 5 * 60_000;
const DAY_MS = 86_400_000;

/** Waits twice as long after each failure, up to five minutes, less up to half by chance so that phones do not come all at once. */
export const retryDelayMs = (failures: number, random: number): number =>
  Math.min(LAST_RETRY_MS, FIRST_RETRY_MS * 2 ** (failures - 1)) * (1 - random / 2);

/**
 * What this machine has written and the server may not have yet. Works without signal from start to finish; what it
 * promises stands in docs/sync.md. Rejects when the browser offers no IndexedDB.
 */
export async function openOutbox(options: OutboxOptions = {}): Promise<Outbox> {
  const { databaseName = 'duskwatch-outbox', person = THIS_MACHINE } = options;
  const database = await openDatabase(databaseName);
  const outbox = new DeviceOutbox(database, { ...options, person, databaseName });
  await outbox.refresh();
  return outbox;
}

class DeviceOutbox implements Outbox {
  private readonly database: OutboxDatabase;
  private readonly person: string;
  private readonly lockName: string;
  private readonly auto: boolean;
  private readonly now: () => number;
  private readonly random: () => number;
  private readonly send: () => Promise<Trouble | null>;
  private readonly listeners = new Set<() => void>();
  private held: OutboxStatus = NOTHING_YET;
  private running: Promise<SyncOutcome> | null = null;
  /** Something was put while sending, perhaps too late for it. */
  private again = false;
  /** The signal came back while sending, perhaps too late for it. */
  private backOnline = false;
  private failures = 0;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private closed = false;

  constructor(database: OutboxDatabase, options: OutboxOptions & { person: string; databaseName: string }) {
    const { fetch = (url, init) => globalThis.fetch(url, init), timeoutMs = 30_000, batchSize = 200, keepDays = 30 } = options;
    this.database = database;
    this.person = options.person;
    this.lockName = `${options.databaseName}-sending`;
    this.auto = options.auto ?? true;
    this.now = options.now ?? Date.now;
    this.random = options.random ?? Math.random;
    this.send = () =>
      sendAll({
        database,
        transport: transportOver(fetch, timeoutMs),
        person: this.person,
        now: this.now,
        batchSize,
        keepMs: keepDays * DAY_MS,
        onSkew: (clockSkewMs) => this.tell({ clockSkewMs }),
        onProgress: () => this.refresh(),
        stopped: () => this.closed,
      });
    if (this.auto && typeof addEventListener === 'function') addEventListener('online', this.onOnline);
  }

  async put(...revisions: Parameters<Outbox['put']>): Promise<void> {
    await this.database.add(this.person, revisions);
    await this.refresh();
    this.sendSoon();
  }

  async putPhoto(image: Blob): Promise<string> {
    const bytes = await image.arrayBuffer();
    const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
    const photo = [...digest].map((byte) => byte.toString(16).padStart(2, '0')).join('');
    const kept = { photo, person: this.person, state: 'pending', type: image.type, bytes, answeredMs: null } as const;
    await this.database.addPhoto(kept);
    await this.refresh();
    this.sendSoon();
    return photo;
  }

  async photo(name: string): Promise<Blob | null> {
    const kept = await this.database.photo(name);
    return kept ? new Blob([kept.bytes], { type: kept.type }) : null;
  }

  pending: Outbox['pending'] = () => this.database.inState(this.person, 'pending');
  refused: Outbox['refused'] = () => this.database.inState(this.person, 'refused');
  all: Outbox['all'] = () => this.database.ofPerson(this.person);

  async retry(revisionId: string): Promise<void> {
    await this.database.moveRefused(revisionId, 'pending');
    await this.refresh();
    this.sendSoon();
  }

  async discard(revisionId: string): Promise<void> {
    await this.database.moveRefused(revisionId, 'nowhere');
    await this.refresh();
  }

  sync(): Promise<SyncOutcome> {
    this.running ??= this.attempt().finally(() => {
      this.running = null;
      const { backOnline } = this;
      const worthIt = backOnline || (this.again && this.held.trouble === null);
      this.again = false;
      this.backOnline = false;
      if (backOnline) this.failures = 0;
      if (worthIt) this.sendSoon();
    });
    return this.running;
  }

  status(): OutboxStatus {
    return this.held;
  }

  subscribe(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => void this.listeners.delete(listener);
  }

  close(): void {
    this.closed = true;
    clearTimeout(this.timer);
    if (this.auto && typeof removeEventListener === 'function') removeEventListener('online', this.onOnline);
    // A transaction under way is finished first; the browser sees to that.
    this.database.close();
  }

  async refresh(): Promise<void> {
    if (!this.closed) this.tell(await this.database.counts(this.person));
  }

  private readonly onOnline = (): void => {
    this.failures = 0;
    this.backOnline = this.running !== null;
    this.sendSoon();
  };

  private sendSoon(): void {
    if (!this.auto || this.closed) return;
    if (this.running) this.again = true;
    // Whatever went wrong is in the status, and the next try is set.
    else this.sync().catch(() => undefined);
  }

  /** A try that is due while the one before is still putting its outcome down follows it, and is not lost. */
  private async sendWhenFree(): Promise<void> {
    await this.running?.catch(() => undefined);
    this.sendSoon();
  }

  private async attempt(): Promise<SyncOutcome> {
    clearTimeout(this.timer);
    this.tell({ sending: true, nextTryMs: null });
    let outcome: SyncOutcome = 'unreachable';
    try {
      outcome = await oneAtATime(this.lockName, async () => (await this.send()) ?? 'sent');
    } catch (error) {
      if (!this.closed) throw error;
    } finally {
      this.afterwards(outcome);
    }
    await this.refresh();
    return outcome;
  }

  private afterwards(outcome: SyncOutcome): void {
    const trouble = outcome === 'sent' || outcome === 'busy' ? null : outcome;
    this.failures = trouble === 'unreachable' ? this.failures + 1 : 0;
    let nextTryMs: number | null = null;
    if ((trouble === 'unreachable' || outcome === 'busy') && this.auto && !this.closed) {
      const delay = retryDelayMs(Math.max(1, this.failures), this.random());
      nextTryMs = this.now() + delay;
      this.timer = setTimeout(() => this.sendWhenFree(), delay);
    }
    this.tell({ sending: false, trouble, nextTryMs });
  }

  private tell(news: Partial<OutboxStatus>): void {
    const next = { ...this.held, ...news };
    if ((Object.keys(next) as (keyof OutboxStatus)[]).every((key) => next[key] === this.held[key])) return;
    this.held = next;
    for (const listener of this.listeners) listener();
  }
}

const NOTHING_YET: OutboxStatus = {
  pending: 0,
  refused: 0,
  photos: 0,
  photosRefused: 0,
  ofOthers: 0,
  sending: false,
  trouble: null,
  nextTryMs: null,
  clockSkewMs: null,
};

/** Two pages of the app share one outbox: one of them sends. Where the browser cannot tell, both do, which is harmless. */
function oneAtATime(name: string, work: () => Promise<SyncOutcome>): Promise<SyncOutcome> {
  const locks = globalThis.navigator?.locks;
  if (!locks) return work();
  return locks.request(name, { ifAvailable: true }, (lock) => (lock ? work() : 'busy')) as Promise<SyncOutcome>;
}
