import type { IsoDay, OwnFieldsView } from '@duskwatch/core';
import { keepPreviousData, queryOptions } from '@tanstack/react-query';
import { dated, getJson } from '../../api/client.ts';

/** Under the week's own key: what makes the week old makes it old. */
export const ownFieldsQuery = (on: IsoDay | undefined) =>
  queryOptions({
    queryKey: ['week', on ?? null, 'own-fields'],
    queryFn: ({ signal }) => getJson<OwnFieldsView>(dated('/api/own-fields', on), signal),
    placeholderData: keepPreviousData,
  });
