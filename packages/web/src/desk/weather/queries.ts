import type { IsoDay, WeatherComparison, WeatherSourcesView } from '@duskwatch/core';
import { queryOptions } from '@tanstack/react-query';
import { dated, getJson } from '../../api/client.ts';
import type { WeatherWords } from '../../text/weather.en.ts';

export const sourcesQuery = (on: IsoDay | undefined) =>
  queryOptions({
    queryKey: ['weather-sources', on ?? null],
    queryFn: ({ signal }) => getJson<WeatherSourcesView>(dated('/api/weather-sources', on), signal),
  });

/** How fetching the days of a source has gone; instants are ISO 8601. */
export interface Fetched {
  readonly sourceId: string;
  readonly triedAt: string;
  readonly answeredAt: string | null;
  readonly nextAt: string;
  readonly failures: number;
  readonly trouble: { readonly kind: keyof WeatherWords['fetching']['troubles']; readonly detail: string } | null;
  readonly days: number;
}

export const fetchingQuery = queryOptions({
  queryKey: ['weather-fetching'],
  queryFn: ({ signal }) =>
    getJson<{ readonly folder: string; readonly states: readonly Fetched[] }>('/api/weather-fetching', signal),
});

export const comparisonQuery = (first: string, second: string, on: IsoDay | undefined) =>
  queryOptions({
    queryKey: ['weather-sources', on ?? null, first, second],
    queryFn: ({ signal }) => {
      const asked = new URLSearchParams({ first, second, ...(on && { on }) });
      return getJson<WeatherComparison>(`/api/weather-comparison?${asked}`, signal);
    },
  });
