import { execFileSync, spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll } from 'vitest';
import { checkoutRoot } from '../checkout.ts';

interface Ran {
  readonly exit: number | null;
  readonly out: string;
  readonly err: string;
}

/** What a test needs to use the command as a person does: the real bundle, run as a process, in a folder of its own. */
export interface CommandUnderTest {
  /** Runs `duskwatch` with these arguments; its data lies in the test's own folder. */
  run(...args: readonly string[]): Promise<Ran>;
  /** Starts it and leaves it running. */
  start(...args: readonly string[]): ReturnType<typeof spawn>;
  path(...parts: readonly string[]): string;
  /** Writes files into a folder and returns its path. */
  folder(name: string, files: Readonly<Record<string, string>>): string;
}

/** Bundled once for the tests that run in one process, in the checkout, so that what the bundle leaves outside is found. */
let bundled: string | undefined;
function bundle(): string {
  if (bundled !== undefined) return bundled;
  const cache = join(checkoutRoot, 'node_modules', '.cache');
  mkdirSync(cache, { recursive: true });
  const folder = mkdtempSync(join(cache, 'duskwatch-cli-'));
  process.once('exit', () => rmSync(folder, { recursive: true, force: true }));
  execFileSync(process.execPath, [join(checkoutRoot, 'scripts', 'build-cli.mjs'), folder]);
  const runtime = pathToFileURL(join(checkoutRoot, 'runtime', 'node.mjs'));
  // As bin/duskwatch.mjs does it, with the bundle of this folder.
  const script = `import { handOver } from '${runtime}';
if (!(await handOver())) await (await import('./duskwatch.mjs')).main(process.argv.slice(2));
`;
  writeFileSync(join(folder, 'run.mjs'), script);
  bundled = join(folder, 'run.mjs');
  return bundled;
}

/**
 * The command, with a folder of its own for the tests of one file, which is cleared up after them.
 * @param inOwnFolder true: run there, so that paths may be written as people write them
 */
export function commandUnderTest({ inOwnFolder = false } = {}): CommandUnderTest {
  let folder: string;
  const path = (...parts: readonly string[]) => join(folder, ...parts);

  beforeAll(() => {
    bundle();
    folder = mkdtempSync(join(tmpdir(), 'duskwatch-cli-'));
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  const start = (...args: readonly string[]) => {
    const { DATABASE_URL: _, ...env } = process.env;
    return spawn(process.execPath, [bundle(), ...args], {
      env: { ...env, DUSKWATCH_DATA: path('data') },
      ...(inOwnFolder && { cwd: folder }),
    });
  };

  return {
    start,
    path,
    run: (...args) =>
      new Promise((resolve, reject) => {
        const child = start(...args);
        let out = '';
        let err = '';
        child.stdout.on('data', (part) => (out += part));
        child.stderr.on('data', (part) => (err += part));
        child.on('error', reject);
        child.on('close', (exit) => resolve({ exit, out, err }));
      }),
    folder(name, files) {
      mkdirSync(path(name), { recursive: true });
      for (const [file, text] of Object.entries(files)) writeFileSync(path(name, file), text);
      return path(name);
    },
  };
}
