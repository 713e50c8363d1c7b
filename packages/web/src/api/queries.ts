import type { Advice, FieldView, IsoDay, ProgramHead, WeekView } from '@duskwatch/core';
import { keepPreviousData, queryOptions } from '@tanstack/react-query';
import { dated, getJson } from './client.ts';

export const programQuery = queryOptions({
  queryKey: ['program'],
  queryFn: ({ signal }) => getJson<ProgramHead>('/api/program', signal),
});

export const weekQuery = (on: IsoDay | undefined) =>
  queryOptions({
    queryKey: ['week', on ?? null],
    queryFn: ({ signal }) => getJson<WeekView>(dated('/api/week', on), signal),
    placeholderData: keepPreviousData,
  });

/** Under the week's own key: what makes the week old makes its evidence old. */
export const adviceQuery = (fieldId: string, insect: string, on: IsoDay | undefined) =>
  queryOptions({
    queryKey: ['week', on ?? null, fieldId, insect],
    queryFn: ({ signal }) =>
      getJson<Advice>(dated(`/api/advice/${encodeURIComponent(fieldId)}/${encodeURIComponent(insect)}`, on), signal),
  });

/** No placeholder across fields: another field's season must never stand under this field's name. */
export const fieldQuery = (fieldId: string, on: IsoDay | undefined) =>
  queryOptions({
    queryKey: ['field', fieldId, on ?? null],
    queryFn: ({ signal }) => getJson<FieldView>(dated(`/api/fields/${encodeURIComponent(fieldId)}`, on), signal),
    placeholderData: (previous, query) => (query?.queryKey[1] === fieldId ? previous : undefined),
  });
