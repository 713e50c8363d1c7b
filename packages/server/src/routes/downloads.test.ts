import { createHash } from 'node:crypto';
import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { readProgramFolder } from '@duskwatch/exchange';
import { strFromU8, unzipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Browser, served } from '../people/served.testing.ts';
import { OTHER, OWN, SECRETS, twoFarms } from '../people/two-farms.testing.ts';

let server: Awaited<ReturnType<typeof served>>;
let coordinator: Browser;
let folder: string;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'duskwatch-downloads-'));
  server = await served(twoFarms);
  coordinator = await server.ida();
});
afterAll(async () => {
  await server.stop();
  rmSync(folder, { recursive: true, force: true });
});

const unpacked = (bytes: Uint8Array, into: string) => {
  for (const [name, content] of Object.entries(unzipSync(bytes))) {
    mkdirSync(dirname(join(into, name)), { recursive: true });
    writeFileSync(join(into, name), content);
  }
  return into;
};

describe('the program as files', () => {
  it('is a zipped folder that gives back every record', async () => {
    const answer = await coordinator.get('/api/program.zip');
    expect(answer.headers).toMatchObject({
      'content-type': 'application/zip',
      'content-disposition': 'attachment; filename="duskwatch-vale-2026-07-15.zip"',
    });
    const read = await readProgramFolder(unpacked(answer.rawPayload, join(folder, 'all')));
    const whole = await server.store.loadProgram();
    expect(read).toMatchObject({ ok: true, value: { fields: whole.fields, checks: whole.checks, treatments: whole.treatments } });
  });

  it('is a workbook with a sheet for each table and one that describes them', async () => {
    const answer = await coordinator.get('/api/program.xlsx');
    const names = [...strFromU8(unzipSync(answer.rawPayload)['xl/workbook.xml']!).matchAll(/<sheet name="(\w+)"/g)].map(
      ([, name]) => name,
    );
    expect(names).toEqual(expect.arrayContaining(['columns', 'fields', 'traps', 'checks']));
  });

  it('holds for a grower what the grower may read, and nothing of another farm', async () => {
    const { browser: own } = await server.join(coordinator, 'Al Alder', 'grower', OWN);
    for (const url of ['/api/program.zip', '/api/program.xlsx']) {
      const answer = await own.get(url);
      expect(answer.statusCode).toBe(200);
      const text = Object.values(unzipSync(answer.rawPayload))
        .map((file) => strFromU8(file))
        .join('\n');
      expect(text).toContain(OWN);
      expect(text).not.toContain(OTHER);
      expect(text).not.toMatch(SECRETS);
    }
    expect((await own.get('/api/backup.zip')).statusCode).toBe(403);
  });
});

describe('a backup from the app', () => {
  it('is what the list of sums says, with the whole history, and leaves nothing behind', async () => {
    const before = readdirSync(tmpdir()).filter((name) => name.startsWith('duskwatch-backup-'));
    const answer = await coordinator.get('/api/backup.zip');
    expect(answer.headers['content-disposition']).toContain('duskwatch-backup-vale-2026-07-15.zip');
    const files = unzipSync(answer.rawPayload);
    const sums = strFromU8(files.SHA256SUMS!).trim().split('\n');
    expect(sums.length).toBe(Object.keys(files).length - 1);
    for (const line of sums) {
      const [sum, name] = line.split('  ') as [string, string];
      expect(createHash('sha256').update(files[name]!).digest('hex'), name).toBe(sum);
    }
    const at = unpacked(answer.rawPayload, join(folder, 'backup'));
    const database = new DatabaseSync(join(at, 'duskwatch.sqlite'), { readOnly: true });
    const { n } = database.prepare('select count(*) as n from revisions').get() as { n: number };
    database.close();
    expect(n).toBe((await server.store.counts()).revisions);
    await expect.poll(() => readdirSync(tmpdir()).filter((name) => name.startsWith('duskwatch-backup-'))).toEqual(before);
  });
});
