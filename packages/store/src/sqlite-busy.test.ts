import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { openStore } from './open.ts';
import { openSqlite } from './sqlite.ts';
import { storeOn } from './store.ts';
import { check, first } from './testing/samples.ts';

/** A process of its own that has begun to write to the file, until it is told to end. */
async function writerElsewhere(file: string) {
  const script = `
    const { DatabaseSync } = require('node:sqlite');
    const database = new DatabaseSync(process.argv[1]);
    database.exec('begin immediate');
    process.stdout.write('writing');
    process.stdin.once('data', () => { database.exec('commit'); process.exit(); });`;
  const child = spawn(process.execPath, ['-e', script, file], { stdio: ['pipe', 'pipe', 'inherit'] });
  onTestFinished(() => void child.kill());
  await once(child.stdout, 'data');
  return async () => {
    child.stdin.write('end');
    await once(child, 'exit');
  };
}

function emptyFile() {
  const folder = mkdtempSync(join(tmpdir(), 'duskwatch-busy-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return join(folder, 'data.sqlite');
}

test('while another process writes, reads are answered, other work goes on, and a write is kept when it is its turn', async () => {
  const file = emptyFile();
  const store = await openStore(file);
  const end = await writerElsewhere(file);
  let kept = false;
  const writing = store.append([first(check(1), 1)]).then((appended) => {
    kept = true;
    return appended;
  });
  for (let look = 0; look < 20; look++) {
    expect(await store.counts()).toMatchObject({ revisions: 0 });
    await new Promise((resolve) => setTimeout(resolve, 10));
  }
  expect(kept).toBe(false);
  await end();
  expect(await writing).toMatchObject({ ok: true });
  expect(await store.counts()).toMatchObject({ revisions: 1 });
  await store.close();
});

test('a write that waited in vain says that another process is writing, and nothing of it is kept', async () => {
  const file = emptyFile();
  await (await openStore(file)).close();
  const driver = openSqlite(file, 'main', 60);
  const store = storeOn(driver, 'main');
  const end = await writerElsewhere(file);
  await expect(store.append([first(check(1), 1)])).rejects.toMatchObject({ name: 'StoreError', code: 'busy' });
  await end();
  expect(await store.counts()).toMatchObject({ revisions: 0 });
  await store.close();
});
