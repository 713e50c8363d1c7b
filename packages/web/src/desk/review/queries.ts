import type { IsoDay, LessonsView, ReviewView, YearsView } from '@duskwatch/core';
import { keepPreviousData, queryOptions } from '@tanstack/react-query';
import { getJson } from '../../api/client.ts';

function path(name: string, parameters: Readonly<Record<string, string | undefined>>): string {
  const said = Object.entries(parameters).filter((each): each is [string, string] => each[1] !== undefined);
  const query = new URLSearchParams(said).toString();
  return query ? `/api/review${name}?${query}` : `/api/review${name}`;
}

export const lessonsQuery = (on: IsoDay | undefined) =>
  queryOptions({
    queryKey: ['review', 'lessons', on ?? null],
    queryFn: ({ signal }) => getJson<LessonsView>(path('/lessons', { on }), signal),
  });

export const reviewQuery = (on: IsoDay | undefined) =>
  queryOptions({
    queryKey: ['review', 'season', on ?? null],
    queryFn: ({ signal }) => getJson<ReviewView>(path('', { on }), signal),
  });

export const yearsQuery = (on: IsoDay | undefined, insect: string, farm: string | undefined) =>
  queryOptions({
    queryKey: ['review', 'years', on ?? null, insect, farm ?? null],
    queryFn: ({ signal }) => getJson<YearsView>(path('/years', { on, insect, farm }), signal),
    placeholderData: keepPreviousData,
  });
