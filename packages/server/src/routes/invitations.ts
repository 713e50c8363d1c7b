import type { Role } from '@duskwatch/core';
import { z } from 'zod';
import { COORDINATOR, personOf } from '../people/guard.ts';
import { PASSWORD_LIMIT, PEOPLE_BODY_BYTES } from '../people/limits.ts';
import { choiceProblems, refuseInvitation, refuseWithoutAccounts } from '../people/refusals.ts';
import { farmProblems } from '../people/roles.ts';
import { refuse } from '../problems.ts';
import { problems } from '../schemas/common.ts';
import { farms, introduction, invitation, role, session } from '../schemas/people.ts';
import type { Route } from './route.ts';

const token = z.string().min(1).max(100);
const grant = z.union([
  z.object({ role, farms: farms.default([]) }),
  z.object({ personId: z.string().describe('Somebody who needs a new password.') }),
]);

export const invitationsRoute: Route = (app, { accounts, reader }) => {
  app.get(
    '/api/invitations',
    {
      config: { allow: COORDINATOR },
      schema: {
        operationId: 'listInvitations',
        tags: ['people'],
        summary: 'Invitations that can still be used',
        response: { 200: z.array(invitation) },
      },
    },
    async () => {
      if (accounts === null) return [];
      const names = new Map((await accounts.store.people()).map(({ id, name }) => [id, name]));
      return (await accounts.store.invitations())
        .filter(accounts.isOpen)
        .map(({ invitationId, role, farms, personId, createdBy, createdAt, expiresAt }) => ({
          id: invitationId,
          role,
          farms,
          person: personId === null ? null : { id: personId, name: names.get(personId) ?? personId },
          createdBy: names.get(createdBy) ?? createdBy,
          createdAt,
          expiresAt,
        }));
    },
  );

  app.post(
    '/api/invitations',
    {
      bodyLimit: PEOPLE_BODY_BYTES,
      config: { allow: COORDINATOR },
      schema: {
        operationId: 'makeInvitation',
        tags: ['people'],
        summary: 'Make a link with which one newcomer joins, or somebody known gets a new password, within 7 days',
        body: grant,
        response: {
          201: z.object({
            id: z.string(),
            token: z.string().describe('Told this once.'),
            path: z.string().describe('Of the page to open, beneath the address of this server.'),
            expiresAt: z.iso.datetime(),
          }),
          400: problems,
          404: problems,
          409: problems,
        },
      },
    },
    async (request, reply) => {
      if (accounts === null) return refuseWithoutAccounts(reply);
      let granted: { role: Role; farms: readonly string[]; personId: string | null };
      if ('personId' in request.body) {
        const { personId } = request.body;
        const known = (await accounts.store.people()).find(({ id, disabled }) => id === personId && !disabled);
        if (!known) {
          return refuse(reply, 404, {
            where: { parameter: 'personId' },
            got: personId,
            expected: 'somebody who may sign in',
            fix: 'take an id from /api/people',
          });
        }
        granted = { role: known.role, farms: known.farms, personId };
      } else {
        const faults = farmProblems(request.body, await reader.everything());
        if (faults.length > 0) return refuse(reply, 400, ...faults);
        granted = { ...request.body, personId: null };
      }
      const made = await accounts.invite(personOf(request), granted);
      return reply.code(201).send({
        id: made.invitation.invitationId,
        token: made.token,
        path: `/join/${made.token}`,
        expiresAt: made.invitation.expiresAt,
      });
    },
  );

  app.delete(
    '/api/invitations/:id',
    {
      config: { allow: COORDINATOR },
      schema: {
        operationId: 'withdrawInvitation',
        tags: ['people'],
        summary: 'Withdraw an invitation',
        params: z.object({ id: z.string() }),
        response: { 204: z.null(), 404: problems, 409: problems },
      },
    },
    async (request, reply) => {
      if (accounts === null) return refuseWithoutAccounts(reply);
      const by = { actor: personOf(request).id, at: accounts.now().toISOString() };
      if (await accounts.store.withdraw(request.params.id, by)) return reply.code(204).send(null);
      return refuse(reply, 404, {
        where: { parameter: 'id' },
        got: request.params.id,
        expected: 'an invitation that nobody used yet',
        fix: 'take an id from /api/invitations',
      });
    },
  );

  app.get(
    '/api/invitations/by-token/:token',
    {
      config: { allow: 'anyone', rateLimit: PASSWORD_LIMIT },
      schema: {
        operationId: 'getInvitation',
        tags: ['people'],
        summary: 'What a link is for, to whoever holds it',
        params: z.object({ token }),
        response: {
          200: z.object({
            program: z.string(),
            role,
            farms: z.array(z.string()),
            name: z.string().nullable().describe('Whose new password it is for; null: a newcomer.'),
            expiresAt: z.iso.datetime(),
          }),
          404: problems,
          409: problems,
          429: problems,
        },
      },
    },
    async (request, reply) => {
      if (accounts === null) return refuseWithoutAccounts(reply);
      const found = await accounts.invitationFor(request.params.token);
      if (!found) return refuseInvitation(reply);
      const { role, farms, expiresAt } = found.invitation;
      return { program: (await reader.everything()).settings.name, role, farms, name: found.person?.name ?? null, expiresAt };
    },
  );

  app.post(
    '/api/invitations/accept',
    {
      bodyLimit: PEOPLE_BODY_BYTES,
      config: { allow: 'anyone', rateLimit: PASSWORD_LIMIT },
      schema: {
        operationId: 'acceptInvitation',
        tags: ['people'],
        summary: 'Join with a link, or give oneself a new password with it; signs in',
        body: introduction.extend({ token, name: introduction.shape.name.default('') }),
        response: { 200: session, 400: problems, 404: problems, 409: problems, 429: problems },
      },
    },
    async (request, reply) => {
      if (accounts === null) return refuseWithoutAccounts(reply);
      const { token, ...introduced } = request.body;
      const found = await accounts.invitationFor(token);
      if (!found) return refuseInvitation(reply);
      const { settings } = await reader.everything();
      const name = found.person?.name ?? introduced.name;
      const faults = choiceProblems(found.person ? null : name, introduced.password, [settings.name, name]);
      if (faults.length > 0) return refuse(reply, 400, ...faults);
      const accepted = await accounts.accept(token, { ...introduced, name });
      if (accepted.outcome === 'invalid') return refuseInvitation(reply);
      if (accepted.outcome === 'name-taken') {
        return refuse(reply, 409, {
          where: { parameter: 'name' },
          got: name,
          expected: 'a name that nobody here has',
          fix: 'add a second name; if this is you, ask the coordinator for a link for a new password',
        });
      }
      await accounts.sessions.begin(request, reply, accepted.person);
      return { mode: 'accounts' as const, person: accepted.person, needsFirstPerson: false };
    },
  );
};
