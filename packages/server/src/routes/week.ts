import { weekView as viewOf } from '@duskwatch/core';
import { asOf, problems } from '../schemas/common.ts';
import { weekView } from '../schemas/week.ts';
import type { Route } from './route.ts';

export const weekRoute: Route = (app, { reader, dayFor }) => {
  app.get(
    '/api/week',
    {
      schema: {
        summary: 'This week: what is due, and the verb for every field and insect',
        querystring: asOf,
        response: { 200: weekView, 400: problems },
      },
    },
    async (request) => viewOf(await reader.prepared(await dayFor(request.query.on))),
  );
};
