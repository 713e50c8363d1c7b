import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import type { SentEntries } from '../calendars/types.ts';
import type { Bench } from './bench.ts';

const madeAt = '2026-07-14T21:05:00.000Z';
const feed = (tokenHash: string, personId = 'this-machine') => ({ tokenHash, personId, madeAt });
const sent: SentEntries = { 'check.S1': { digest: 'a', sequence: 2, changedAt: madeAt, gone: false } };

export function calendarContract(bench: Bench): void {
  test('a person has one calendar address at most: a new one ends the old one, and what was sent there', async () => {
    const { calendars } = await bench.store();
    expect(await calendars.feedOf('this-machine')).toBeNull();
    await calendars.make(feed('old'));
    await calendars.keepSent('old', sent);
    expect(await calendars.feed('old')).toEqual({ feed: feed('old'), person: null, sent });
    await calendars.make(feed('new'));
    expect(await calendars.feed('old')).toBeNull();
    await calendars.keepSent('old', sent);
    expect(await calendars.feed('new')).toEqual({ feed: feed('new'), person: null, sent: {} });
    expect(await calendars.feedOf('this-machine')).toEqual(feed('new'));
    expect([await calendars.revoke('this-machine'), await calendars.revoke('this-machine')]).toEqual([true, false]);
    expect(await calendars.feed('new')).toBeNull();
  });

  test('the calendar of one program is in no other, and is kept between openings', async () => {
    const url = await bench.harness.fresh();
    await (await bench.store(url)).calendars.make(feed('a'));
    expect(await (await bench.store(url, 'other')).calendars.feed('a')).toBeNull();
    expect(await (await bench.store(url)).calendars.feed('a')).not.toBeNull();
  });

  test('the calendar of somebody disabled has ended, also when they come back', async () => {
    const { accounts, calendars } = await bench.store();
    const person = { id: 'ida', name: 'Ida', role: 'coordinator', farms: [], language: 'en' } as const;
    await accounts.addFirst({ ...person, nameKey: 'ida', passwordHash: 'hash' }, madeAt);
    const token = { role: 'scout', farms: [], personId: null, createdBy: 'ida', createdAt: madeAt, expiresAt: '2027' } as const;
    await accounts.invite({ ...token, invitationId: 'i', tokenHash: 't' }, { actor: 'ida', at: madeAt });
    await accounts.accept('t', () => true, { id: 'bo', name: 'Bo', language: 'es', nameKey: 'bo', passwordHash: 'h' }, madeAt);
    await calendars.make(feed('a', 'bo'));
    expect((await calendars.feed('a'))?.person).toMatchObject({ name: 'Bo', role: 'scout', language: 'es' });
    await accounts.change('bo', { disabled: true }, { actor: 'ida', at: madeAt });
    await accounts.change('bo', { disabled: false }, { actor: 'ida', at: madeAt });
    expect(await calendars.feed('a')).toBeNull();
  });

  test('a backup keeps calendar addresses: calendars on phones go on', async () => {
    const url = await bench.harness.fresh();
    const store = await bench.store(url);
    await store.calendars.make(feed('a'));
    await store.calendars.keepSent('a', sent);
    const folder = mkdtempSync(join(tmpdir(), 'duskwatch-backup-'));
    onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
    const file = join(folder, 'copy.sqlite');
    await store.backup(file);
    expect(await (await bench.store(file)).calendars.feed('a')).toEqual(await store.calendars.feed('a'));
  });
}
