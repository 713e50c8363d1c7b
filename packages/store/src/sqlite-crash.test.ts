import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openStore } from './open.ts';

const folder = mkdtempSync(join(tmpdir(), 'duskwatch-crash-'));
const child = join(folder, 'import-child.cjs');
const COUNT = 20_000;

beforeAll(() =>
  build({
    entryPoints: [fileURLToPath(new URL('./testing/import-child.ts', import.meta.url))],
    outfile: child,
    bundle: true,
    platform: 'node',
    format: 'cjs',
    external: ['pg', 'pg-native'],
  }),
);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Import in a child process and kill it, with no chance to tidy up, once it has said `word`. */
function killAfter(word: string, file: string, haltAt: number): Promise<void> {
  return new Promise((resolve, reject) => {
    const importer = spawn(process.execPath, [child, file, String(COUNT), String(haltAt)], {
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let said = '';
    let errors = '';
    importer.stderr.on('data', (text) => {
      errors += text;
    });
    importer.stdout.on('data', (text) => {
      said += text;
      if (said.split('\n').includes(word)) importer.kill('SIGKILL');
    });
    importer.once('exit', (_, signal) =>
      signal === 'SIGKILL' ? resolve() : reject(new Error(`ended by itself: ${said}${errors}`)),
    );
  });
}

test('an import killed half way leaves nothing, an intact database, and the import can be made again', async () => {
  const file = join(folder, 'half.duskwatch');
  await killAfter('10000', file, 10_000);
  const store = await openStore(file);
  expect(await store.counts()).toMatchObject({ revisions: 0, lastSequence: 0 });
  expect(await store.verify()).toEqual({ checked: 0, problems: [] });
  await store.close();

  await killAfter('committed', file, COUNT + 1);
  const whole = await openStore(file);
  expect(await whole.counts()).toMatchObject({ revisions: COUNT, records: { checks: COUNT } });
  expect(await whole.verify()).toEqual({ checked: COUNT, problems: [] });
  await whole.close();
}, 120_000);
