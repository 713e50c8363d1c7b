/** What the round asks the server, when there is one. */
import type { IsoDay, RoundView } from '@duskwatch/core';
import { ApiError, getJson } from '../api/client.ts';

/** A phone with one bar of signal must not wait longer than a scout does. */
const PATIENCE_MS = 20_000;

export type Session = { readonly kind: 'person'; readonly id: string } | { readonly kind: 'signed-out' };

interface SessionAnswer {
  readonly person: { readonly id: string } | null;
}

export async function askSession(): Promise<Session> {
  const { person } = await ask<SessionAnswer>('/api/session');
  return person ? { kind: 'person', id: person.id } : { kind: 'signed-out' };
}

export async function askRound(): Promise<{ readonly view: RoundView; readonly pinnedOn: IsoDay | null }> {
  const [view, program] = await Promise.all([
    ask<RoundView>('/api/round'),
    ask<{ readonly pinnedOn: IsoDay | null }>('/api/program'),
  ]);
  return { view, pinnedOn: program.pinnedOn };
}

const ask = <T>(path: string) => getJson<T>(path, AbortSignal.timeout(PATIENCE_MS)).catch(asUnreachable);

/** An answer that came too late is no answer. */
function asUnreachable(error: unknown): never {
  throw error instanceof ApiError ? error : new ApiError('unreachable', String(error));
}
