import type { Person } from '@duskwatch/core';
import { queryOptions } from '@tanstack/react-query';
import { getJson } from './client.ts';

export interface Session {
  /** `single-user`: whoever sits at this machine is the coordinator. */
  readonly mode: 'single-user' | 'accounts';
  readonly person: Person | null;
  readonly needsFirstPerson: boolean;
}

export const sessionQuery = queryOptions({
  queryKey: ['session'],
  queryFn: ({ signal }) => getJson<Session>('/api/session', signal),
});
