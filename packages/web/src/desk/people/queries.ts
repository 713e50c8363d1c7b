/** People and invitations: the shapes of the server's answers. */
import type { Person, Role } from '@duskwatch/core';
import { queryOptions } from '@tanstack/react-query';
import { getJson } from '../../api/client.ts';

export interface Invitation {
  readonly id: string;
  readonly role: Role;
  readonly farms: readonly string[];
  /** Whose new password it is for; null: a newcomer. */
  readonly person: { readonly id: string; readonly name: string } | null;
  readonly createdBy: string;
  readonly createdAt: string;
  readonly expiresAt: string;
}

/** A link, told once. */
export interface MadeInvitation {
  readonly id: string;
  readonly path: string;
  readonly expiresAt: string;
}

export interface LogEntry {
  readonly at: string;
  readonly actor: string;
  readonly action: string;
  readonly subject: string | null;
  readonly detail: string;
}

export const peopleQuery = queryOptions({
  queryKey: ['people'],
  queryFn: ({ signal }) => getJson<readonly Person[]>('/api/people', signal),
});

export const logQuery = queryOptions({
  queryKey: ['people', 'log'],
  queryFn: ({ signal }) => getJson<readonly LogEntry[]>('/api/people/log', signal),
});

export const invitationsQuery = queryOptions({
  queryKey: ['invitations'],
  queryFn: ({ signal }) => getJson<readonly Invitation[]>('/api/invitations', signal),
});
