import { createServer } from 'node:net';
import { buildServer, isLoopback } from '@duskwatch/server';
import type { Store } from '@duskwatch/store';
import { webRoot } from '../checkout.ts';
import { type DataOption, describeDatabase, openDatabase } from '../database.ts';
import { done, faulty, misused, type Outcome, optionProblem } from '../outcome.ts';
import { note, print } from '../terminal.ts';

export interface ServeOptions extends DataOption {
  readonly port?: string;
  readonly host: string;
  readonly demo?: boolean;
}

const USUAL_PORT = 4180;
const PORTS_TRIED = 50;

/** Serves until it is told to stop. */
export async function serve(options: ServeOptions): Promise<Outcome> {
  const port = options.port === undefined ? await freePort(options.host) : portOption(options.port);
  if (port === null)
    return misused(optionProblem('--port', options.port ?? '', 'a free port from 1 to 65535', 'Name one, as --port 8080.'));

  const store = await openDatabase(options);
  try {
    if (options.demo) {
      const { isEmpty, loadDemo } = await import('../load-demo.ts');
      if (await isEmpty(store)) {
        const loaded = await loadDemo(store);
        if (!loaded.ok) return faulty(...loaded.problems);
        note('Loaded the invented demo program.');
      }
    }
    return await listen(store, port, options);
  } finally {
    await store.close();
  }
}

async function listen(store: Store, port: number, options: ServeOptions): Promise<Outcome> {
  const { host } = options;
  const app = buildServer({ store, webRoot, thisMachineOnly: isLoopback(host), log: true });
  try {
    await app.listen({ port, host });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EADDRINUSE') throw error;
    return misused(
      optionProblem('--port', String(port), 'a port that is free', 'Stop what listens there, or name another port.'),
    );
  }
  if (!isLoopback(host))
    note(`Warning: there are no accounts yet. Everybody who reaches ${host}:${port} can read the whole program.`);
  print(`Duskwatch is at http://${host.includes(':') ? `[${host}]` : host}:${port}/`);
  print(`Data: ${describeDatabase(options)}`);
  print('Ctrl-C stops it.');
  await untilToldToStop();
  await app.close();
  return done;
}

function portOption(text: string): number | null {
  const port = Number(text);
  return Number.isInteger(port) && port >= 1 && port <= 65_535 ? port : null;
}

/** The usual port, or the next one that nothing listens on. */
async function freePort(host: string): Promise<number | null> {
  for (let port = USUAL_PORT; port < USUAL_PORT + PORTS_TRIED; port++) if (await isFree(port, host)) return port;
  return null;
}

function isFree(port: number, host: string): Promise<boolean> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', (error: NodeJS.ErrnoException) => (error.code === 'EADDRINUSE' ? resolve(false) : reject(error)));
    probe.listen(port, host, () => probe.close(() => resolve(true)));
  });
}

function untilToldToStop(): Promise<void> {
  return new Promise((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => resolve());
  });
}
