import type { SourceRecord, WeatherService } from '@duskwatch/core';
import type { Ask } from './asking.ts';
import { askNoaaDaily } from './noaa-daily.ts';
import { askNorwayForecast } from './norway-forecast.ts';
import { askOpenMeteo } from './open-meteo.ts';
import { askUsForecast } from './us-forecast.ts';

export { addressFor, readOwnTable } from './own-table.ts';

/** The services of others that are asked for days. */
export type OpenService = Exclude<WeatherService, 'address' | 'folder'>;

export const isOpenService = (service: NonNullable<SourceRecord['service']>): service is OpenService =>
  service !== 'address' && service !== 'folder';

export const askService: { readonly [S in OpenService]: Ask } = {
  'noaa-daily': askNoaaDaily,
  'us-forecast': askUsForecast,
  'norway-forecast': askNorwayForecast,
  'open-meteo': askOpenMeteo,
};
