import type { IsoDay, ScoutingView } from '@duskwatch/core';
import { keepPreviousData, queryOptions } from '@tanstack/react-query';
import { dated, getJson } from '../../api/client.ts';

export const scoutingQuery = (on: IsoDay | undefined) =>
  queryOptions({
    // Under the name of the week's data, so that what is written makes it be read anew.
    queryKey: ['week', 'scouting', on ?? null],
    queryFn: ({ signal }) => getJson<ScoutingView>(dated('/api/scouting', on), signal),
    placeholderData: keepPreviousData,
  });
