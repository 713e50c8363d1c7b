import type { Role } from '@duskwatch/core';
import { queryOptions } from '@tanstack/react-query';
import { getJson } from '../api/client.ts';

export interface InvitedTo {
  readonly program: string;
  readonly role: Role;
  readonly farms: readonly string[];
  readonly name: string | null;
  readonly expiresAt: string;
}

export const invitationQuery = (token: string) =>
  queryOptions({
    queryKey: ['invitation', token],
    queryFn: ({ signal }) => getJson<InvitedTo>(`/api/invitations/by-token/${encodeURIComponent(token)}`, signal),
    retry: false,
  });
