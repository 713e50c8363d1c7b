import { existsSync } from 'node:fs';
import { createServer } from 'node:net';
import type { Problem } from '@duskwatch/core';
import {
  type AccountsOptions,
  accountsOn,
  buildServer,
  drivingTimesAddress,
  isLoopback,
  mapOrigin,
  newFirstPersonCode,
  THIS_MACHINE,
  workHere,
  workInThreads,
} from '@duskwatch/server';
import type { Store } from '@duskwatch/store';
import { webRoot } from '../checkout.ts';
import { type DataOption, describeDatabase, openDatabase, photoFolder } from '../database.ts';
import { done, faulty, misused, type Outcome, optionProblem } from '../outcome.ts';
import { bold, note, print } from '../terminal.ts';

export interface ServeOptions extends DataOption {
  readonly port?: string;
  readonly host: string;
  readonly demo?: boolean;
  readonly accounts?: boolean;
  readonly origin?: string;
  readonly inviteCoordinator?: boolean;
  readonly mapOrigin?: readonly string[];
  readonly drivingTimes?: string;
}

const USUAL_PORT = 4180;
const PORTS_TRIED = 50;
const PATIENCE_MS = 5_000;

/** Serves until it is told to stop. */
export async function serve(options: ServeOptions): Promise<Outcome> {
  const port = options.port === undefined ? await freePort(options.host) : portOption(options.port);
  if (port === null)
    return misused(optionProblem('--port', options.port ?? '', 'a free port from 1 to 65535', 'Name one, as --port 8080.'));

  const problem = accessProblem(options);
  if (problem) return misused(problem);

  const store = await openDatabase(options);
  try {
    // What is not sound is not shown.
    await store.check();
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
  const accounts = options.accounts ? await accountsFor(store, options) : null;
  const records = { store, photoFolder: photoFolder(options) };
  const mapOrigins = (options.mapOrigin ?? []).flatMap((address) => mapOrigin(address) ?? []);
  const drivingTimes = options.drivingTimes === undefined ? undefined : (drivingTimesAddress(options.drivingTimes) ?? undefined);
  const app = buildServer({
    store,
    webRoot,
    records,
    mapOrigins,
    drivingTimes,
    work: work(),
    log: true,
    ...(accounts && { accounts }),
  });
  try {
    await app.listen({ port, host });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EADDRINUSE') throw error;
    return misused(
      optionProblem('--port', String(port), 'a port that is free', 'Stop what listens there, or name another port.'),
    );
  }
  const address = options.origin ?? `http://${host.includes(':') ? `[${host}]` : host}:${port}`;
  print(`Duskwatch is at ${address}/`);
  if (accounts) await tellOfAccounts(accounts, address, options);
  print(`Data: ${describeDatabase(options)}`);
  print('Ctrl-C stops it.');
  await untilToldToStop();
  // Who is in the middle of something is waited for, but not for ever.
  const patience = setTimeout(() => app.server.closeAllConnections(), PATIENCE_MS);
  await app.close();
  clearTimeout(patience);
  return done;
}

/** Stands beside the bundled command; run from its sources, the command has no such file. */
const WORKER = new URL('./worker.mjs', import.meta.url);
const work = () => (existsSync(WORKER) ? workInThreads(WORKER) : workHere);

/** What is wrong with who could reach the server, and with whom its pages could reach. */
function accessProblem({
  host,
  accounts,
  origin,
  inviteCoordinator,
  mapOrigin: maps = [],
  drivingTimes,
}: ServeOptions): Problem | null {
  const noMap = maps.find((address) => mapOrigin(address) === null);
  if (noMap !== undefined)
    return optionProblem('--map-origin', noMap, 'an address that begins with https://', 'Name it as https://tiles.example.');
  if (drivingTimes !== undefined && drivingTimesAddress(drivingTimes) === null)
    return optionProblem(
      '--driving-times',
      drivingTimes,
      'an address that begins with https:// or http://',
      'Name it as https://router.example.',
    );
  const withAccounts = (parameter: string, got: string, why: string) =>
    optionProblem(parameter, got, `--accounts, ${why}`, 'Add --accounts.');
  if (!accounts) {
    if (!isLoopback(host)) return withAccounts('--host', host, 'where others than this machine can connect');
    if (origin !== undefined) return withAccounts('--origin', origin, 'where others reach the server by a proxy');
    if (inviteCoordinator) return withAccounts('--invite-coordinator', '', 'to invite somebody');
  }
  if (origin !== undefined && !(/^https?:/.test(origin) && URL.canParse(origin) && new URL(origin).origin === origin))
    return optionProblem('--origin', origin, 'a scheme and a host and nothing after', 'Name it as https://moths.example.');
  return null;
}

/** Each start has a code of its own, until somebody used one. */
async function accountsFor(store: Store, { origin }: ServeOptions): Promise<AccountsOptions> {
  const empty = (await store.accounts.people()).length === 0;
  return { store: store.accounts, publicOrigin: origin, ...(empty && { firstPersonCode: newFirstPersonCode() }) };
}

async function tellOfAccounts(accounts: AccountsOptions, address: string, options: ServeOptions): Promise<void> {
  if (accounts.firstPersonCode !== undefined) {
    print(`Nobody has joined yet. The first coordinator opens ${address}/first and types this code:`);
    print(`  ${bold(accounts.firstPersonCode)}`);
  } else if (options.inviteCoordinator) {
    const { token } = await accountsOn(accounts).invite(THIS_MACHINE, { role: 'coordinator', farms: [], personId: null });
    print(`For one more coordinator, once, within 7 days: ${address}/join/${token}`);
  }
  if (address.startsWith('http:') && !isLoopback(options.host))
    note('Warning: passwords travel unencrypted. Put a proxy with https in front, and name it with --origin.');
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
