import type { IsoDay, SeasonTruthView, SeasonView } from '@duskwatch/core';
import { queryOptions } from '@tanstack/react-query';
import { getJson } from '../../api/client.ts';

const address = (path: string, year: number | undefined, on: IsoDay | undefined): string => {
  const asked = new URLSearchParams();
  if (year !== undefined) asked.set('year', String(year));
  if (on !== undefined) asked.set('on', on);
  return asked.size > 0 ? `${path}?${asked}` : path;
};

/** While a change is worked out the season stays as it was; another season never stands under this one's name. */
export const seasonQuery = (year: number | undefined, on: IsoDay | undefined) =>
  queryOptions({
    queryKey: ['season', year ?? null, on ?? null],
    queryFn: ({ signal }) => getJson<SeasonView>(address('/api/season', year, on), signal),
  });

export const seasonTruthQuery = (year: number, on: IsoDay | undefined) =>
  queryOptions({
    queryKey: ['season-truth', year, on ?? null],
    queryFn: ({ signal }) => getJson<SeasonTruthView>(address('/api/season/truth', year, on), signal),
  });
