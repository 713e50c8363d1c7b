import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { afterAll, expect, test } from 'vitest';
import { openStore } from './open.ts';
import { openFile, pragma } from './sqlite-file.ts';
import { storeContract } from './testing/contract.ts';
import { accepted, check, first } from './testing/samples.ts';

const folder = mkdtempSync(join(tmpdir(), 'duskwatch-store-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
let files = 0;
const freshFile = (): string => join(folder, `${files++}.duskwatch`);

storeContract('SQLite', {
  fresh: async () => freshFile(),
  async makeNewer(file) {
    const database = new DatabaseSync(file);
    database.exec('pragma user_version = 999');
    database.close();
  },
  async execute(file, statement) {
    const database = new DatabaseSync(file);
    database.exec(statement);
    database.close();
  },
});

test('every commit reaches the disk before it is reported: write-ahead log, full synchronisation', () => {
  const database = openFile(freshFile());
  expect(pragma(database, 'journal_mode')).toBe('wal');
  expect(pragma(database, 'synchronous')).toBe(2); // sqlite.org/pragma.html#pragma_synchronous: FULL
  expect(pragma(database, 'foreign_keys')).toBe(1);
  database.close();
});

const garbage = {
  'a spreadsheet': 'trap_id,checked_on\nlow-meadow-1,2026-07-14\n',
  'a short text': 'x',
  'a long text': 'moth '.repeat(20_000),
};
for (const [what, contents] of Object.entries(garbage)) {
  test(`${what} given as a database is refused and left as it was`, async () => {
    const file = freshFile();
    writeFileSync(file, contents);
    await expect(openStore(file)).rejects.toMatchObject({ name: 'StoreError', code: 'not-a-database' });
    expect(readFileSync(file, 'utf8')).toBe(contents);
  });
}

test("another program's SQLite database is refused and left as it was", async () => {
  const file = freshFile();
  const other = new DatabaseSync(file);
  other.exec('create table moths (name text)');
  other.close();
  const before = readFileSync(file);
  await expect(openStore(file)).rejects.toMatchObject({ code: 'foreign-database' });
  expect(readFileSync(file).equals(before)).toBe(true);
});

test('a newer database is left as it was', async () => {
  const file = freshFile();
  await (await openStore(file)).close();
  const database = new DatabaseSync(file);
  database.exec('pragma user_version = 999');
  database.close();
  const before = readFileSync(file);
  await expect(openStore(file)).rejects.toMatchObject({ code: 'newer-schema' });
  expect(readFileSync(file).equals(before)).toBe(true);
});

test('a path in a folder that is not there and an unknown kind of database are refused by name', async () => {
  await expect(openStore(join(folder, 'no', 'such', 'file'))).rejects.toMatchObject({ code: 'cannot-open' });
  await expect(openStore('mysql://localhost/vale')).rejects.toMatchObject({ code: 'cannot-open', message: /mysql/ });
});

test('verify finds a value that no longer fits its schema, and a revision that went missing', async () => {
  const file = freshFile();
  const store = await openStore(file);
  const [one, two] = [first(check(4), 0), first(check(5, { visit: 2 }), 0)];
  await store.append([one, two]);
  expect((await store.verify()).problems).toEqual([]);
  const database = new DatabaseSync(file);
  database.prepare(`update revisions set value = json_set(value, '$.targetCount', -4) where sequence = 1`).run();
  expect((await store.verify()).problems).toMatchObject([
    { where: { file: `revision ${one.revisionId}`, column: 'targetCount' }, got: '-4' },
  ]);
  database.prepare('delete from revisions where sequence = 1').run();
  database.close();
  expect((await store.verify()).problems).toMatchObject([{ where: { file: 'revisions' }, got: '1 revisions' }]);
  await store.close();
});

test('verify finds a damaged page', async () => {
  const file = freshFile();
  const store = await openStore(file);
  accepted(await store.append(Array.from({ length: 200 }, (_, n) => first(check(n, { trapId: `t-${n}` }), 0))));
  await store.close();
  const bytes = readFileSync(file);
  const pageSize = bytes.readUInt16BE(16);
  const root = new DatabaseSync(file, { readOnly: true })
    .prepare(`select rootpage from sqlite_schema where name = 'revisions_record'`)
    .get() as { rootpage: number };
  // The cell count in the header of the index's root page (sqlite.org/fileformat2.html, 1.6).
  bytes.writeUInt16BE(0, (root.rootpage - 1) * pageSize + 3);
  writeFileSync(file, bytes);
  const damaged = await openStore(file);
  const { problems } = await damaged.verify();
  expect(problems.length).toBeGreaterThan(0);
  expect(problems[0]).toMatchObject({ where: { file: 'database' }, fix: expect.stringContaining('backup') });
  await damaged.close();
});
