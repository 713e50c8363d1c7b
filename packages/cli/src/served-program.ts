/** One program behind an address of its own, and the other one that this machine may open beside it. */
import { existsSync } from 'node:fs';
import { createServer } from 'node:net';
import {
  type AccountsOptions,
  buildServer,
  drivingTimesAddress,
  mapOrigin,
  type OtherProgram,
  type Restoring,
  workHere,
  workInThreads,
} from '@duskwatch/server';
import type { Store } from '@duskwatch/store';
import { webRoot } from './checkout.ts';
import { type DataOption, dataFolder, isElsewhere, openDatabase, type ProgramKind, photoFolder } from './database.ts';
import { isEmpty, loadDemo } from './load-demo.ts';
import { EXIT } from './outcome.ts';
import { asideFolder, beginRestoring } from './restoring.ts';
import { note } from './terminal.ts';

export interface ServedOptions {
  readonly host: string;
  readonly mapOrigin?: readonly string[];
  readonly drivingTimes?: string;
}

export interface ServedProgram {
  readonly port: number;
  /** Waits for whoever is in the middle of something, but not for ever. */
  close(): Promise<void>;
}

const USUAL_PORT = 4180;
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

export interface ServedWith {
  /** Of whichever store the program is in: a restored one has people of its own. */
  readonly accountsOn?: ((store: Store) => Promise<AccountsOptions>) | null;
  readonly other?: OtherProgram | null;
  /** Told each time it answers: at the start, and after a backup was brought back. */
  readonly began?: (accounts: AccountsOptions | null) => Promise<void>;
}

/** Serves an opened program, which goes with it; a backup that is brought back takes its place. */
export async function serveProgram(
  kind: ProgramKind,
  opened: Store,
  data: DataOption,
  port: number,
  options: ServedOptions,
  { accountsOn = null, other = null, began }: ServedWith,
): Promise<ServedProgram> {
  async function begin(store: Store): Promise<{ end(): Promise<void> }> {
    const { host, mapOrigin: mapOrigins = [], drivingTimes } = options;
    const accounts = accountsOn === null ? null : await accountsOn(store);
    const app = buildServer({
      store,
      webRoot,
      records: {
        store,
        photoFolder: photoFolder(data),
        fetchEveryMs: FETCH_EVERY_MS,
        ...(!isElsewhere(data) && { restoring }),
      },
      mapOrigins: mapOrigins.flatMap((address) => mapOrigin(address) ?? []),
      drivingTimes: drivingTimes === undefined ? undefined : (drivingTimesAddress(drivingTimes) ?? undefined),
      work: work(),
      log: true,
      ...(accounts && { accounts }),
      ...(other && { other }),
    });
    await app.listen({ port, host });
    await began?.(accounts);
    return {
      async end() {
        const patience = setTimeout(() => app.server.closeAllConnections(), PATIENCE_MS);
        await app.close();
        clearTimeout(patience);
        await store.close();
      },
    };
  }

  const folder = dataFolder(data);
  const restoring: Restoring = {
    folder,
    prepare(from) {
      const aside = asideFolder(folder, new Date());
      return {
        aside,
        async swap() {
          try {
            await running.end();
            beginRestoring(folder, from, aside);
            // Opening it moves what was written down.
            running = await begin(await openProgram(kind, data));
            note(`A backup was brought back. The program before it is in ${aside}`);
          } catch (error) {
            // Nobody is left to answer; the next start goes on where this one stopped.
            note(`A backup could not be brought back: ${(error as Error).message}`);
            process.exit(EXIT.internal);
          }
        },
      };
    },
  };

  let running = await begin(opened);
  return { port, close: () => running.end() };
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
      return await serveProgram(kind, store, data, port, options, { other: first });
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
