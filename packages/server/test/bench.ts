/** A real server over a real database, phones with IndexedDB, and a network between them that fails as told. */
import 'fake-indexeddb/auto';
import { copyFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { CheckRecord } from '@duskwatch/core';
import { openStore, type Store } from '@duskwatch/store';
import type { FastifyInstance } from 'fastify';
import { onTestFinished } from 'vitest';
import { type Outbox, type OutboxOptions, openOutbox } from '../../web/src/sync/index.ts';
import { buildServer } from '../src/index.ts';
import { smallProgram } from '../src/small-program.testing.ts';

export const NOON = Date.parse('2026-07-15T12:00:00Z');

export type Fault =
  /** The request is lost. */
  | 'before'
  /** The server commits, and its answer is lost. */
  | 'after'
  /** The server commits, and half its answer arrives. */
  | 'half'
  /** The network delivers the request twice. */
  | 'twice'
  /** The server commits, and the phone has stopped waiting. */
  | 'late'
  | 'none';

export interface Bench {
  store: Store;
  app: FastifyInstance;
  /** The server's clock, in ms. */
  nowMs: number;
  /** Faults of the next requests, in order; none after. */
  readonly faults: Fault[];
  readonly requests: { url: string; revisions: number }[];
  phone(options?: OutboxOptions): Promise<Outbox>;
  backup(): Promise<string>;
  /** The server goes on from a backup, or from a plain copy of a file. */
  restart(from: string): Promise<void>;
  folder: string;
}

let opened = 0;

export async function bench(): Promise<Bench> {
  const folder = mkdtempSync(join(tmpdir(), 'duskwatch-sync-'));
  const serve = (store: Store) =>
    buildServer({ store, records: { store, photoFolder: join(folder, 'photos'), now: () => it.nowMs } });
  const store = await openStore(join(folder, 'data.sqlite'));
  const phones: Outbox[] = [];
  const it: Bench = {
    store,
    folder,
    app: null as unknown as FastifyInstance,
    nowMs: NOON,
    faults: [],
    requests: [],
    async phone(options = {}) {
      const outbox = await openOutbox({
        databaseName: `phone-${++opened}`,
        auto: false,
        now: () => it.nowMs,
        random: () => 0,
        timeoutMs: 2_000,
        fetch: (url, init) => network(it, url, init),
        ...options,
      });
      phones.push(outbox);
      return outbox;
    },
    async backup() {
      const file = join(folder, `backup-${++opened}.sqlite`);
      await it.store.backup(file);
      return file;
    },
    async restart(from) {
      await it.app.close();
      await it.store.close();
      const file = join(folder, `restored-${++opened}.sqlite`);
      copyFileSync(from, file);
      it.store = await openStore(file);
      it.app = serve(it.store);
    },
  };
  it.app = serve(store);
  const { checks: _, ...program } = smallProgram();
  await store.importProgram(program, { author: 'test', at: '2026-07-01T00:00:00Z' });
  onTestFinished(async () => {
    for (const phone of phones) phone.close();
    await it.app.close();
    await it.store.close();
    rmSync(folder, { recursive: true, force: true });
  });
  return it;
}

async function network(bench: Bench, url: string, init: RequestInit): Promise<Response> {
  const fault = bench.faults.shift() ?? 'none';
  const body = init.body as string | ArrayBuffer;
  bench.requests.push({ url, revisions: typeof body === 'string' ? JSON.parse(body).revisions.length : 0 });
  if (fault === 'before') throw new TypeError('network down');
  const deliver = () =>
    bench.app.inject({
      method: 'POST',
      url,
      headers: init.headers as Record<string, string>,
      payload: typeof body === 'string' ? body : Buffer.from(body),
    });
  if (fault === 'twice') await deliver();
  const answer = await deliver();
  if (fault === 'after') throw new TypeError('connection reset');
  if (fault === 'late') {
    const signal = init.signal!;
    if (!signal.aborted) await new Promise((resolve) => signal.addEventListener('abort', resolve));
    throw new DOMException('waited too long', 'AbortError');
  }
  const text = fault === 'half' ? answer.body.slice(0, answer.body.length / 2) : answer.body;
  return new Response(text, { status: answer.statusCode });
}

export const check = (checkedOn: string, targetCount: number, more: Partial<CheckRecord> = {}): CheckRecord => ({
  trapId: 'T1',
  checkedOn,
  visit: 1,
  targetCount,
  otherCount: null,
  condition: 'fit',
  emptied: true,
  note: null,
  ...more,
});

/** As many visits on as many days as asked for, from the day the trap was hung. */
export const dayFrom = (offset: number): string => new Date(Date.UTC(2026, 6, 2 + offset)).toISOString().slice(0, 10);
