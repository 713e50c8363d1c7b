import type { FieldFlightsView, FlightRows, IsoDay } from '@duskwatch/core';
import { infiniteQueryOptions, queryOptions } from '@tanstack/react-query';
import { getJson } from '../../api/client.ts';

/** Fitting takes longer than reading a season, so it comes after it. */
export const fieldFlightsQuery = (fieldId: string, on: IsoDay | undefined) =>
  queryOptions({
    queryKey: ['field-flights', fieldId, on ?? null],
    queryFn: ({ signal }) =>
      getJson<FieldFlightsView>(`/api/fields/${encodeURIComponent(fieldId)}/flights${on ? `?on=${on}` : ''}`, signal),
    placeholderData: (previous, query) => (query?.queryKey[1] === fieldId ? previous : undefined),
  });

/** The server answers with the rows it had time to fit, and from where to go on. */
export const flightsQuery = (on: IsoDay | undefined) =>
  infiniteQueryOptions({
    queryKey: ['flights', on ?? null],
    queryFn: ({ pageParam, signal }) => getJson<FlightRows>(`/api/flights?from=${pageParam}${on ? `&on=${on}` : ''}`, signal),
    initialPageParam: 0,
    getNextPageParam: ({ next }) => next,
  });
