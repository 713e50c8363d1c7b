import 'fake-indexeddb/auto';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { type NewRevision, newRevision, type Outbox, type OutboxOptions, openOutbox } from './index.ts';
import { retryDelayMs } from './outbox.ts';

const NOW = Date.parse('2026-07-15T12:00:00Z');
const lure = (day: number) => newRevision('lures', { trapId: 'T1', placedOn: `2026-07-0${day}`, lifeDays: 28 }, null, NOW);

/** A server that takes everything, and says so. */
const takesAll = async (url: string, init: RequestInit): Promise<Response> => {
  if (url === '/api/photos') return Response.json({ photo: await sha256(init.body as ArrayBuffer) });
  const { revisions } = JSON.parse(init.body as string) as { revisions: NewRevision[] };
  return Response.json({ epoch: 'e', skewMs: 0, added: revisions.map((each) => each.revisionId), alreadyThere: [], refused: [] });
};

async function sha256(bytes: ArrayBuffer): Promise<string> {
  return [...new Uint8Array(await crypto.subtle.digest('SHA-256', bytes))]
    .map((byte) => byte.toString(16).padStart(2, '0'))
    .join('');
}

/** Lets everything else that is ready run once, without a timer. */
const nextTurn = () =>
  new Promise<void>((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });

/** Lets what is under way go on until it is done. However slow the machine is, no waiting time ends meanwhile. */
async function until(done: () => boolean): Promise<void> {
  while (!done()) await nextTurn();
}

let names = 0;
const open = new Set<Outbox>();
async function outboxWith(options: OutboxOptions): Promise<Outbox> {
  const outbox = await openOutbox({ databaseName: `outbox-${++names}`, auto: false, now: () => NOW, ...options });
  open.add(outbox);
  return outbox;
}
afterEach(() => {
  for (const outbox of open) outbox.close();
  open.clear();
});

describe('the outbox', () => {
  it('keeps what is put, in order, all or none, and the same revision once', async () => {
    const outbox = await outboxWith({ fetch: takesAll });
    const [a, b, c] = [lure(1), lure(2), lure(3)];
    await outbox.put(b, a);
    await outbox.put(a, c);
    expect((await outbox.pending()).map(({ revision }) => revision)).toEqual([b, a, c]);
    const notToBeKept = { ...lure(4), value: () => 'no record' } as unknown as NewRevision;
    await expect(outbox.put(lure(5), notToBeKept)).rejects.toThrow();
    expect(outbox.status().pending).toBe(3);
  });

  it('tries again at once when the signal comes back while a try without it is still failing', async () => {
    const signal = new EventTarget();
    vi.stubGlobal('addEventListener', signal.addEventListener.bind(signal));
    vi.stubGlobal('removeEventListener', signal.removeEventListener.bind(signal));
    // No waiting time ever ends in this test, so only the signal can bring the next try.
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    try {
      let fail: (reason: Error) => void = () => undefined;
      const hangs = () => new Promise<Response>((_, reject) => (fail = reject));
      const fetch = vi.fn<(url: string, init: RequestInit) => Promise<Response>>(takesAll).mockImplementationOnce(hangs);
      const outbox = await outboxWith({ fetch, auto: true });
      await outbox.put(lure(1));
      await until(() => fetch.mock.calls.length === 1);
      const failed = outbox.sync();
      signal.dispatchEvent(new Event('online'));
      fail(new TypeError('no network'));
      expect(await failed).toBe('unreachable');
      await until(() => outbox.status().pending === 0);
      expect(fetch).toHaveBeenCalledTimes(2);
    } finally {
      vi.useRealTimers();
      vi.unstubAllGlobals();
    }
  });

  it('tells listeners of each change, and gives the same status until there is one', async () => {
    const outbox = await outboxWith({ fetch: takesAll });
    const seen: number[] = [];
    const stop = outbox.subscribe(() => seen.push(outbox.status().pending));
    const before = outbox.status();
    expect(outbox.status()).toBe(before);
    await outbox.put(lure(1));
    await outbox.sync();
    expect(seen.at(0)).toBe(1);
    expect(seen.at(-1)).toBe(0);
    stop();
    const { length } = seen;
    await outbox.put(lure(2));
    expect(seen).toHaveLength(length);
  });

  it('forgets what was acknowledged a month ago, and nothing that is pending or refused', async () => {
    let nowMs = NOW;
    const outbox = await outboxWith({
      now: () => nowMs,
      keepDays: 30,
      fetch: async (url, init) => {
        const { revisions } = JSON.parse(init.body as string) as { revisions: NewRevision[] };
        const [bad, ...good] = revisions;
        if (revisions.length < 2) return takesAll(url, init);
        const problems = [{ where: {}, got: 'x', expected: 'y', fix: 'z' }];
        return Response.json({
          epoch: 'e',
          skewMs: 0,
          added: good.map((each) => each.revisionId),
          alreadyThere: [],
          refused: [{ revisionId: bad!.revisionId, problems }],
        });
      },
    });
    await outbox.put(lure(1), lure(2));
    await outbox.sync();
    nowMs += 29 * 86_400_000;
    await outbox.sync();
    expect((await outbox.all()).map(({ state }) => state)).toEqual(['refused', 'acknowledged']);
    nowMs += 2 * 86_400_000;
    await outbox.sync();
    expect((await outbox.all()).map(({ state }) => state)).toEqual(['refused']);
  });

  it('cannot discard what is pending: only a removal takes it back', async () => {
    const outbox = await outboxWith({ fetch: takesAll });
    const revision = lure(1);
    await outbox.put(revision);
    await outbox.discard(revision.revisionId);
    expect(outbox.status().pending).toBe(1);
    await outbox.put(newRevision('lures', null, revision, NOW));
    const [made, removed] = (await outbox.pending()).map((entry) => entry.revision);
    expect(removed).toMatchObject({ recordId: made!.recordId, baseRevisionId: made!.revisionId, value: null });
  });

  it('sends counts before photos, so that a large photo over a weak signal holds up no count', async () => {
    const urls: string[] = [];
    const outbox = await outboxWith({
      fetch: (url, init) => {
        urls.push(url);
        return takesAll(url, init);
      },
    });
    const photo = await outbox.putPhoto(new Blob([new Uint8Array([0xff, 0xd8, 0xff, 1])], { type: 'image/jpeg' }));
    expect(photo).toMatch(/^[0-9a-f]{64}$/);
    await outbox.put(lure(1));
    expect(outbox.status()).toMatchObject({ pending: 1, photos: 1 });
    expect(await outbox.sync()).toBe('sent');
    expect(urls.filter((url, index) => url !== urls[index - 1])).toEqual(['/api/revisions', '/api/photos']);
    expect(outbox.status()).toMatchObject({ pending: 0, photos: 0, photosRefused: 0 });
    expect((await outbox.photo(photo))!.type).toBe('image/jpeg');
  });

  it('goes on without a photo that the server will not take, and says so', async () => {
    const outbox = await outboxWith({
      fetch: async (url, init) =>
        url === '/api/photos' ? Response.json({ problems: [] }, { status: 415 }) : takesAll(url, init),
    });
    await outbox.putPhoto(new Blob(['no photo']));
    expect(await outbox.sync()).toBe('sent');
    expect(outbox.status()).toMatchObject({ photos: 0, photosRefused: 1 });
  });

  it('cuts its batches where a proxy finds them too large', async () => {
    const sizes: number[] = [];
    const outbox = await outboxWith({
      fetch: async (url, init) => {
        const { revisions } = JSON.parse(init.body as string) as { revisions: NewRevision[] };
        sizes.push(revisions.length);
        return revisions.length > 2 ? new Response('<html>413</html>', { status: 413 }) : takesAll(url, init);
      },
    });
    await outbox.put(...[1, 2, 3, 4, 5, 6].map(lure));
    expect(await outbox.sync()).toBe('sent');
    expect(sizes.slice(0, 3)).toEqual([6, 3, 2]);
    expect(outbox.status()).toMatchObject({ pending: 0, refused: 0 });
  });
});

describe('trying again', () => {
  beforeEach(() => void vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] }));
  afterEach(() => void vi.useRealTimers());

  it('waits longer after each failure, up to five minutes, and not all phones equally long', () => {
    expect([1, 2, 3, 4, 20].map((failures) => retryDelayMs(failures, 0) / 1_000)).toEqual([2, 4, 8, 16, 300]);
    expect(retryDelayMs(20, 0.999)).toBeGreaterThanOrEqual(150_000);
  });

  it('sends by itself once the server is back, also when a try is due before the last one has put its outcome down', async () => {
    let down = true;
    let asked = 0;
    const outbox = await outboxWith({
      auto: true,
      random: () => 0,
      fetch: async (url, init) => {
        asked += 1;
        if (down) throw new TypeError('no signal');
        return takesAll(url, init);
      },
    });
    await outbox.put(lure(1));
    await until(() => outbox.status().nextTryMs !== null);
    expect(outbox.status()).toMatchObject({ pending: 1, trouble: 'unreachable', nextTryMs: NOW + 2_000 });
    await vi.advanceTimersByTimeAsync(2_000);
    await until(() => outbox.status().nextTryMs === NOW + 4_000);
    down = false;
    await vi.advanceTimersByTimeAsync(4_000);
    await until(() => outbox.status().pending === 0 && !outbox.status().sending);
    expect(outbox.status()).toMatchObject({ trouble: null, nextTryMs: null });
    expect(asked).toBe(3);
  });

  it('also sends what is put while it is sending', async () => {
    const outbox = await outboxWith({ auto: true, fetch: takesAll });
    for (const day of [1, 2, 3, 4, 5, 6, 7]) {
      await outbox.put(lure(day));
      for (let turns = 0; turns < day; turns++) await Promise.resolve();
    }
    await until(() => outbox.status().pending === 0 && !outbox.status().sending);
    expect((await outbox.all()).map(({ state }) => state)).toEqual(Array.from({ length: 7 }, () => 'acknowledged'));
  });

  it('asks nothing more once it is closed', async () => {
    let asked = 0;
    const outbox = await outboxWith({
      auto: true,
      fetch: async () => {
        asked += 1;
        throw new TypeError('no signal');
      },
    });
    await outbox.put(lure(1));
    await until(() => outbox.status().nextTryMs !== null);
    outbox.close();
    await vi.advanceTimersByTimeAsync(600_000);
    expect(asked).toBe(1);
  });
});

it('an id is a UUID of version 7 whose text sorts in the order of making, also when the clock goes back (RFC 9562, 5.7)', async () => {
  // As at the start of a page: an id never sorts before one that was made earlier in it.
  vi.resetModules();
  const { uuidv7 } = await import('./uuid.ts');
  const ids = [NOW, NOW, NOW - 5_000, NOW + 1, ...Array.from({ length: 5_000 }, () => NOW + 1)].map((ms) => uuidv7(ms));
  expect([...ids].sort()).toEqual(ids);
  expect(new Set(ids).size).toBe(ids.length);
  for (const id of ids) expect(id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
  expect(Number.parseInt(ids[0]!.replace('-', '').slice(0, 12), 16)).toBe(NOW);
});
