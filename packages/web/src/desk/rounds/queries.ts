import type { IsoDay, RoundsView } from '@duskwatch/core';
import { keepPreviousData, queryOptions } from '@tanstack/react-query';
import { getJson } from '../../api/client.ts';

export interface RoundsAnswer extends RoundsView {
  readonly drivingTimesFrom: string | null;
}

export const roundsQuery = (until: IsoDay | undefined) =>
  queryOptions({
    queryKey: ['rounds', until ?? null],
    queryFn: ({ signal }) => getJson<RoundsAnswer>(until ? `/api/rounds?until=${until}` : '/api/rounds', signal),
    placeholderData: keepPreviousData,
  });
