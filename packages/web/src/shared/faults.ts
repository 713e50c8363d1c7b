/** What was wrong, in the words of the page. */
import { guessedParts, nameFault, PASSWORD_MIN_LENGTH, passwordFault, tidyPassword } from '@duskwatch/core';
import { ApiError } from '../api/client.ts';
import { peopleWords } from '../text/people.ts';
import { problemText } from './record/ProblemText.tsx';

const w = peopleWords.faults;

/** A name somebody chose. */
export function nameTrouble(name: string): string | null {
  const fault = nameFault(name);
  return fault && w.name[fault];
}

/** A password somebody chose; `context` as for `passwordFault`. */
export function passwordTrouble(password: string, context: readonly string[]): string | null {
  if (password === '') return w.password.missing;
  const fault = passwordFault(password, context);
  if (fault === 'too-short') return w.password['too-short'](PASSWORD_MIN_LENGTH, [...tidyPassword(password)].length);
  if (fault === 'easily-guessed') {
    const { guessed, left, needed } = guessedParts(password, context);
    return w.password.guessed(guessed.map(({ part, why }) => w.password.why[why](part)).join(', '), left, needed);
  }
  return fault && w.password[fault];
}

/** What a form shows: beside an entry, or above all of them. */
export interface Faults {
  readonly name?: string | null;
  readonly password?: string | null;
  readonly code?: string | null;
  readonly form?: string | null;
}

export const hasFault = (faults: Faults): boolean => Object.values(faults).some((each) => each);

/** What the server had against it. `of401`: which entry a refusal of the credentials speaks of. */
export function serverFaults(error: unknown, of401: Faults): Faults {
  if (!(error instanceof ApiError)) throw error;
  if (error.kind === 'unreachable') return { form: w.unreachable };
  if (error.status === 401) return of401;
  if (error.status === 429) return { form: w.wait(error.waitS ?? 60) };
  const about = error.problems[0]?.where.parameter;
  if (error.status === 409 && about === 'name') return { name: w.name.taken };
  if (about === 'password') return { password: w.password['easily-guessed'] };
  if (about === 'farms') return { form: w.farms };
  return { form: w.other(error.problems.map(problemText).join(' ') || error.message) };
}
