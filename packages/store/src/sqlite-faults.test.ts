/** What goes wrong with a file and its disk is told by name, and loses nothing that was kept. */
import { mkdtempSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { expect, onTestFinished, test } from 'vitest';
import { openStore } from './open.ts';
import { asStoreError } from './sqlite-file.ts';
import { accepted, check, first } from './testing/samples.ts';

const many = Array.from({ length: 400 }, (_, n) => first(check(n, { trapId: `t-${n}`, note: 'a windy night' }), 0));

async function fullFile(): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'duskwatch-faults-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const file = join(folder, 'data.sqlite');
  const store = await openStore(file);
  accepted(await store.append(many));
  await store.close();
  return file;
}

/** Opened and checked as a server does before it serves. */
async function opened(file: string): Promise<void> {
  const store = await openStore(file);
  onTestFinished(() => store.close());
  await store.check();
  await store.loadProgram();
}

test('a sound file passes the check', async () => {
  await expect(opened(await fullFile())).resolves.toBeUndefined();
});

test('garbage in any page but the first is found before anything is shown', async () => {
  const file = await fullFile();
  const sound = readFileSync(file);
  const size = sound.readUInt16BE(16);
  const pages = sound.length / size;
  for (let page = 1; page < pages; page += Math.max(1, Math.floor(pages / 12))) {
    const spoilt = Buffer.from(sound).fill(0xa5, page * size, (page + 1) * size);
    writeFileSync(file, spoilt);
    await expect(opened(file), `page ${page + 1} of ${pages}`).rejects.toMatchObject({ name: 'StoreError', code: 'damaged' });
  }
});

test.each([0.25, 0.5, 0.9])('a file cut off after %s of it is damaged', async (part) => {
  const file = await fullFile();
  truncateSync(file, Math.floor(readFileSync(file).length * part));
  await expect(opened(file)).rejects.toMatchObject({ name: 'StoreError', code: 'damaged' });
});

test('a file whose first bytes are gone is refused, and left as it was', async () => {
  const file = await fullFile();
  const spoilt = readFileSync(file).fill(0, 0, 100);
  writeFileSync(file, spoilt);
  await expect(opened(file)).rejects.toMatchObject({ code: 'not-a-database', message: expect.stringContaining('backup') });
  expect(readFileSync(file)).toEqual(spoilt);
});

test('a record that is no longer JSON is damage, not a fault of the program', async () => {
  const file = await fullFile();
  const database = new DatabaseSync(file);
  database.exec('update revisions set value = substr(value, 2) where sequence = 7');
  database.close();
  await expect(opened(file)).rejects.toMatchObject({ name: 'StoreError', code: 'damaged' });
});

/** SQLite's own refusal, made by SQLite. */
function refusalBy(file: string, how: string, readOnly = false): unknown {
  const database = new DatabaseSync(file, { readOnly });
  try {
    database.exec(how);
  } catch (error) {
    return asStoreError(error, file);
  } finally {
    database.close();
  }
  return null;
}

test('a full disk and a file that cannot be written have names of their own', async () => {
  const file = await fullFile();
  // A limit on pages stands for the end of a disk: SQLite answers both with SQLITE_FULL (sqlite.org/rescode.html#full).
  const grow = 'pragma max_page_count = 1; create table more (x); insert into more values (zeroblob(1000000))';
  expect(refusalBy(file, grow)).toMatchObject({ code: 'disk-full', message: expect.stringContaining('Make room') });
  expect(refusalBy(file, 'delete from revisions', true)).toMatchObject({ code: 'read-only' });
  await expect(opened(file)).resolves.toBeUndefined();
});

test('a folder in place of the file cannot be opened', async () => {
  await expect(openStore(tmpdir())).rejects.toMatchObject({ name: 'StoreError', code: 'cannot-open' });
});
