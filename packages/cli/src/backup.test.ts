import { createHash } from 'node:crypto';
import { appendFileSync, chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { photoPath, photosIn } from '@duskwatch/server/photos';
import { openStore } from '@duskwatch/store';
import { beforeAll, describe, expect, it } from 'vitest';
import { commandUnderTest } from './testing/command.ts';
import { smallFolder } from './testing/small-folder.ts';

const duskwatch = commandUnderTest();
const { path, run } = duskwatch;
const sha256 = (bytes: Buffer) => createHash('sha256').update(bytes).digest('hex');
const photo = (n: number) => Buffer.from([0xff, 0xd8, 0xff, n & 0xff, n >> 8]);
const PHOTO = sha256(photo(1));

/** The small program with a photo at its last check, in a data folder of this name. */
async function program(data: string): Promise<void> {
  const checks = smallFolder['checks.csv'].trimEnd().split('\n');
  const withPhoto = checks.map((line, row) => `${line},${['photo', '', PHOTO][row]}`);
  const folder = duskwatch.folder(`${data}-folder`, { ...smallFolder, 'checks.csv': `${withPhoto.join('\n')}\n` });
  expect((await run('import', folder, '--data', path(data))).exit).toBe(0);
  await photosIn(path(data, 'photos')).put(photo(1));
}
const backup = (data: string, to: string) => run('backup', path(to), '--data', path(data));
const restore = (from: string, data: string) => run('restore', path(from), '--data', path(data));
/** Everything of a backup by this name, finished or not. */
const leftOf = (name: string) => readdirSync(path()).filter((file) => file.startsWith(name));
const fileOf = (data: string) => path(data, 'photos', photoPath(PHOTO));

/** Empties an index behind SQLite's back: the cell count of its root page (sqlite.org/fileformat2.html, 1.6). */
function damage(file: string): void {
  const database = new DatabaseSync(file);
  database.exec('pragma wal_checkpoint(truncate)');
  const root = database.prepare(`select rootpage from sqlite_schema where name = 'revisions_record'`).get() as {
    rootpage: number;
  };
  database.close();
  const bytes = readFileSync(file);
  bytes.writeUInt16BE(0, (root.rootpage - 1) * bytes.readUInt16BE(16) + 3);
  writeFileSync(file, bytes);
}

/** Changes one bit of a note: the database stays sound, and says something else. */
function flipOneBit(file: string): void {
  const bytes = readFileSync(file);
  const place = bytes.indexOf('a windy night');
  expect(place).toBeGreaterThan(0);
  bytes.writeUInt8(bytes.readUInt8(place) ^ 1, place);
  writeFileSync(file, bytes);
}

describe('duskwatch backup', () => {
  beforeAll(() => program('kept'));

  it('holds records and photos, which come back where they are restored', async () => {
    const made = await backup('kept', 'whole');
    expect(made).toMatchObject({ exit: 0, err: expect.stringContaining('1 photos') });
    expect(readdirSync(path('whole')).sort()).toEqual(['SHA256SUMS', 'duskwatch.sqlite', 'photos']);
    expect(await restore('whole', 'back')).toMatchObject({ exit: 0 });
    const advice = await run('advise', '--on', '2026-07-15', '--data', path('back'), '--json');
    expect(JSON.parse(advice.out)).toHaveLength(1);
    expect(readFileSync(fileOf('back'))).toEqual(photo(1));
  });

  it('lists the SHA-256 of each of its files, as sha256sum does', async () => {
    expect((await backup('kept', 'listed')).exit).toBe(0);
    const lines = readFileSync(path('listed', 'SHA256SUMS'), 'utf8').trimEnd().split('\n');
    expect(lines).toHaveLength(2);
    for (const line of lines) {
      const [sum, name] = line.split('  ');
      expect(sha256(readFileSync(path('listed', name!)))).toBe(sum);
    }
  });

  it('replaces nothing, and a restore replaces no database', async () => {
    expect((await backup('kept', 'once')).exit).toBe(0);
    expect(await backup('kept', 'once')).toMatchObject({ exit: 1, err: expect.stringContaining('exists already') });
    const before = readFileSync(path('kept', 'duskwatch.sqlite'));
    expect(await restore('once', 'kept')).toMatchObject({ exit: 1, err: expect.stringContaining('exists already') });
    expect(readFileSync(path('kept', 'duskwatch.sqlite'))).toEqual(before);
  });

  it('is not made of a damaged database', async () => {
    await program('damaged');
    damage(path('damaged', 'duskwatch.sqlite'));
    const { exit, err } = await backup('damaged', 'of-damaged');
    expect(exit).toBe(1);
    expect(err).toContain('backup');
    expect(err).not.toContain('    at ');
    expect(leftOf('of-damaged')).toEqual([]);
  });

  it('is not made with a photo that is not the one its name says', async () => {
    await program('altered');
    appendFileSync(fileOf('altered'), 'x');
    const { exit, err } = await backup('altered', 'of-altered');
    expect(exit).toBe(1);
    expect(err).toContain(fileOf('altered'));
    expect(leftOf('of-altered')).toEqual([]);
  });

  it('says which photos that checks name are not here; they may come later', async () => {
    await program('awaiting');
    rmSync(fileOf('awaiting'));
    expect(await backup('awaiting', 'without')).toMatchObject({ exit: 0, err: expect.stringContaining(PHOTO) });
  });

  it('says where it cannot be written, and leaves nothing', async () => {
    writeFileSync(path('a-file'), '');
    const { exit, err } = await backup('kept', 'a-file/backup');
    expect(exit).toBe(1);
    expect(err).toContain(path('a-file'));
    expect(err).not.toContain('    at ');
  });

  // Who is root may write anywhere.
  it.skipIf(process.getuid?.() === 0)('says that a folder is read-only', async () => {
    mkdirSync(path('locked'), { mode: 0o555 });
    expect((await backup('kept', 'locked/backup')).exit).toBe(1);
    expect(readdirSync(path('locked'))).toEqual([]);
    chmodSync(path('locked'), 0o755);
  });

  it('killed half way leaves nothing under its name, and the next one clears up', async () => {
    await program('killed');
    for (let n = 2; n < 600; n++) {
      const file = path('killed', 'photos', photoPath(sha256(photo(n))));
      mkdirSync(dirname(file), { recursive: true });
      writeFileSync(file, photo(n));
    }
    const child = duskwatch.start('backup', path('cut'), '--data', path('killed'));
    const ended = new Promise((resolve) => child.on('close', (_, signal) => resolve(signal)));
    while (!existsSync(path('cut.part', 'photos'))) await new Promise((resolve) => setTimeout(resolve, 2));
    child.kill('SIGKILL');
    expect(await ended).toBe('SIGKILL');
    expect(leftOf('cut')).toEqual(['cut.part']);
    expect(await backup('killed', 'cut')).toMatchObject({ exit: 0, err: expect.stringContaining('599 photos') });
    expect(leftOf('cut')).toEqual(['cut']);
  });
});

describe('duskwatch restore', () => {
  beforeAll(() => program('origin'));

  it('takes a backup of one SQLite file, as they once were', async () => {
    const store = await openStore(path('origin', 'duskwatch.sqlite'));
    await store.backup(path('old.sqlite'));
    await store.close();
    expect(await restore('old.sqlite', 'from-old')).toMatchObject({ exit: 0, err: expect.stringContaining(PHOTO) });
    expect((await run('advise', '--on', '2026-07-15', '--data', path('from-old'))).exit).toBe(0);
  });

  it.each([
    ['one bit of its database is another', (folder: string) => flipOneBit(path(folder, 'duskwatch.sqlite')), 'other bytes'],
    ['a photo was altered', (folder: string) => appendFileSync(fileOf(folder), 'x'), 'other bytes'],
    ['a photo is missing', (folder: string) => rmSync(fileOf(folder)), 'no such file'],
    ['its database is cut short', (folder: string) => cutShort(path(folder, 'duskwatch.sqlite')), 'other bytes'],
  ])('brings back nothing of a backup when %s', async (what, spoil, found) => {
    const name = `spoilt ${what}`;
    expect((await backup('origin', name)).exit).toBe(0);
    spoil(name);
    const { exit, err } = await restore(name, `${name}-data`);
    expect(exit).toBe(1);
    expect(err).toContain(found);
    expect(existsSync(path(`${name}-data`))).toBe(false);
  });

  it.each([
    ['damaged', damage],
    ['cut short', cutShort],
  ])('refuses a single file that is %s', async (what, spoil) => {
    const file = `single ${what}`;
    const store = await openStore(path('origin', 'duskwatch.sqlite'));
    await store.backup(path(file));
    await store.close();
    spoil(path(file));
    const before = readFileSync(path(file));
    const { exit, err } = await restore(file, `of ${what}`);
    expect(exit).toBe(1);
    expect(err).toContain('damaged');
    expect(readdirSync(path(`of ${what}`))).toEqual([]);
    expect(readFileSync(path(file))).toEqual(before);
  });

  it('says that a backup is not there', async () => {
    const { exit, err } = await restore('nowhere', 'of-nowhere');
    expect(exit).toBe(1);
    expect(err).toContain(path('nowhere'));
  });
});

/** A copy that was cut off on its way: the second half is missing. */
function cutShort(file: string): void {
  const bytes = readFileSync(file);
  writeFileSync(file, bytes.subarray(0, bytes.length / 2));
}

describe('duskwatch verify', () => {
  it('says that a sound backup can be restored, and of an altered one what is wrong, and leaves nothing behind', async () => {
    await program('to-verify');
    expect((await backup('to-verify', 'verified')).exit).toBe(0);
    expect(await run('verify', path('verified'))).toMatchObject({ exit: 0, err: expect.stringContaining('can be restored') });
    flipOneBit(path('verified', 'duskwatch.sqlite'));
    const altered = await run('verify', path('verified'));
    expect(altered).toMatchObject({ exit: 1, err: expect.stringContaining('other bytes') });
    expect(readdirSync(path('verified')).sort()).toEqual(['SHA256SUMS', 'duskwatch.sqlite', 'photos']);
  });
});

describe('duskwatch doctor', () => {
  const doctor = (data: string) => run('doctor', '--data', path(data));

  it('finds nothing to mend where there is nothing, and says what it read', async () => {
    await program('well');
    const { exit, err } = await doctor('well');
    expect(exit).toBe(0);
    expect(err).toMatch(/\d+ revisions read[\s\S]*1 photos\.[\s\S]*Nothing to mend/);
  });

  it('names a photo that is not the one its name says, and counts those that are not here', async () => {
    await program('ill');
    appendFileSync(fileOf('ill'), 'x');
    expect(await doctor('ill')).toMatchObject({ exit: 1, err: expect.stringContaining(fileOf('ill')) });
    rmSync(fileOf('ill'));
    expect(await doctor('ill')).toMatchObject({
      exit: 0,
      err: expect.stringContaining('1 photos that checks name are not here'),
    });
  });

  it('tells of a damaged database what to do, and of a record from the future whose clock to look at', async () => {
    await program('broken');
    damage(path('broken', 'duskwatch.sqlite'));
    const broken = await doctor('broken');
    expect(broken.exit).toBe(1);
    expect(broken.err).toContain('backup');
    expect(broken.err).not.toContain('    at ');

    await program('ahead');
    const store = await openStore(path('ahead', 'duskwatch.sqlite'));
    const at = new Date(Date.now() + 30 * 86_400_000).toISOString();
    await store.importProgram(
      { lures: [{ trapId: 'T1', placedOn: '2026-07-10', lifeDays: 28 }] },
      { author: 'a phone a month ahead', at },
    );
    await store.close();
    expect(await doctor('ahead')).toMatchObject({
      exit: 1,
      err: expect.stringMatching(/a phone a month ahead[\s\S]*Set the clock/),
    });
  });
});
