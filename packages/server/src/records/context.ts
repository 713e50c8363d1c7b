/** What the routes that write need beyond reading. */
import { join } from 'node:path';
import type { Store } from '@duskwatch/store';
import type { App, RouteContext } from '../routes/route.ts';
import { type FetcherOptions, type WeatherFetcher, weatherFetcher } from '../weather/fetcher.ts';
import { oneAtATime } from './one-at-a-time.ts';
import { type PhotoStore, photosIn } from './photos.ts';

type RecordStore = Pick<
  Store,
  | 'epoch'
  | 'append'
  | 'revisions'
  | 'history'
  | 'restore'
  | 'conflicts'
  | 'changesSince'
  | 'counts'
  | 'current'
  | 'accounts'
  | 'calendars'
  | 'imports'
  | 'fetches'
  | 'importProgram'
  | 'verify'
  | 'backup'
>;

/** A data folder whose program can be put aside for another. */
export interface Restoring {
  readonly folder: string;
  /** Says where the program will be set aside, and how the one in a folder takes its place: the server ends and begins anew. */
  prepare(from: string): { readonly aside: string; readonly swap: () => Promise<void> };
}

export interface RecordsOptions {
  readonly store: RecordStore;
  /** Folder for photos, made when missing. */
  readonly photoFolder: string;
  /** Milliseconds since 1970. */
  readonly now?: () => number;
  /** Folder into which tables of weather are put to be read, made when missing. Default: beside the photos. */
  readonly weatherFolder?: string;
  /** How a backup takes the place of the program; left out: it cannot. */
  readonly restoring?: Restoring;
  /** How often it is looked whether days of weather are to be fetched, ms; left out: only when somebody asks. */
  readonly fetchEveryMs?: number;
  /** Other origins of weather services: for tests. */
  readonly weatherOrigins?: FetcherOptions['origins'];
}

export interface RecordsContext extends RouteContext {
  readonly store: RecordStore;
  readonly photos: PhotoStore;
  readonly photoFolder: string;
  readonly now: () => number;
  readonly restoring: Restoring | null;
  readonly fetcher: WeatherFetcher;
  /** Judging and keeping are one step: no other write of this server comes between. */
  readonly inTurn: <T>(work: () => Promise<T>) => Promise<T>;
}

export type RecordsRoute = (app: App, context: RecordsContext) => void;

export const recordsContext = (
  context: RouteContext,
  {
    store,
    photoFolder,
    now = Date.now,
    weatherFolder = join(photoFolder, '..', 'weather-in'),
    weatherOrigins,
    restoring,
  }: RecordsOptions,
): RecordsContext => {
  const inTurn = oneAtATime();
  const fetcher = weatherFetcher({
    store,
    reader: context.reader,
    now,
    inTurn,
    folder: weatherFolder,
    agent: `Duskwatch/0.1 (trap network; ${context.publicOrigin ?? 'on one machine'})`,
    mayAskOwnNetwork: context.accounts === null,
    ...(weatherOrigins && { origins: weatherOrigins }),
  });
  return { ...context, store, photos: photosIn(photoFolder), photoFolder, now, restoring: restoring ?? null, fetcher, inTurn };
};
