import { weekView as viewOf } from '@duskwatch/core';
import { EVERY_ROLE, personOf } from '../people/guard.ts';
import { asOf, problems } from '../schemas/common.ts';
import { weekView } from '../schemas/week.ts';
import type { Route } from './route.ts';

export const weekRoute: Route = (app, { reader, dayFor }) => {
  app.get(
    '/api/week',
    {
      config: { allow: EVERY_ROLE },
      schema: {
        summary: 'This week: what is due, and the verb for every field and insect',
        querystring: asOf,
        response: { 200: weekView, 400: problems },
      },
    },
    async (request) => viewOf(await reader.prepared(personOf(request), await dayFor(request.query.on))),
  );
};
