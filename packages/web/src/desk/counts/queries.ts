import type { IsoDay, RoundView } from '@duskwatch/core';
import { keepPreviousData, queryOptions } from '@tanstack/react-query';
import { dated, getJson } from '../../api/client.ts';

/** The traps that hang on a day, in the order of the drive, with what the visits before it found. */
export const countsQuery = (on: IsoDay | undefined) =>
  queryOptions({
    queryKey: ['counts', on ?? null],
    queryFn: ({ signal }) => getJson<RoundView>(dated('/api/round', on), signal),
    placeholderData: keepPreviousData,
  });
