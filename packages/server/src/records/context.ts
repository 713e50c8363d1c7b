/** What the routes that write need beyond reading. */
import type { Store } from '@duskwatch/store';
import type { App, RouteContext } from '../routes/route.ts';
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
  | 'importProgram'
  | 'verify'
  | 'backup'
>;

export interface RecordsOptions {
  readonly store: RecordStore;
  /** Folder for photos, made when missing. */
  readonly photoFolder: string;
  /** Milliseconds since 1970. */
  readonly now?: () => number;
}

export interface RecordsContext extends RouteContext {
  readonly store: RecordStore;
  readonly photos: PhotoStore;
  readonly photoFolder: string;
  readonly now: () => number;
  /** Judging and keeping are one step: no other write of this server comes between. */
  readonly inTurn: <T>(work: () => Promise<T>) => Promise<T>;
}

export type RecordsRoute = (app: App, context: RecordsContext) => void;

export const recordsContext = (
  context: RouteContext,
  { store, photoFolder, now = Date.now }: RecordsOptions,
): RecordsContext => ({
  ...context,
  store,
  photos: photosIn(photoFolder),
  photoFolder,
  now,
  inTurn: oneAtATime(),
});
