import { roundSchema, roundView } from '@duskwatch/core';
import { FIELD_WORKERS, personOf } from '../people/guard.ts';
import { asOf, problems } from '../schemas/common.ts';
import type { Route } from './route.ts';

export const roundRoute: Route = (app, { reader, dayFor }) => {
  app.get(
    '/api/round',
    {
      config: { allow: FIELD_WORKERS },
      schema: {
        operationId: 'getRound',
        tags: ['rounds'],
        summary: 'The round: every station with a trap hanging, in driving order, complete enough to work without signal',
        querystring: asOf,
        response: { 200: roundSchema, 400: problems },
      },
    },
    async (request) => roundView(await reader.prepared(personOf(request), await dayFor(request.query.on))),
  );
};
