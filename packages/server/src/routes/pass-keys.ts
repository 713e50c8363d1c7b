import type { PassKey } from '@duskwatch/store';
import type { AuthenticationResponseJSON, RegistrationResponseJSON } from '@simplewebauthn/server';
import type { FastifyRequest } from 'fastify';
import { z } from 'zod';
import { EVERY_ROLE, personOf } from '../people/guard.ts';
import { PASSWORD_LIMIT, PEOPLE_BODY_BYTES } from '../people/limits.ts';
import { ownOrigin } from '../people/origin.ts';
import type { Site } from '../people/pass-keys.ts';
import { isConfirmed, refuseWithoutAccounts } from '../people/refusals.ts';
import { refuse } from '../problems.ts';
import { problems } from '../schemas/common.ts';
import { assertion, creationOptions, passKey, registration, requestOptions } from '../schemas/pass-keys.ts';
import { session } from '../schemas/people.ts';
import type { Route } from './route.ts';

export const passKeysRoute: Route = (app, { accounts, reader, publicOrigin }) => {
  const siteOf = async (request: FastifyRequest): Promise<Site> => {
    const { origin, hostname } = new URL(ownOrigin(request, publicOrigin));
    const { settings } = await reader.everything();
    return { origin, hostname, programName: settings.name };
  };

  app.get(
    '/api/pass-keys',
    {
      config: { allow: EVERY_ROLE },
      schema: {
        operationId: 'listOwnPassKeys',
        tags: ['people'],
        summary: "One's own pass-keys, the newest first",
        response: { 200: z.array(passKey) },
      },
    },
    async (request) => (accounts === null ? [] : (await accounts.store.passKeysOf(personOf(request).id)).map(shown)),
  );

  app.post(
    '/api/pass-keys/options',
    {
      bodyLimit: PEOPLE_BODY_BYTES,
      config: { allow: EVERY_ROLE, rateLimit: PASSWORD_LIMIT },
      schema: {
        operationId: 'offerPassKey',
        tags: ['people'],
        summary: 'What a browser makes a new pass-key from; asks for the password again',
        body: z.object({ password: z.string().max(2_000) }),
        response: { 200: creationOptions, 400: problems, 401: problems, 409: problems, 429: problems },
      },
    },
    async (request, reply) => {
      if (accounts === null) return refuseWithoutAccounts(reply);
      if (!(await isConfirmed(accounts, request, reply, request.body.password))) return reply;
      return { ...(await accounts.passKeys.offer(personOf(request), await siteOf(request))) };
    },
  );

  app.post(
    '/api/pass-keys',
    {
      bodyLimit: PEOPLE_BODY_BYTES,
      config: { allow: EVERY_ROLE },
      schema: {
        operationId: 'addPassKey',
        tags: ['people'],
        summary: 'Keep the public half of a pass-key that the browser has made',
        body: z.object({ name: z.string().trim().min(1).max(80), response: registration }),
        response: { 201: passKey, 400: problems, 409: problems },
      },
    },
    async (request, reply) => {
      if (accounts === null) return refuseWithoutAccounts(reply);
      const { name, response } = request.body;
      const key = await accounts.passKeys.add(
        personOf(request),
        await siteOf(request),
        response as RegistrationResponseJSON,
        name,
      );
      if (key === null) {
        return refuse(reply, 400, {
          where: { parameter: 'response' },
          got: 'a pass-key that was not asked for here, or more than five minutes ago',
          expected: 'the answer to the options given last',
          fix: 'begin again',
        });
      }
      return reply.code(201).send(shown(key));
    },
  );

  app.delete(
    '/api/pass-keys',
    {
      config: { allow: EVERY_ROLE },
      schema: {
        operationId: 'removePassKey',
        tags: ['people'],
        summary: "Take one of one's own pass-keys away",
        querystring: z.object({ id: z.string().max(1_400) }),
        response: { 204: z.null(), 404: problems, 409: problems },
      },
    },
    async (request, reply) => {
      if (accounts === null) return refuseWithoutAccounts(reply);
      const { store, now } = accounts;
      if (await store.removePassKey(personOf(request).id, request.query.id, now().toISOString()))
        return reply.code(204).send(null);
      return refuse(reply, 404, {
        where: { parameter: 'id' },
        got: request.query.id.slice(0, 40),
        expected: 'one of your own pass-keys',
        fix: 'load the list again',
      });
    },
  );

  app.post(
    '/api/session/pass-key-options',
    {
      bodyLimit: PEOPLE_BODY_BYTES,
      config: { allow: 'anyone', rateLimit: PASSWORD_LIMIT },
      schema: {
        operationId: 'askForPassKey',
        tags: ['people'],
        summary: 'What a browser finds a pass-key by, to sign in',
        response: { 200: requestOptions, 409: problems, 429: problems },
      },
    },
    async (request, reply) =>
      accounts === null ? refuseWithoutAccounts(reply) : { ...(await accounts.passKeys.ask(await siteOf(request))) },
  );

  app.post(
    '/api/session/pass-key',
    {
      bodyLimit: PEOPLE_BODY_BYTES,
      config: { allow: 'anyone', rateLimit: PASSWORD_LIMIT },
      schema: {
        operationId: 'signInWithPassKey',
        tags: ['people'],
        summary: 'Sign in with a pass-key',
        body: assertion,
        response: { 200: session, 400: problems, 401: problems, 409: problems, 429: problems },
      },
    },
    async (request, reply) => {
      if (accounts === null) return refuseWithoutAccounts(reply);
      const person = await accounts.passKeys.signedBy(await siteOf(request), request.body as AuthenticationResponseJSON);
      if (person === null) {
        return refuse(reply, 401, {
          where: {},
          got: 'a pass-key that is not known here',
          expected: 'one that was added here and not taken away',
          fix: 'sign in with name and password; then add the pass-key again under Settings',
        });
      }
      await accounts.sessions.begin(request, reply, person);
      return { mode: 'accounts' as const, person, needsFirstPerson: false };
    },
  );
};

const shown = ({ credentialId, name, madeAt, usedAt }: PassKey) => ({ id: credentialId, name, madeAt, usedAt });
