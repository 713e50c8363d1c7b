import { z } from 'zod';
import { EVERY_ROLE, personOf } from '../people/guard.ts';
import { PASSWORD_LIMIT, PEOPLE_BODY_BYTES } from '../people/limits.ts';
import { choiceProblems, isConfirmed, refuseAttempt, refuseWithoutAccounts } from '../people/refusals.ts';
import { refuse } from '../problems.ts';
import { problems } from '../schemas/common.ts';
import { credentials, introduction, language, ownSession, passwordChange, session } from '../schemas/people.ts';
import type { Route } from './route.ts';

export const sessionRoute: Route = (app, { accounts, reader }) => {
  app.get(
    '/api/session',
    {
      config: { allow: 'anyone' },
      schema: {
        operationId: 'getSession',
        tags: ['people'],
        summary: 'Who is signed in, and whether anybody needs to be',
        response: { 200: session },
      },
    },
    async ({ person }) => {
      const mode = accounts === null ? ('single-user' as const) : ('accounts' as const);
      return { mode, person, needsFirstPerson: accounts !== null && (await accounts.needsFirstPerson()) };
    },
  );

  app.post(
    '/api/session',
    {
      bodyLimit: PEOPLE_BODY_BYTES,
      config: { allow: 'anyone', rateLimit: PASSWORD_LIMIT },
      schema: {
        operationId: 'signIn',
        tags: ['people'],
        summary: 'Sign in',
        body: credentials,
        response: { 200: session, 400: problems, 401: problems, 409: problems, 429: problems },
      },
    },
    async (request, reply) => {
      if (accounts === null) return refuseWithoutAccounts(reply);
      const { name, password } = request.body;
      const attempt = await accounts.signIn(name, password, request.ip);
      if (typeof attempt === 'string' || 'waitS' in attempt) {
        return refuseAttempt(reply, attempt, {
          where: {},
          got: 'a name and a password that do not belong together',
          expected: 'the name and the password you joined with',
          fix: 'try again, or ask a coordinator for a link for a new password',
        });
      }
      await accounts.sessions.begin(request, reply, attempt.person);
      return { mode: 'accounts' as const, person: attempt.person, needsFirstPerson: false };
    },
  );

  app.patch(
    '/api/session',
    {
      bodyLimit: PEOPLE_BODY_BYTES,
      config: { allow: EVERY_ROLE },
      schema: {
        operationId: 'changeOwnLanguage',
        tags: ['people'],
        summary: "Change one's own language",
        body: z.object({ language }),
        response: { 204: z.null(), 400: problems, 409: problems },
      },
    },
    async (request, reply) => {
      if (accounts === null) return refuseWithoutAccounts(reply);
      await accounts.store.setLanguage(personOf(request).id, request.body.language);
      return reply.code(204).send(null);
    },
  );

  app.delete(
    '/api/session',
    {
      config: { allow: 'anyone' },
      schema: { operationId: 'signOut', tags: ['people'], summary: 'Sign out here', response: { 204: z.null() } },
    },
    async (request, reply) => {
      await accounts?.sessions.end(request, reply);
      return reply.code(204).send(null);
    },
  );

  app.get(
    '/api/sessions',
    {
      config: { allow: EVERY_ROLE },
      schema: {
        operationId: 'listOwnSessions',
        tags: ['people'],
        summary: 'Where one is signed in, the last seen first',
        response: { 200: z.array(ownSession) },
      },
    },
    async (request) =>
      ((await accounts?.sessions.own(request, personOf(request))) ?? []).map(({ startedAt, seenAt, here }) => ({
        startedAt,
        seenAt,
        here,
      })),
  );

  app.post(
    '/api/session/password',
    {
      bodyLimit: PEOPLE_BODY_BYTES,
      config: { allow: EVERY_ROLE, rateLimit: PASSWORD_LIMIT },
      schema: {
        operationId: 'changeOwnPassword',
        tags: ['people'],
        summary: "Change one's own password; one's sessions elsewhere end",
        body: passwordChange,
        response: { 204: z.null(), 400: problems, 401: problems, 409: problems, 429: problems },
      },
    },
    async (request, reply) => {
      const sessionHash = accounts?.sessions.hash(request) ?? null;
      if (accounts === null || sessionHash === null) return refuseWithoutAccounts(reply);
      const person = personOf(request);
      const { password, newPassword } = request.body;
      if (!(await isConfirmed(accounts, request, reply, password))) return reply;
      const { settings } = await reader.everything();
      const faults = choiceProblems(null, newPassword, [settings.name, person.name]);
      if (faults.length > 0) return refuse(reply, 400, ...faults);
      await accounts.changePassword(person, newPassword, sessionHash);
      return reply.code(204).send(null);
    },
  );

  app.delete(
    '/api/sessions',
    {
      config: { allow: EVERY_ROLE },
      schema: { operationId: 'signOutEverywhere', tags: ['people'], summary: 'Sign out everywhere', response: { 204: z.null() } },
    },
    async (request, reply) => {
      await accounts?.sessions.endAll(reply, personOf(request));
      return reply.code(204).send(null);
    },
  );

  app.post(
    '/api/first-person',
    {
      bodyLimit: PEOPLE_BODY_BYTES,
      config: { allow: 'anyone', rateLimit: PASSWORD_LIMIT },
      schema: {
        operationId: 'becomeFirstPerson',
        tags: ['people'],
        summary: 'Become the first coordinator with the code that the server printed when it started; signs in',
        body: introduction.extend({ code: z.string().max(100) }),
        response: { 200: session, 400: problems, 401: problems, 409: problems, 429: problems },
      },
    },
    async (request, reply) => {
      if (accounts === null) return refuseWithoutAccounts(reply);
      if (!(await accounts.needsFirstPerson())) {
        return refuse(reply, 409, {
          where: {},
          got: 'a program with people',
          expected: 'a program that nobody has joined',
          fix: 'sign in, or ask a coordinator for an invitation',
        });
      }
      const { code, ...introduced } = request.body;
      const { settings } = await reader.everything();
      const faults = choiceProblems(introduced.name, introduced.password, [settings.name, introduced.name]);
      if (faults.length > 0) return refuse(reply, 400, ...faults);
      const attempt = await accounts.firstPerson(code, introduced, request.ip);
      if (typeof attempt === 'string' || 'waitS' in attempt) {
        return refuseAttempt(reply, attempt, {
          where: { parameter: 'code' },
          got: 'another code',
          expected: 'the code that the server printed when it started',
          fix: 'copy it from the terminal, or start the server again for a new one',
        });
      }
      await accounts.sessions.begin(request, reply, attempt.person);
      return { mode: 'accounts' as const, person: attempt.person, needsFirstPerson: false };
    },
  );
};
