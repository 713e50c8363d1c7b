import type { FieldRecord, SheetProposal, SheetReading, TrapRecord } from '@duskwatch/core';
import { queryOptions } from '@tanstack/react-query';
import { getJson } from '../../api/client.ts';

export interface KeptImport {
  readonly importId: string;
  readonly file: string;
  readonly reading: SheetReading | null;
  readonly match: SheetProposal['match'];
  readonly authorName: string;
  readonly at: string;
  readonly added: number;
  readonly changed: number;
  readonly undone: { readonly authorName: string; readonly at: string } | null;
}

export const importsQuery = queryOptions({
  queryKey: ['imports'],
  queryFn: ({ signal }) => getJson<readonly KeptImport[]>('/api/imports', signal),
});

const valuesOf = async <T>(kind: string, signal: AbortSignal): Promise<T[]> =>
  (await getJson<readonly { readonly value: T | null; readonly standing: string }[]>(`/api/records/${kind}`, signal)).flatMap(
    ({ value, standing }) => (value === null || standing !== 'current' ? [] : [value]),
  );

/** What the program knows already: a trap by its name needs no more telling. */
export const heldQuery = queryOptions({
  queryKey: ['imports', 'held'],
  queryFn: async ({ signal }) => {
    const [fields, traps] = await Promise.all([valuesOf<FieldRecord>('fields', signal), valuesOf<TrapRecord>('traps', signal)]);
    return { fields, traps };
  },
  staleTime: 0,
});
