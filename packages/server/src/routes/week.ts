import { weekSchema, weekView } from '@duskwatch/core';
import { EVERY_ROLE, personOf } from '../people/guard.ts';
import { asOf, problems } from '../schemas/common.ts';
import type { Route } from './route.ts';

export const weekRoute: Route = (app, { reader, dayFor }) => {
  app.get(
    '/api/week',
    {
      config: { allow: EVERY_ROLE },
      schema: {
        operationId: 'getWeek',
        tags: ['advice'],
        summary: 'This week: what is due, and the verb for every field and insect',
        querystring: asOf,
        response: { 200: weekSchema, 400: problems },
      },
    },
    async (request) => weekView(await reader.prepared(personOf(request), await dayFor(request.query.on))),
  );
};
