import type { IsoDay, QuestionsView } from '@duskwatch/core';
import { queryOptions } from '@tanstack/react-query';
import { dated, getJson } from '../../api/client.ts';

export const questionsQuery = (on: IsoDay | undefined) =>
  queryOptions({
    queryKey: ['questions', 'all', on ?? null],
    queryFn: ({ signal }) => getJson<QuestionsView>(dated('/api/questions', on), signal),
  });

const FIVE_MINUTES = 300_000;

/** For every page: a whole season is held against itself for it, so it is not asked often. */
export const openQuestionsQuery = queryOptions({
  queryKey: ['questions', 'open'],
  queryFn: ({ signal }) => getJson<{ readonly open: number }>('/api/questions/open', signal),
  staleTime: FIVE_MINUTES,
});
