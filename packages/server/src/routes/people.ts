import { z } from 'zod';
import { COORDINATOR, personOf } from '../people/guard.ts';
import { PEOPLE_BODY_BYTES } from '../people/limits.ts';
import { refuseWithoutAccounts } from '../people/refusals.ts';
import { farmProblems } from '../people/roles.ts';
import { refuse } from '../problems.ts';
import { problems } from '../schemas/common.ts';
import { farms, logEntry, person, role } from '../schemas/people.ts';
import type { Route } from './route.ts';

const LOG_LINES = 200;

export const peopleRoute: Route = (app, { accounts, reader }) => {
  app.get(
    '/api/people',
    {
      config: { allow: COORDINATOR },
      schema: {
        operationId: 'listPeople',
        tags: ['people'],
        summary: 'Everybody who has joined, by name',
        response: { 200: z.array(person) },
      },
    },
    async () => (accounts === null ? [] : accounts.store.people()),
  );

  app.get(
    '/api/people/log',
    {
      config: { allow: COORDINATOR },
      schema: {
        operationId: 'getPeopleLog',
        tags: ['people'],
        summary: 'Who changed what about people, newest first',
        response: { 200: z.array(logEntry) },
      },
    },
    async () => {
      if (accounts === null) return [];
      const names = new Map((await accounts.store.people()).map(({ id, name }) => [id, name]));
      return (await accounts.store.log(LOG_LINES)).map((entry) => ({
        ...entry,
        actor: names.get(entry.actor) ?? entry.actor,
        subject: names.get(entry.subject) ?? null,
      }));
    },
  );

  app.patch(
    '/api/people/:id',
    {
      bodyLimit: PEOPLE_BODY_BYTES,
      config: { allow: COORDINATOR },
      schema: {
        operationId: 'changePerson',
        tags: ['people'],
        summary: "Change somebody's role or farms, or whether they may sign in; ends their sessions",
        params: z.object({ id: z.string() }),
        body: z.object({
          role: role.exactOptional(),
          farms: farms.exactOptional(),
          disabled: z.boolean().exactOptional(),
        }),
        response: { 200: person, 400: problems, 404: problems, 409: problems },
      },
    },
    async (request, reply) => {
      if (accounts === null) return refuseWithoutAccounts(reply);
      const { id } = request.params;
      const before = (await accounts.store.people()).find((each) => each.id === id);
      if (!before) return unknown();
      const wanted = { ...before, ...request.body };
      // Farms go with the role: whoever stops being a grower keeps none.
      const after = { ...wanted, farms: wanted.role === 'grower' ? wanted.farms : (request.body.farms ?? []) };
      const faults = farmProblems(after, await reader.everything());
      const placesChange = request.body.role !== undefined || request.body.farms !== undefined;
      if (placesChange && faults.length > 0) return refuse(reply, 400, ...faults);

      const by = { actor: personOf(request).id, at: accounts.now().toISOString() };
      const change = placesChange ? { ...request.body, farms: after.farms } : request.body;
      const outcome = await accounts.store.change(id, change, by);
      if (outcome === 'unknown') return unknown();
      if (outcome === 'last-coordinator') {
        return refuse(reply, 409, {
          where: {},
          got: 'the last coordinator',
          expected: 'another coordinator who may sign in',
          fix: 'make somebody else a coordinator first',
        });
      }
      return placesChange ? after : { ...before, ...request.body };

      function unknown() {
        return refuse(reply, 404, {
          where: { parameter: 'id' },
          got: id,
          expected: 'the id of somebody here',
          fix: 'take one from /api/people',
        });
      }
    },
  );
};
