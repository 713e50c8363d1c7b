/** What the round asks the server, when there is one. */
import type { IsoDay, Role, RoundView, ScoutingView } from '@duskwatch/core';
import { ApiError, getJson } from '../../api/client.ts';
import { type Clock, measured } from './clock.ts';

/** A phone with one bar of signal must not wait longer than a scout does. */
const PATIENCE_MS = 20_000;

export type Session = { readonly kind: 'person'; readonly id: string; readonly role: Role } | { readonly kind: 'signed-out' };

interface SessionAnswer {
  readonly person: { readonly id: string; readonly role: Role } | null;
}

export async function askSession(): Promise<Session> {
  const { person } = await ask<SessionAnswer>('/api/session');
  return person ? { kind: 'person', id: person.id, role: person.role } : { kind: 'signed-out' };
}

export interface PhoneAnswers {
  readonly pinnedOn: IsoDay | null;
  readonly round: PromiseSettledResult<RoundView> | null;
  readonly scouting: PromiseSettledResult<ScoutingView>;
  /** As measured by what the server answered just now; null when nothing told. */
  readonly clock: Clock | null;
}

/** The round, where it is wanted, and what may be sampled: one of them may be answered without the other. */
export async function askForFields(withRound: boolean): Promise<PhoneAnswers> {
  const askedMs = Date.now();
  let clock: Clock | null = null;
  const heard = (answer: Response) => {
    clock = measured(answer.headers.get('date'), askedMs, Date.now());
  };
  const [program, scouting, round] = await Promise.all([
    ask<{ readonly pinnedOn: IsoDay | null }>('/api/program'),
    settled(ask<ScoutingView>('/api/scouting', heard)),
    withRound ? settled(ask<RoundView>('/api/round')) : null,
  ]);
  return { pinnedOn: program.pinnedOn, round, scouting, clock };
}

const settled = async <T>(answer: Promise<T>): Promise<PromiseSettledResult<T>> => (await Promise.allSettled([answer]))[0];

const ask = <T>(path: string, heard?: (answer: Response) => void) =>
  getJson<T>(path, AbortSignal.timeout(PATIENCE_MS), heard).catch(asUnreachable);

/** An answer that came too late is no answer. */
function asUnreachable(error: unknown): never {
  throw error instanceof ApiError ? error : new ApiError('unreachable', String(error));
}
