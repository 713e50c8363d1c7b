/** One program behind an address of its own, and the other one that this machine may open beside it. */
import { existsSync } from 'node:fs';
import { createServer } from 'node:net';
import {
  type AccountsOptions,
  buildServer,
  drivingTimesAddress,
  mapOrigin,
  type OtherProgram,
  workHere,
  workInThreads,
} from '@duskwatch/server';
import type { Store } from '@duskwatch/store';
import { webRoot } from './checkout.ts';
import { type DataOption, openDatabase, type ProgramKind, photoFolder } from './database.ts';
import { isEmpty, loadDemo } from './load-demo.ts';
import { note } from './terminal.ts';

export interface ServedOptions {
  readonly host: string;
  readonly mapOrigin?: readonly string[];
  readonly drivingTimes?: string;
}

export interface ServedProgram {
  readonly store: Store;
  readonly port: number;
  /** Waits for whoever is in the middle of something, but not for ever. */
  close(): Promise<void>;
}

export const USUAL_PORT = 4180;
const PORTS_TRIED = 50;
const PATIENCE_MS = 5_000;
const FETCH_EVERY_MS = 60_000;

/** Opens a program's database, the demo filled if it is empty; what is not sound is not shown. */
export async function openProgram(kind: ProgramKind, data: DataOption): Promise<Store> {
  const store = await openDatabase(data);
  try {
    await store.check();
    if (kind === 'demo' && (await isEmpty(store))) {
      const loaded = await loadDemo(store);
      if (!loaded.ok) throw new Error(`the demo cannot be loaded: ${JSON.stringify(loaded.problems)}`);
      note('Loaded the invented demo program.');
    }
    return store;
  } catch (error) {
    await store.close();
    throw error;
  }
}

/** Serves an opened program, which goes with it. */
export async function serveProgram(
  store: Store,
  data: DataOption,
  port: number,
  { host, mapOrigin: mapOrigins = [], drivingTimes }: ServedOptions,
  { accounts, other }: { readonly accounts?: AccountsOptions | null; readonly other?: OtherProgram | null },
): Promise<ServedProgram> {
  const app = buildServer({
    store,
    webRoot,
    records: { store, photoFolder: photoFolder(data), fetchEveryMs: FETCH_EVERY_MS },
    mapOrigins: mapOrigins.flatMap((address) => mapOrigin(address) ?? []),
    drivingTimes: drivingTimes === undefined ? undefined : (drivingTimesAddress(drivingTimes) ?? undefined),
    work: work(),
    log: true,
    ...(accounts && { accounts }),
    ...(other && { other }),
  });
  await app.listen({ port, host });
  return {
    store,
    port,
    async close() {
      const patience = setTimeout(() => app.server.closeAllConnections(), PATIENCE_MS);
      await app.close();
      clearTimeout(patience);
      await store.close();
    },
  };
}

/** Stands beside the bundled command; run from its sources, the command has no such file. */
const WORKER = new URL('./worker.mjs', import.meta.url);
const work = () => (existsSync(WORKER) ? workInThreads(WORKER) : workHere);

/**
 * The other program of this machine, opened when somebody asks for it: at an address of its own, so that a browser too
 * keeps what belongs to one apart from what belongs to the other.
 */
export function openedWhenAsked(
  kind: ProgramKind,
  data: DataOption,
  firstPort: number,
  options: ServedOptions,
  first: OtherProgram,
): OtherProgram & { close(): Promise<void> } {
  let opening: Promise<ServedProgram> | null = null;
  const open = async () => {
    const store = await openProgram(kind, data);
    try {
      const port = await freePort(options.host, firstPort + 1);
      if (port === null) throw new Error(`no port is free after ${firstPort}`);
      return await serveProgram(store, data, port, options, { other: first });
    } catch (error) {
      await store.close();
      throw error;
    }
  };
  return {
    kind,
    async open() {
      opening ??= open();
      opening.catch(() => {
        opening = null;
      });
      return (await opening).port;
    },
    close: async () => (await opening?.catch(() => null))?.close(),
  };
}

/** The first port from `start` on that nothing listens on. */
export async function freePort(host: string, start = USUAL_PORT): Promise<number | null> {
  for (let port = start; port < Math.min(start + PORTS_TRIED, 65_536); port++) if (await isFree(port, host)) return port;
  return null;
}

function isFree(port: number, host: string): Promise<boolean> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', (error: NodeJS.ErrnoException) => (error.code === 'EADDRINUSE' ? resolve(false) : reject(error)));
    probe.listen(port, host, () => probe.close(() => resolve(true)));
  });
}
