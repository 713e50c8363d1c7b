/** Who may call a route: stated by each route, kept to here, before anything of the request is read. */
import { type Person, ROLES, type Role } from '@duskwatch/core';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import { refuse } from '../problems.ts';

/** Roles, or `anyone`: also people who have not signed in. */
export type Allow = readonly Role[] | 'anyone';

export const EVERY_ROLE: Allow = ROLES;
/** Who may know where things are: all but readers, each as much of it as `scopeProgram` leaves them. */
export const WITH_PLACES: Allow = ['coordinator', 'scout', 'grower'];
/** Who may write down what happens in the fields. */
export const FIELD_WORKERS: Allow = ['coordinator', 'scout'];
export const COORDINATOR: Allow = ['coordinator'];

declare module 'fastify' {
  interface FastifyContextConfig {
    allow?: Allow;
  }
  interface FastifyInstance {
    /** Every route there is, and whom it allows. */
    allowed: readonly { readonly route: string; readonly allow: Allow }[];
  }
  interface FastifyRequest {
    /** Who asks; null: nobody who is known here. */
    person: Person | null;
  }
}

/** Everybody at a machine that serves itself alone. */
export const THIS_MACHINE: Person = {
  id: 'this-machine',
  name: 'This machine',
  role: 'coordinator',
  farms: [],
  language: 'en',
  disabled: false,
};

/** The built app's own files, registered by the static plug-in. */
const APP_FILES = '/*';

/**
 * Sets `request.person` and answers 401 or 403 in place of a route that does not allow them. A server with a route
 * that does not say whom it allows does not start.
 */
export function guard(app: FastifyInstance, identify: (request: FastifyRequest) => Promise<Person | null>): void {
  app.decorateRequest('person', null);
  const allowed: { route: string; allow: Allow }[] = [];
  app.decorate('allowed', allowed);
  app.addHook('onRoute', ({ method, url, config }) => {
    if (config?.allow === undefined && url !== APP_FILES)
      throw new Error(`${method} ${url} does not say whom it allows. Add config: { allow: … } to the route.`);
    for (const each of [method].flat()) allowed.push({ route: `${each} ${url}`, allow: config?.allow ?? 'anyone' });
  });
  app.addHook('onRequest', async (request, reply) => {
    const { allow } = request.routeOptions.config;
    // The app's own files, and addresses that are none, are the same for everybody.
    if (allow === undefined || request.is404) return;
    reply.header('cache-control', 'no-store');
    request.person = await identify(request);
    if (allow === 'anyone') return;
    if (request.person === null) {
      return refuse(reply, 401, {
        where: {},
        got: 'a request by nobody who is signed in',
        expected: 'a session',
        fix: 'sign in',
      });
    }
    if (!allow.includes(request.person.role)) {
      return refuse(reply, 403, {
        where: {},
        got: `a request by a ${request.person.role}`,
        expected: allow.join(' or '),
        fix: 'ask a coordinator',
      });
    }
  });
}

/** Who asks, in a route that does not allow `anyone`. */
export function personOf(request: FastifyRequest): Person {
  if (request.person === null) throw new Error(`${request.url} was reached by nobody`);
  return request.person;
}
