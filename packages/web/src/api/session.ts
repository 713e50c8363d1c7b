import type { Person } from '@duskwatch/core';
import { queryOptions } from '@tanstack/react-query';
import { ApiError, getJson } from './client.ts';

export interface Session {
  /** `single-user`: whoever sits at this machine is the coordinator. */
  readonly mode: 'single-user' | 'accounts';
  readonly person: Person | null;
  readonly needsFirstPerson: boolean;
  /** There was no answer: as it was last answered on this device. */
  readonly kept?: true;
}

export const sessionQuery = queryOptions({
  queryKey: ['session'],
  queryFn: ({ signal }) => askSession(signal),
  // Who is known only from before is asked for again as soon as there is signal.
  staleTime: ({ state }) => (state.data?.kept ? 0 : 60_000),
});

const KEY = 'duskwatch.session';

/** Who is signed in. Without signal it is whoever was last: what they may reach is drawn, and what they write is kept. */
async function askSession(signal: AbortSignal): Promise<Session> {
  try {
    const session = await getJson<Session>('/api/session', signal);
    keepSession(session);
    return session;
  } catch (error) {
    const kept = error instanceof ApiError && error.kind === 'unreachable' ? keptSession() : null;
    if (kept) return kept;
    throw error;
  }
}

/** As last answered on this device, for the first picture and for where there is no signal; null: nobody is known. */
export function keptSession(): Session | null {
  try {
    const kept = JSON.parse(localStorage.getItem(KEY) ?? 'null') as Session | null;
    return kept?.person ? { ...kept, kept: true } : null;
  } catch {
    return null;
  }
}

function keepSession(session: Session): void {
  try {
    if (session.person) localStorage.setItem(KEY, JSON.stringify(session));
    else localStorage.removeItem(KEY);
  } catch {}
}

/** Nobody is known here any more: they signed out. */
export const forgetSession = (): void => keepSession({ mode: 'accounts', person: null, needsFirstPerson: false });
