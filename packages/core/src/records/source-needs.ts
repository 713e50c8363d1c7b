/** What a weather source must hold before its days can be fetched. */
import type { SourceRecord, WeatherService } from './schema.ts';

/** Services of others, whose terms a coordinator confirms before anything is asked of them. */
export const isOutside = (service: WeatherService): boolean => service !== 'folder';

/** The first column that is missing; null: all is there. */
export function lackingToFetch(source: SourceRecord): string | null {
  const { service, stationId, address, latitude, longitude, timeZone, termsSeenOn } = source;
  if (service === null) return 'service';
  if (isOutside(service) && termsSeenOn === null) return 'terms_seen_on';
  switch (service) {
    case 'noaa-daily':
      return stationId === null ? 'station_id' : null;
    case 'address':
    case 'folder':
      return address === null || address.trim() === '' ? 'address' : null;
    case 'us-forecast':
    case 'norway-forecast':
    case 'open-meteo':
      if (latitude === null) return 'latitude';
      if (longitude === null) return 'longitude';
      return timeZone === null ? 'time_zone' : null;
  }
}
