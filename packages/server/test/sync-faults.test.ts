import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { expect, test } from 'vitest';
import { newRevision } from '../../web/src/sync/index.ts';
import { bench, check, dayFrom, NOON } from './bench.ts';

test.each(['before', 'after', 'half', 'twice', 'late'] as const)(
  'a connection that fails (%s) leaves the record once on the server, whenever the phone tries again',
  async (fault) => {
    const b = await bench();
    const phone = await b.phone({ timeoutMs: 1_500 });
    const revision = newRevision('checks', check('2026-07-14', 7), null, NOON);
    await phone.put(revision);
    b.faults.push(fault);
    const first = await phone.sync();
    expect(first).toBe(fault === 'twice' ? 'sent' : 'unreachable');
    if (fault !== 'twice') expect(phone.status()).toMatchObject({ pending: 1, trouble: 'unreachable' });
    expect(await phone.sync()).toBe('sent');
    expect(phone.status()).toMatchObject({ pending: 0, refused: 0, trouble: null });
    expect(await b.store.history(revision.recordId)).toHaveLength(1);
    expect((await b.store.loadProgram()).checks).toEqual([check('2026-07-14', 7)]);
  },
);

test('a thousand visits go in batches, in order, each once, though every third request fails', async () => {
  const b = await bench();
  const phone = await b.phone({ batchSize: 100 });
  const revisions = Array.from({ length: 1_000 }, (_, n) =>
    newRevision('checks', check(dayFrom(n % 14), n, { visit: 1 + Math.floor(n / 14) }), null, NOON + n),
  );
  b.nowMs = NOON + 10_000;
  await phone.put(...revisions);
  b.faults.push('none', 'none', 'after', 'none', 'none', 'before', 'none', 'none', 'half');
  let tries = 0;
  while ((await phone.sync()) !== 'sent' && tries < 10) tries += 1;
  expect(tries).toBe(3);
  const arrived = (await b.store.changesSince(0, 5_000)).filter((said) => said.kind === 'checks');
  expect(arrived.map((said) => said.revisionId)).toEqual(revisions.map((said) => said.revisionId));
  expect(Math.max(...b.requests.map((request) => request.revisions))).toBe(100);
});

test('faulty revisions in the middle are refused with their problems and hold nobody up', async () => {
  const b = await bench();
  const phone = await b.phone();
  const good = [3, 4, 5].map((day) => newRevision('checks', check(`2026-07-0${day}`, day), null, NOON));
  const unknownTrap = newRevision('checks', check('2026-07-06', 1, { trapId: 'T9' }), null, NOON);
  const beforeHanging = newRevision('checks', check('2026-06-01', 1), null, NOON);
  const notCounted = newRevision('checks', check('2026-07-07', 1, { targetCount: null }), null, NOON);
  const garbage = { ...newRevision('checks', check('2026-07-08', 1), null, NOON), kind: 'moons' as 'checks' };
  await phone.put(good[0]!, unknownTrap, garbage, good[1]!, beforeHanging, notCounted, good[2]!);
  expect(await phone.sync()).toBe('sent');
  expect((await b.store.loadProgram()).checks.map((each) => each.targetCount)).toEqual([3, 4, 5]);
  const refused = await phone.refused();
  expect(refused.map(({ revision }) => revision.revisionId)).toEqual(
    [unknownTrap, garbage, beforeHanging, notCounted].map((revision) => revision.revisionId),
  );
  expect(refused.map(({ problems }) => problems[0]!.got)).toEqual(['T9', '"moons"', '2026-06-01', 'nothing, at a fit visit']);
  // The trap turns up: what was refused is offered again as it is.
  const trap = (await b.store.loadProgram()).traps[0]!;
  await phone.put(newRevision('traps', { ...trap, trapId: 'T9' }, null, NOON));
  await phone.sync();
  await phone.retry(unknownTrap.revisionId);
  await phone.sync();
  await phone.discard(garbage.revisionId);
  expect(phone.status()).toMatchObject({ pending: 0, refused: 2 });
  expect((await b.store.loadProgram()).checks).toHaveLength(4);
});

test('a body that the server cannot read at all is cut down until what is at fault stands alone', async () => {
  const b = await bench();
  const phone = await b.phone();
  const huge = newRevision('checks', check('2026-07-04', 1, { note: 'x'.repeat(9 * 1024 * 1024) }), null, NOON);
  const good = [3, 5].map((day) => newRevision('checks', check(`2026-07-0${day}`, day), null, NOON));
  await phone.put(good[0]!, huge, good[1]!);
  expect(await phone.sync()).toBe('sent');
  expect((await phone.refused()).map(({ revision }) => revision.revisionId)).toEqual([huge.revisionId]);
  expect((await b.store.loadProgram()).checks).toHaveLength(2);
});

test.each(['backup', 'plain copy'])('a server back from an older %s gets again what it had acknowledged', async (how) => {
  const b = await bench();
  const phone = await b.phone();
  const other = await b.phone();
  const revisions = [3, 4, 5, 6].map((day) => newRevision('checks', check(`2026-07-0${day}`, day), null, NOON));
  await phone.put(...revisions.slice(0, 2));
  await phone.sync();
  const old = await b.backup();
  if (how === 'plain copy') {
    // Copied as files are: the same epoch, and only the missing revision tells.
    const copy = new DatabaseSync(old);
    copy.prepare('update programs set epoch = ?').run(await b.store.epoch());
    copy.close();
  }
  await phone.put(revisions[2]!);
  await phone.sync();
  expect(phone.status().pending).toBe(0);

  await b.restart(old);
  // Somebody else writes first, so that the sequence alone would tell nothing.
  await other.put(
    newRevision('checks', check('2026-07-10', 10), null, NOON),
    newRevision('checks', check('2026-07-11', 11), null, NOON),
  );
  await other.sync();
  await phone.put(revisions[3]!);
  expect(await phone.sync()).toBe('sent');
  expect((await b.store.loadProgram()).checks.map((each) => each.targetCount)).toEqual([3, 4, 5, 6, 10, 11]);
  expect(await b.store.conflicts()).toEqual([]);
});

test('also without anything new to write, the phone notices that the server lost what it acknowledged', async () => {
  const b = await bench();
  const phone = await b.phone();
  const old = await b.backup();
  await phone.put(newRevision('checks', check('2026-07-03', 3), null, NOON));
  await phone.sync();
  await b.restart(old);
  expect(await phone.sync()).toBe('sent');
  expect((await b.store.loadProgram()).checks).toHaveLength(1);
});

test('a store closed in the middle of a request is no answer, and the record arrives once it is back', async () => {
  const b = await bench();
  const phone = await b.phone();
  await phone.put(newRevision('checks', check('2026-07-03', 3), null, NOON));
  const append = b.store.append.bind(b.store);
  b.store.append = async (...said) => {
    await append(...said);
    await b.store.close();
    throw new Error('closed');
  };
  expect(await phone.sync()).toBe('unreachable');
  await b.restart(join(b.folder, 'data.sqlite'));
  expect(await phone.sync()).toBe('sent');
  expect((await b.store.loadProgram()).checks).toHaveLength(1);
  expect((await b.store.changesSince(0)).filter((said) => said.kind === 'checks')).toHaveLength(1);
});

test('what was written survives that the app is closed and opened again, and is kept apart by who wrote it', async () => {
  const b = await bench();
  const first = await b.phone({ databaseName: 'shared', person: 'ida' });
  await first.put(newRevision('checks', check('2026-07-03', 3), null, NOON));
  first.close();
  const again = await b.phone({ databaseName: 'shared', person: 'ida' });
  expect(again.status().pending).toBe(1);
  const ben = await b.phone({ databaseName: 'shared', person: 'this-machine' });
  expect(ben.status()).toMatchObject({ pending: 0, ofOthers: 1 });
  await ben.sync();
  // Whoever is signed in is not who wrote: nothing is sent under another's name.
  expect(await again.sync()).toBe('other-person');
  expect((await b.store.loadProgram()).checks).toEqual([]);
  expect(again.status().pending).toBe(1);
});

test('signed out in the middle, everything waits', async () => {
  const b = await bench();
  let signedOut = true;
  const phone = await b.phone({
    fetch: async (url, init) =>
      signedOut
        ? new Response('{"problems":[]}', { status: 401 })
        : new Response(
            (
              await b.app.inject({
                method: 'POST',
                url,
                headers: init.headers as Record<string, string>,
                payload: init.body as string,
              })
            ).body,
          ),
  });
  await phone.put(newRevision('checks', check('2026-07-03', 3), null, NOON));
  expect(await phone.sync()).toBe('signed-out');
  expect(phone.status()).toMatchObject({ pending: 1, refused: 0, trouble: 'signed-out', nextTryMs: null });
  signedOut = false;
  expect(await phone.sync()).toBe('sent');
});

test('a page that some network shows in place of the server is no receipt', async () => {
  const b = await bench();
  for (const answer of [
    new Response('<html>Sign in to this network</html>'),
    new Response('{}'),
    new Response('{"problems":[]}', { status: 403 }),
  ]) {
    const phone = await b.phone({ fetch: async () => answer });
    await phone.put(newRevision('checks', check('2026-07-03', 3), null, NOON));
    expect(await phone.sync()).toBe('unreachable');
    expect(phone.status()).toMatchObject({ pending: 1, refused: 0 });
  }
});
