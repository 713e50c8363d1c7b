import { copyFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { openStore } from '../open.ts';
import type { Bench } from './bench.ts';
import { accepted, at, check, first, next } from './samples.ts';

export function arrivalContract({ store, harness }: Bench): void {
  test('of two edits that of a clock measured to be ahead counts from when it was truly written', async () => {
    const s = await store();
    const base = first(check(4), 0);
    await s.append([base]);
    // Ida writes at minute 10 with a clock 300 minutes ahead; Ben at minute 20 with a right one.
    const [ida, ben] = [next(base, check(5), 310, 'Ida'), next(base, check(6), 20, 'Ben')];
    await s.append([ida], { receivedAt: at(30), skewMs: 300 * 60_000 });
    await s.append([ben], { receivedAt: at(31), skewMs: 0 });
    expect((await s.loadProgram()).checks).toEqual([check(6)]);
    const [said] = await s.revisions([ida.revisionId]);
    expect(said).toMatchObject({ at: at(310), countedAt: at(10), arrival: { receivedAt: at(30), skewMs: 300 * 60_000 } });
  });

  test('a revision never counts from after it arrived, and one sent again with another measure is the same', async () => {
    const s = await store();
    const ahead = first(check(4), 500);
    await s.append([ahead], { receivedAt: at(30), skewMs: null });
    expect(accepted(await s.append([ahead], { receivedAt: at(40), skewMs: 7 })).alreadyThere).toEqual([ahead.revisionId]);
    const [said] = await s.revisions([ahead.revisionId]);
    expect(said).toMatchObject({ countedAt: at(30), arrival: { receivedAt: at(30), skewMs: null } });
    // The way through the network is not held against a clock.
    const slow = first(check(5, { visit: 2 }), 10);
    await s.append([slow], { receivedAt: at(30), skewMs: -59_000 });
    expect((await s.revisions([slow.revisionId]))[0]!.countedAt).toBe(at(10));
  });

  test('an epoch lasts as long as the database goes on, and a backup opened in its place begins another', async () => {
    const url = await harness.fresh();
    const s = await store(url);
    const epoch = await s.epoch();
    expect(await (await store(url)).epoch()).toBe(epoch);
    expect(await (await store(url, 'another')).epoch()).not.toBe(epoch);

    const folder = mkdtempSync(join(tmpdir(), 'duskwatch-epoch-'));
    onTestFinished(() => rmSync(folder, { recursive: true }));
    const backup = join(folder, 'backup.sqlite');
    await s.backup(backup);
    const epochs = new Set([epoch]);
    for (const copy of [`${backup}.1`, `${backup}.2`]) {
      copyFileSync(backup, copy);
      const restored = await openStore(copy);
      epochs.add(await restored.epoch());
      await restored.close();
    }
    expect(epochs.size).toBe(3);
    expect(await s.epoch()).toBe(epoch);
  });
}
