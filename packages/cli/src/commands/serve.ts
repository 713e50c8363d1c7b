import type { Problem } from '@duskwatch/core';
import {
  type AccountsOptions,
  accountsOn,
  drivingTimesAddress,
  isLoopback,
  mapOrigin,
  newFirstPersonCode,
  type OtherProgram,
  THIS_MACHINE,
} from '@duskwatch/server';
import type { Store } from '@duskwatch/store';
import { besideIn, type DataOption, describeDatabase, openDatabase, type ProgramKind } from '../database.ts';
import { isEmpty, isInvented } from '../load-demo.ts';
import { done, misused, type Outcome, optionProblem } from '../outcome.ts';
import {
  freePort,
  openedWhenAsked,
  openProgram,
  type ServedOptions,
  type ServedProgram,
  serveProgram,
} from '../served-program.ts';
import { bold, note, print } from '../terminal.ts';

export interface ServeOptions extends DataOption, ServedOptions {
  readonly port?: string;
  readonly demo?: boolean;
  readonly accounts?: boolean;
  readonly origin?: string;
  readonly inviteCoordinator?: boolean;
}

/** Serves until it is told to stop. */
export async function serve(options: ServeOptions): Promise<Outcome> {
  const port = options.port === undefined ? await freePort(options.host) : portOption(options.port);
  if (port === null)
    return misused(optionProblem('--port', options.port ?? '', 'a free port from 1 to 65535', 'Name one, as --port 8080.'));

  const problem = accessProblem(options);
  if (problem) return misused(problem);

  const { kind, data, otherData } = await programsOf(options);
  const store = await openProgram(kind, data);
  let served: ServedProgram | null = null;
  const first: OtherProgram = { kind, open: async () => port };
  // People who sign in share one program; the other is for whoever sits at this machine.
  const other =
    options.accounts || !isLoopback(options.host)
      ? null
      : openedWhenAsked(kind === 'own' ? 'demo' : 'own', otherData, port, options, first);
  try {
    const accountsOn = options.accounts ? (of: Store) => accountsFor(of, options) : null;
    const began = (accounts: AccountsOptions | null) => tell(kind, data, port, options, accounts);
    served = await serveProgram(kind, store, data, port, options, { accountsOn, other, began });
    await untilToldToStop();
    return done;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EADDRINUSE') throw error;
    return misused(
      optionProblem('--port', String(port), 'a port that is free', 'Stop what listens there, or name another port.'),
    );
  } finally {
    await Promise.all([served === null ? store.close() : served.close(), other?.close()]);
  }
}

/** Which program stands first, and where each of the two lies. */
async function programsOf(options: ServeOptions) {
  const main = await openDatabase(options);
  try {
    // The demo stays where it was loaded.
    if (await isInvented(main)) return { kind: 'demo', data: options, otherData: besideIn(options, 'own') } as const;
    const demo = besideIn(options, 'demo');
    if (options.demo && (await isEmpty(main))) return { kind: 'demo', data: demo, otherData: options } as const;
    return { kind: 'own', data: options, otherData: demo } as const;
  } finally {
    await main.close();
  }
}

async function tell(
  kind: ProgramKind,
  data: DataOption,
  port: number,
  options: ServeOptions,
  accounts: AccountsOptions | null,
): Promise<void> {
  const { host } = options;
  const address = options.origin ?? `http://${host.includes(':') ? `[${host}]` : host}:${port}`;
  print(`Duskwatch is at ${address}/`);
  if (accounts) await tellOfAccounts(accounts, address, options);
  print(`Data: ${describeDatabase(data)}`);
  if (kind === 'demo' && !accounts)
    print('This is the invented demo. Your own program begins with a click there, in a database of its own.');
  print('Ctrl-C stops it.');
}

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

function untilToldToStop(): Promise<void> {
  return new Promise((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => resolve());
  });
}
