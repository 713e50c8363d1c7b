import { stationsSchema, trapsView, trapView, trapViewSchema } from '@duskwatch/core';
import { z } from 'zod';
import { personOf, WITH_PLACES } from '../people/guard.ts';
import { refuse } from '../problems.ts';
import { asOf, problems } from '../schemas/common.ts';
import type { Route } from './route.ts';

export const trapsRoute: Route = (app, { reader, dayFor }) => {
  app.get(
    '/api/traps',
    {
      config: { allow: WITH_PLACES },
      schema: {
        operationId: 'listTraps',
        tags: ['traps'],
        summary: 'Stations and the traps that stand or stood there, with siting, history and what is due',
        querystring: asOf,
        response: { 200: stationsSchema, 400: problems },
      },
    },
    async (request) => trapsView(await reader.prepared(personOf(request), await dayFor(request.query.on))),
  );

  app.get(
    '/api/traps/:trapId',
    {
      config: { allow: WITH_PLACES },
      schema: {
        operationId: 'getTrap',
        tags: ['traps'],
        summary: 'One trap: every visit and lure',
        params: z.object({ trapId: z.string().describe('trap_id') }),
        querystring: asOf,
        response: { 200: trapViewSchema, 400: problems, 404: problems },
      },
    },
    async (request, reply) => {
      const { trapId } = request.params;
      const view = trapView(await reader.prepared(personOf(request), await dayFor(request.query.on)), trapId);
      if (view) return view;
      return refuse(reply, 404, {
        where: { parameter: 'trapId' },
        got: trapId,
        expected: 'the trap_id of a trap in this program',
        fix: 'take one from /api/traps',
      });
    },
  );
};
