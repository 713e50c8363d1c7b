import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join as joinPath } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import type { AccountStore, By, Invitation, NewPerson, PassKey } from '../accounts/types.ts';
import { uuidv7 } from '../uuid.ts';
import type { Bench } from './bench.ts';

const at = '2026-07-14T21:05:00.000Z';
const later = '2026-07-14T22:05:00.000Z';

const newPerson = (name: string, change: Partial<NewPerson> = {}): NewPerson => ({
  id: `id-${name}`,
  name,
  nameKey: name.toLowerCase(),
  role: 'coordinator',
  farms: [],
  language: 'en',
  passwordHash: `hash of ${name}`,
  ...change,
});

const invitation = (change: Partial<Invitation> = {}): Invitation => ({
  invitationId: uuidv7(),
  tokenHash: `token ${uuidv7()}`,
  role: 'grower',
  farms: ['Hill farm'],
  personId: null,
  createdBy: 'id-Ida',
  createdAt: at,
  expiresAt: '2026-07-21T21:05:00.000Z',
  ...change,
});

const byIda: By = { actor: 'id-Ida', at };
const NOTHING_OLD = { startedBefore: '2000', seenBefore: '2000' };
const session = (personId: string, tokenHash: string) => ({ tokenHash, personId, startedAt: at, seenAt: at });

async function join(accounts: AccountStore, name: string, change: Partial<Invitation> = {}): Promise<void> {
  const made = invitation(change);
  await accounts.invite(made, byIda);
  const { role: _role, farms: _farms, ...newcomer } = newPerson(name);
  expect(await accounts.accept(made.tokenHash, () => true, newcomer, at)).toMatchObject({ outcome: 'joined' });
}

export function accountContract(bench: Bench): void {
  const started = async (url?: string): Promise<AccountStore> => {
    const { accounts } = await bench.store(url);
    expect(await accounts.addFirst(newPerson('Ida'), at)).toBe(true);
    return accounts;
  };

  test('of many who would be the first at once, one is', async () => {
    const url = await bench.harness.fresh();
    const stores = await Promise.all([1, 2, 3].map(() => bench.store(url)));
    const outcomes = await Promise.all(stores.map(({ accounts }, index) => accounts.addFirst(newPerson(`P${index}`), at)));
    expect(outcomes.filter(Boolean)).toHaveLength(1);
    expect(await stores[0]!.accounts.people()).toHaveLength(1);
  });

  test('people are kept between openings, each program its own', async () => {
    const url = await bench.harness.fresh();
    await started(url);
    const again = (await bench.store(url)).accounts;
    expect(await again.personNamed('ida')).toMatchObject({ passwordHash: 'hash of Ida', person: { role: 'coordinator' } });
    expect(await (await bench.store(url, 'other')).accounts.people()).toEqual([]);
  });

  test('an invitation gives its role and farms, once, however many use it at the same time', async () => {
    const url = await bench.harness.fresh();
    const accounts = await started(url);
    const made = invitation();
    await accounts.invite(made, byIda);
    const { role: _role, farms: _farms, ...newcomer } = newPerson('Bo');
    const stores = await Promise.all([1, 2, 3].map(() => bench.store(url)));
    const outcomes = await Promise.all(
      stores.map((store, n) =>
        store.accounts.accept(made.tokenHash, () => true, { ...newcomer, id: `b${n}`, nameKey: `bo${n}` }, at),
      ),
    );
    expect(outcomes.map(({ outcome }) => outcome).sort()).toEqual(['invalid', 'invalid', 'joined']);
    expect((await accounts.people()).find((person) => person.name === 'Bo')).toMatchObject({
      role: 'grower',
      farms: ['Hill farm'],
    });
    expect(await accounts.invitations()).toEqual([]);
  });

  test('an invitation that is refused stays, and so does one for a name that is taken', async () => {
    const accounts = await started();
    const made = invitation();
    await accounts.invite(made, byIda);
    const { role: _role, farms: _farms, ...newcomer } = newPerson('Ida');
    expect(await accounts.accept(made.tokenHash, () => false, newcomer, at)).toEqual({ outcome: 'invalid' });
    expect(await accounts.accept(made.tokenHash, () => true, { ...newcomer, id: 'new' }, at)).toEqual({ outcome: 'name-taken' });
    expect(await accounts.invitations()).toEqual([made]);
    expect(await accounts.withdraw(made.invitationId, byIda)).toBe(true);
    expect(await accounts.withdraw(made.invitationId, byIda)).toBe(false);
    expect(await accounts.invitationFor(made.tokenHash)).toBeNull();
  });

  test('a new password leaves the person as they were and ends their sessions', async () => {
    const accounts = await started();
    await accounts.startSession(session('id-Ida', 'a'), NOTHING_OLD);
    const made = invitation({ personId: 'id-Ida', role: 'reader' });
    await accounts.invite(made, byIda);
    const { role: _role, farms: _farms, ...newcomer } = newPerson('Somebody', { passwordHash: 'new hash' });
    expect(await accounts.accept(made.tokenHash, () => true, newcomer, at)).toMatchObject({ outcome: 'new-password' });
    expect(await accounts.personNamed('ida')).toMatchObject({ passwordHash: 'new hash', person: { role: 'coordinator' } });
    expect(await accounts.session('a')).toBeNull();
    expect(await accounts.people()).toHaveLength(1);
  });

  test('a program is never left without a coordinator, even by two who leave at once', async () => {
    const accounts = await started();
    expect(await accounts.change('id-Ida', { role: 'scout' }, byIda)).toBe('last-coordinator');
    await join(accounts, 'Bo', { role: 'coordinator', farms: [] });
    const outcomes = await Promise.all([
      accounts.change('id-Ida', { disabled: true }, byIda),
      accounts.change('id-Bo', { role: 'reader' }, byIda),
    ]);
    expect(outcomes.sort()).toEqual(['changed', 'last-coordinator']);
  });

  test('sessions of somebody whose role, farms or standing changes end; those of others go on', async () => {
    const accounts = await started();
    await join(accounts, 'Bo');
    for (const change of [{ farms: ['Low farm'] }, { role: 'scout', farms: [] }, { disabled: true }] as const) {
      await accounts.startSession(session('id-Ida', `ida ${JSON.stringify(change)}`), NOTHING_OLD);
      await accounts.startSession(session('id-Bo', 'bo'), NOTHING_OLD);
      expect(await accounts.session('bo')).not.toBeNull();
      await accounts.change('id-Bo', change, byIda);
      expect(await accounts.session('bo')).toBeNull();
      expect(await accounts.session(`ida ${JSON.stringify(change)}`)).not.toBeNull();
    }
  });

  test('somebody disabled has no session, though one is begun in the same moment, and leaves no way back', async () => {
    const accounts = await started();
    await join(accounts, 'Bo', { role: 'coordinator', farms: [] });
    await accounts.invite(invitation({ createdBy: 'id-Bo', role: 'coordinator' }), { ...byIda, actor: 'id-Bo' });
    await accounts.invite(invitation({ personId: 'id-Bo' }), byIda);
    await accounts.change('id-Bo', { disabled: true }, byIda);
    await accounts.startSession(session('id-Bo', 'late'), NOTHING_OLD);
    expect(await accounts.session('late')).toBeNull();
    expect(await accounts.invitations()).toEqual([]);
  });

  test('a session is seen forwards only, ends alone or with all of its person, and is forgotten when old', async () => {
    const accounts = await started();
    for (const token of ['a', 'b', 'c']) await accounts.startSession(session('id-Ida', token), NOTHING_OLD);
    await accounts.seen('a', later);
    await accounts.seen('a', at);
    expect((await accounts.session('a'))!.session.seenAt).toBe(later);
    await accounts.endSession('b');
    expect([await accounts.session('b'), (await accounts.session('c'))?.person.name]).toEqual([null, 'Ida']);
    await accounts.startSession({ ...session('id-Ida', 'd'), seenAt: later }, { startedBefore: '2000', seenBefore: later });
    expect(await accounts.session('c')).toBeNull();
    await accounts.endSessionsOf('id-Ida');
    expect([await accounts.session('a'), await accounts.session('d')]).toEqual([null, null]);
  });

  test('a password that somebody changes ends their other sessions, and no one else’s', async () => {
    const accounts = await started();
    await join(accounts, 'Bo');
    for (const token of ['here', 'there']) await accounts.startSession(session('id-Ida', token), NOTHING_OLD);
    await accounts.startSession(session('id-Bo', 'bo'), NOTHING_OLD);
    await accounts.seen('there', later);
    expect((await accounts.sessionsOf('id-Ida')).map(({ tokenHash }) => tokenHash)).toEqual(['there', 'here']);
    await accounts.changePassword('id-Ida', 'another hash', 'here', later);
    expect((await accounts.personNamed('ida'))!.passwordHash).toBe('another hash');
    expect((await accounts.sessionsOf('id-Ida')).map(({ tokenHash }) => tokenHash)).toEqual(['here']);
    expect(await accounts.sessionsOf('id-Bo')).toHaveLength(1);
    expect((await accounts.log(1))[0]).toMatchObject({ actor: 'id-Ida', action: 'password-changed' });
  });

  test('the log tells who changed whom to what, newest first', async () => {
    const accounts = await started();
    await join(accounts, 'Bo');
    await accounts.change('id-Bo', { role: 'scout', farms: [] }, { actor: 'id-Ida', at: later });
    await accounts.change('id-Bo', { role: 'scout' }, { actor: 'id-Ida', at: later });
    expect((await accounts.log(100)).map(({ actor, action, detail }) => [actor, action, detail])).toEqual([
      ['id-Ida', 'farms-changed', ''],
      ['id-Ida', 'role-changed', 'scout'],
      ['id-Bo', 'joined', 'grower'],
      ['id-Ida', 'invited', 'grower'],
      ['id-Ida', 'first-person', 'coordinator'],
    ]);
    expect(await accounts.log(1)).toHaveLength(1);
  });

  test('names that look like statements are names', async () => {
    const accounts = await started();
    const name = `'; drop table people; --`;
    await join(accounts, name);
    expect((await accounts.personNamed(name))?.person.name).toBe(name);
    expect(await accounts.personNamed(`' or '1'='1`)).toBeNull();
    expect(await accounts.people()).toHaveLength(2);
  });

  test('a pass-key is its owner’s alone, signs onwards only, and ends with a new password', async () => {
    const accounts = await started();
    await join(accounts, 'Bo');
    const key = (credentialId: string, personId = 'id-Ida', counter = 0): PassKey => ({
      credentialId,
      personId,
      publicKey: 'pQECAyYg',
      counter,
      transports: ['internal'],
      name: 'Phone',
      madeAt: at,
      usedAt: null,
    });
    expect([await accounts.addPassKey(key('a')), await accounts.addPassKey(key('b', 'id-Bo', 3))]).toEqual([true, true]);
    expect(await accounts.addPassKey(key('a', 'id-Bo'))).toBe(false);
    expect(await accounts.passKey('a')).toMatchObject({ key: key('a'), person: { name: 'Ida' } });
    expect(await accounts.passKey('never')).toBeNull();
    // One that does not count says 0 each time; of one that counts, a copy gives itself away.
    expect([await accounts.passKeyUsed('a', 0, later), await accounts.passKeyUsed('a', 0, later)]).toEqual([true, true]);
    expect([await accounts.passKeyUsed('b', 4, later), await accounts.passKeyUsed('b', 4, later)]).toEqual([true, false]);
    expect(await accounts.passKeyUsed('b', 0, later)).toBe(false);
    expect((await accounts.passKeysOf('id-Bo')).map(({ counter, usedAt }) => [counter, usedAt])).toEqual([[4, later]]);
    expect(await accounts.removePassKey('id-Ida', 'b', later)).toBe(false);
    expect([await accounts.removePassKey('id-Ida', 'a', later), await accounts.passKeysOf('id-Ida')]).toEqual([true, []]);
    await accounts.change('id-Bo', { disabled: true }, byIda);
    expect(await accounts.passKey('b')).toBeNull();
    await accounts.change('id-Bo', { disabled: false }, byIda);
    const again = invitation({ personId: 'id-Bo' });
    await accounts.invite(again, byIda);
    await accounts.accept(again.tokenHash, () => true, newPerson('Bo'), later);
    expect(await accounts.passKeysOf('id-Bo')).toEqual([]);
    const [last] = await accounts.log(100);
    expect(last!.action).toBe('new-password');
    expect((await accounts.log(100)).map(({ action, detail }) => `${action} ${detail}`)).toContain('pass-key-removed Phone');
  });

  test('a backup keeps people and invitations and no session', async () => {
    const url = await bench.harness.fresh();
    const accounts = await started(url);
    await accounts.startSession(session('id-Ida', 'a'), NOTHING_OLD);
    await accounts.invite(invitation(), byIda);
    const key = { credentialId: 'k', personId: 'id-Ida', publicKey: 'pQ', counter: 1, transports: [], name: 'Phone', madeAt: at };
    await accounts.addPassKey({ ...key, usedAt: null });
    const folder = mkdtempSync(joinPath(tmpdir(), 'duskwatch-backup-'));
    onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
    const file = joinPath(folder, 'copy.sqlite');
    await (await bench.store(url)).backup(file);
    const copy = (await bench.store(file)).accounts;
    expect(await copy.people()).toEqual(await accounts.people());
    expect(await copy.invitations()).toEqual(await accounts.invitations());
    expect(await copy.log(10)).toEqual(await accounts.log(10));
    expect(await copy.passKeysOf('id-Ida')).toEqual(await accounts.passKeysOf('id-Ida'));
    expect(await copy.session('a')).toBeNull();
  });
}
