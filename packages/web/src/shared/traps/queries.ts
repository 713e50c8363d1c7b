import type { IsoDay, TrapsView, TrapView } from '@duskwatch/core';
import { keepPreviousData, queryOptions } from '@tanstack/react-query';
import { dated, getJson } from '../../api/client.ts';

export const stationsQuery = (on: IsoDay | undefined) =>
  queryOptions({
    queryKey: ['traps', on ?? null],
    queryFn: ({ signal }) => getJson<TrapsView>(dated('/api/traps', on), signal),
    placeholderData: keepPreviousData,
  });

/** No placeholder across traps: another trap's history must never stand under this trap's name. */
export const trapQuery = (trapId: string, on: IsoDay | undefined) =>
  queryOptions({
    queryKey: ['trap', trapId, on ?? null],
    queryFn: ({ signal }) => getJson<TrapView>(dated(`/api/traps/${encodeURIComponent(trapId)}`, on), signal),
    placeholderData: (previous, query) => (query?.queryKey[1] === trapId ? previous : undefined),
  });
