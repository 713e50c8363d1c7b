/** All that writes records, and what hangs on their revisions. */
import type { RecordsRoute } from '../records/context.ts';
import { calendarRoute } from './calendar.ts';
import { conflictsRoute } from './conflicts.ts';
import { downloadsRoute } from './downloads.ts';
import { importsRoute } from './imports.ts';
import { photosRoute } from './photos.ts';
import { questionsRoute } from './questions.ts';
import { recordsRoute } from './records.ts';
import { renamingRoute } from './renaming.ts';
import { restoringRoute } from './restoring.ts';
import { revisionsRoute } from './revisions.ts';
import { weatherFetchingRoute } from './weather-fetching.ts';

export const recordsRoutes: readonly RecordsRoute[] = [
  revisionsRoute,
  recordsRoute,
  conflictsRoute,
  photosRoute,
  calendarRoute,
  questionsRoute,
  importsRoute,
  downloadsRoute,
  weatherFetchingRoute,
  renamingRoute,
  restoringRoute,
];
