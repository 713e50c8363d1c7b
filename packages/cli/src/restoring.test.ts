/** A backup brought back through the app: into the place of the program, which is set aside. */
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { strToU8, zipSync } from 'fflate';
import { afterEach, describe, expect, it } from 'vitest';
import { asideFolder, beginRestoring, finishRestoring } from './restoring.ts';
import { commandUnderTest } from './testing/command.ts';
import { freePort } from './testing/free-port.ts';
import { smallFolder } from './testing/small-folder.ts';

const duskwatch = commandUnderTest();

async function served(data: string) {
  const port = await freePort();
  const child = duskwatch.start('serve', '--port', String(port), '--data', data);
  let said = '';
  for (const stream of [child.stdout!, child.stderr!]) stream.on('data', (part) => (said += part));
  const until = async (text: string) => {
    while (!said.includes(text)) {
      if (child.exitCode !== null) throw new Error(`ended with ${child.exitCode}: ${said}`);
      await wait(20);
    }
  };
  await until('http://');
  const address = `http://127.0.0.1:${port}`;
  const ask = async (path: string) => (await fetch(`${address}${path}`)).json() as Promise<Record<string, never>>;
  const send = (path: string, body?: Uint8Array | object) => {
    const zip = body instanceof Uint8Array;
    return fetch(`${address}${path}`, {
      method: 'POST',
      headers: { 'content-type': zip ? 'application/zip' : 'application/json' },
      body: zip ? new Uint8Array(body) : JSON.stringify(body ?? {}),
    });
  };
  const stop = () => new Promise((resolve) => child.once('close', resolve).kill('SIGTERM'));
  return { address, ask, send, stop, until };
}

describe('a backup brought back in the app', () => {
  it('is looked at, takes the place of the program when confirmed, and leaves that aside', async () => {
    const data = duskwatch.path('data');
    const imported = await duskwatch.run('import', duskwatch.folder('program', smallFolder), '--data', data);
    expect(imported.exit).toBe(0);
    const { ask, send, stop, address, until } = await served(data);
    const backup = new Uint8Array(await (await fetch(`${address}/api/backup.zip`)).arrayBuffer());
    // Something is written after it.
    await send('/api/renaming', { kind: 'fields', from: 'north', to: 'after-the-backup' });
    expect(await ask('/api/records/fields')).toMatchObject([{ value: { fieldId: 'after-the-backup' } }]);

    const looked = (await (await send('/api/restoring', backup)).json()) as { restoreId: string };
    expect(looked).toMatchObject({ name: 'program', revisions: 7, people: 0, photos: 0, missing: 0 });
    // Looking changes nothing.
    expect(await ask('/api/records/fields')).toMatchObject([{ value: { fieldId: 'after-the-backup' } }]);
    expect((await send('/api/restoring/another', {})).status).toBe(409);

    const confirmed = await send(`/api/restoring/${looked.restoreId}`, {});
    expect(confirmed.status).toBe(202);
    const { aside } = (await confirmed.json()) as { aside: string };
    await until('A backup was brought back');
    expect(await ask('/api/records/fields')).toMatchObject([{ value: { fieldId: 'north' } }]);
    // It can be written to, and confirmed no second time.
    expect((await send('/api/renaming', { kind: 'fields', from: 'north', to: 'again' })).status).toBe(200);
    expect((await send(`/api/restoring/${looked.restoreId}`, {})).status).toBe(409);
    await stop();
    expect(readdirSync(data).filter((name) => name.startsWith('restore-') || name.startsWith('restoring'))).toEqual([]);

    const before = await served(aside);
    expect(await before.ask('/api/records/fields')).toMatchObject([{ value: { fieldId: 'after-the-backup' } }]);
    await before.stop();
    // The command takes the same file.
    writeFileSync(duskwatch.path('backup.zip'), backup);
    expect(await duskwatch.run('restore', duskwatch.path('backup.zip'), '--data', duskwatch.path('by-command'))).toMatchObject({
      exit: 0,
    });
  });

  it('refuses whatever is no whole backup, says what is wrong, and keeps nothing of it', async () => {
    const data = duskwatch.path('spoiled');
    await duskwatch.run('import', duskwatch.folder('other', smallFolder), '--data', data);
    const { ask, send, stop, address } = await served(data);
    const backup = new Uint8Array(await (await fetch(`${address}/api/backup.zip`)).arrayBuffer());
    const spoiled = backup.slice();
    spoiled[Math.floor(backup.length / 2)]! ^= 0xff;
    const sums = { SHA256SUMS: strToU8(`${'0'.repeat(64)}  duskwatch.sqlite\n`) };
    for (const [what, bytes, said] of [
      ['half of one', backup.slice(0, backup.length / 2), ''],
      ['one with a byte altered', spoiled, ''],
      ['no zip', strToU8('moths'), 'no duskwatch.sqlite'],
      ['nothing', new Uint8Array(), 'no duskwatch.sqlite'],
      ['a program folder', zipSync({ 'fields.csv': strToU8(smallFolder['fields.csv']) }), 'fields.csv'],
      ['a way out of the folder', zipSync({ '../../evil': strToU8('x'), ...sums }), '../../evil'],
      ['other bytes than its sums say', zipSync({ 'duskwatch.sqlite': strToU8('no database'), ...sums }), 'other bytes'],
      ['a bomb', zipSync({ 'duskwatch.sqlite': new Uint8Array(200e6), ...sums }, { level: 9 }), 'more than a file of this size'],
    ] as const) {
      const refused = await send('/api/restoring', bytes);
      expect(refused.status, what).toBe(409);
      const { problems } = (await refused.json()) as { problems: { got: string }[] };
      expect(problems[0]!.got, what).toContain(said);
    }
    expect(await ask('/api/records/fields')).toHaveLength(1);
    expect(readdirSync(data).filter((name) => name.startsWith('restore-'))).toEqual([]);
    await stop();
  });
});

describe('moving a restored program into its place', () => {
  const folders: string[] = [];
  afterEach(() => {
    for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
  });

  const NAMES = ['duskwatch.sqlite', 'duskwatch.sqlite-wal', 'photos'];

  /** Stops after so many of the moves, as a machine does. */
  function stoppedAfter(moves: number): string {
    const folder = mkdtempSync(join(tmpdir(), 'duskwatch-moving-'));
    folders.push(folder);
    const from = join(folder, 'restore-x', 'data');
    mkdirSync(from, { recursive: true });
    const aside = asideFolder(folder, new Date('2026-07-15T06:00:00Z'));
    for (const name of NAMES) writeFileSync(join(folder, name), 'old');
    for (const name of ['duskwatch.sqlite', 'photos']) writeFileSync(join(from, name), 'new');
    beginRestoring(folder, from, aside);
    const steps = [
      ...['duskwatch.sqlite-wal', 'duskwatch.sqlite', 'photos'].map((name) => [join(folder, name), join(aside, name)] as const),
      ...['duskwatch.sqlite', 'photos'].map((name) => [join(from, name), join(folder, name)] as const),
    ];
    for (const [here, there] of steps.slice(0, moves)) {
      writeFileSync(there, readFileSync(here));
      rmSync(here);
    }
    finishRestoring(folder);
    return folder;
  }

  it.each([0, 1, 2, 3, 4, 5])('ends the same when the machine stopped after %i of its steps', (moves) => {
    const folder = stoppedAfter(moves);
    const aside = asideFolder(folder, new Date('2026-07-15T06:00:00Z'));
    const said = (of: string) => readdirSync(of).map((name) => [name, readFileSync(join(of, name), 'utf8')]);
    expect(said(aside)).toEqual(NAMES.map((name) => [name, 'old']));
    expect(readdirSync(folder).sort()).toEqual(['before-restore-2026-07-15T060000', 'duskwatch.sqlite', 'photos']);
    expect(readFileSync(join(folder, 'duskwatch.sqlite'), 'utf8')).toBe('new');
    // Nothing is moved twice.
    finishRestoring(folder);
    expect(existsSync(join(folder, 'duskwatch.sqlite'))).toBe(true);
  });
});
