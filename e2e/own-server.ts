/** A server of a test's own, with a fresh demo: for tests that write. */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { cpSync, existsSync, mkdtempSync, renameSync, rmSync } from 'node:fs';
import { request as ask, createServer } from 'node:http';
import { type AddressInfo, createServer as createProbe } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Readable } from 'node:stream';

export interface OwnServer {
  readonly url: string;
  stop(): Promise<void>;
}

/** With the demo. With accounts, `printed` ends with the code for the first person. */
export const startServer = (...options: readonly string[]) => startEmptyServer('--demo', ...options);

/** As the terminal shows it to the first person. */
export const FIRST_CODE = /\b[A-Z2-9]{4}(?:-[A-Z2-9]{4})+\b(?=\s)/;

export async function startEmptyServer(...options: readonly string[]): Promise<OwnServer & { printed(): string }> {
  const port = await freePort();
  const data = mkdtempSync(join(tmpdir(), 'duskwatch-e2e-own-'));
  if (options.includes('--demo')) cpSync(await keptDemo(), data, { recursive: true });
  const child = serve(port, data, options);
  const url = `http://127.0.0.1:${port}`;
  let printed = '';
  child.stdout.on('data', (part) => {
    printed += part;
  });
  await listening(child);
  // The code for the first person comes in a line of its own, which may be read later.
  while (options.includes('--accounts') && !FIRST_CODE.test(printed)) await once(child.stdout, 'data');
  return {
    url,
    printed: () => printed,
    async stop() {
      child.kill('SIGTERM');
      if (child.exitCode === null) await once(child, 'exit');
      rmSync(data, { recursive: true, force: true });
    },
  };
}

function serve(port: number, data: string, options: readonly string[]): ChildProcess & { readonly stdout: Readable } {
  const args = ['packages/cli/bin/duskwatch.mjs', 'serve', '--port', String(port), '--data', data, ...options];
  return spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'inherit'] });
}

let kept: Promise<string> | undefined;

/** The demo's data, loaded once for the servers that all workers start; two that need it at once may each load it. */
function keptDemo(): Promise<string> {
  kept ??= loadDemo();
  return kept;
}

async function loadDemo(): Promise<string> {
  const demo = `${process.env.DUSKWATCH_E2E_DATA}-demo`;
  if (existsSync(demo)) return demo;
  const data = mkdtempSync(join(tmpdir(), 'duskwatch-e2e-demo-'));
  const child = serve(await freePort(), data, ['--demo']);
  await listening(child);
  child.kill('SIGTERM');
  if (child.exitCode === null) await once(child, 'exit');
  try {
    renameSync(data, demo);
  } catch {
    // Another worker was quicker.
    rmSync(data, { recursive: true, force: true });
  }
  return demo;
}

/** Resolves when the server prints its address; it does so once it answers. */
function listening(child: ChildProcess): Promise<void> {
  return new Promise((resolve, reject) => {
    child.stdout!.on('data', (part) => String(part).includes('http://') && resolve());
    child.once('exit', (code) => reject(new Error(`the server ended with ${code}`)));
  });
}

/**
 * Passes all on to another server, and gives out the service worker of whichever version it is told. Files that begin
 * with one of the names given with a version are gone from then on, as those of an older build are.
 */
export async function startVersions(
  behind: string,
): Promise<OwnServer & { release(version: string, gone?: readonly string[]): void }> {
  let version = '1';
  let missing: readonly string[] = [];
  const { hostname, port } = new URL(behind);
  const server = createServer((request, response) => {
    const { method, url: path, headers } = request;
    if (missing.some((name) => path!.startsWith(`/assets/${name}`))) return void response.writeHead(404).end();
    // As a whole each time: what the browser has cached says nothing about the version given out.
    const { 'if-none-match': _tag, 'if-modified-since': _time, ...unconditional } = headers;
    const plain = { ...unconditional, 'accept-encoding': 'identity' };
    const onward = ask({ hostname, port, method, path, headers: plain }, (answer) => {
      const isWorker = path === '/service-worker.js';
      const { 'content-length': _, ...rest } = answer.headers;
      response.writeHead(answer.statusCode!, isWorker ? rest : answer.headers);
      answer.pipe(response, { end: !isWorker });
      if (isWorker) answer.on('end', () => response.end(`\n// ${version}\n`));
    });
    request.pipe(onward);
  });
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  return {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    release: (next, gone = []) => {
      version = next;
      missing = gone;
    },
    async stop() {
      server.closeAllConnections();
      server.close();
    },
  };
}

async function freePort(): Promise<number> {
  const probe = createProbe().listen(0, '127.0.0.1');
  await once(probe, 'listening');
  const { port } = probe.address() as AddressInfo;
  probe.close();
  await once(probe, 'close');
  return port;
}
