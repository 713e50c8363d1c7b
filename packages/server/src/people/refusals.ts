/** How the people routes refuse. */
import {
  NAME_MAX_LENGTH,
  nameFault,
  PASSWORD_MAX_LENGTH,
  PASSWORD_MIN_LENGTH,
  type Problem,
  passwordFault,
  tidyPassword,
} from '@duskwatch/core';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { refuse } from '../problems.ts';
import type { Accounts, Attempt } from './accounts.ts';
import { personOf } from './guard.ts';

const NAME_EXPECTED = {
  missing: 'a name',
  'too-long': `at most ${NAME_MAX_LENGTH} characters`,
  'invisible-characters': 'characters that can be seen',
  'mixed-alphabets': 'each word in letters of one alphabet',
} as const;

const PASSWORD_EXPECTED = {
  'too-short': `at least ${PASSWORD_MIN_LENGTH} characters; any, also spaces`,
  'too-long': `at most ${PASSWORD_MAX_LENGTH} characters`,
  'easily-guessed': 'a password that is not put together from what everybody would try first',
} as const;

/** What is wrong with a name and a password that somebody chose. A password is never said again. */
export function choiceProblems(name: string | null, password: string, context: readonly string[]): Problem[] {
  const problems: Problem[] = [];
  const aboutName = name === null ? null : nameFault(name);
  if (aboutName)
    problems.push({
      where: { parameter: 'name' },
      got: name!.slice(0, NAME_MAX_LENGTH),
      expected: NAME_EXPECTED[aboutName],
      fix: 'write the name in another way',
    });
  const aboutPassword = passwordFault(password, context);
  if (aboutPassword)
    problems.push({
      where: { parameter: 'password' },
      got: `${[...tidyPassword(password)].length} characters`,
      expected: PASSWORD_EXPECTED[aboutPassword],
      fix: 'several words that do not belong together are easily kept in mind',
    });
  return problems;
}

/** The answer to an attempt that failed; `wrong` says what it must have been. */
export function refuseAttempt(reply: FastifyReply, attempt: Exclude<Attempt, { person: unknown }>, wrong: Problem): FastifyReply {
  if (attempt === 'wrong') return refuse(reply, 401, wrong);
  reply.header('retry-after', attempt.waitS);
  return refuse(reply, 429, {
    where: {},
    got: 'too many attempts',
    expected: `none for another ${attempt.waitS} s`,
    fix: 'wait, then try again; a coordinator can make a link for a new password',
  });
}

export function refuseWithoutAccounts(reply: FastifyReply): FastifyReply {
  return refuse(reply, 409, {
    where: {},
    got: 'a program served without accounts',
    expected: 'accounts',
    fix: 'start it with: duskwatch serve --accounts',
  });
}

export function refuseInvitation(reply: FastifyReply): FastifyReply {
  return refuse(reply, 404, {
    where: { parameter: 'token' },
    got: 'a link that was used, withdrawn, or has expired',
    expected: 'an invitation that is open',
    fix: 'ask a coordinator for a new one',
  });
}

/** Whether somebody who is signed in typed their password again, as what opens more than a page asks for; else refused. */
export async function isConfirmed(
  accounts: Accounts,
  request: FastifyRequest,
  reply: FastifyReply,
  password: string,
): Promise<boolean> {
  const attempt = await accounts.signIn(personOf(request).name, password, request.ip);
  if (typeof attempt !== 'string' && 'person' in attempt) return true;
  refuseAttempt(reply, attempt, {
    where: { parameter: 'password' },
    got: 'another password',
    expected: 'the password you have now',
    fix: 'type it again, or ask a coordinator for a link for a new one',
  });
  return false;
}
