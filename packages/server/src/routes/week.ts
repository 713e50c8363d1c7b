import { weekSchema, weekSheetSchema, weekSheetView, weekView } from '@duskwatch/core';
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

  app.get(
    '/api/week/sheet',
    {
      config: { allow: EVERY_ROLE },
      schema: {
        operationId: 'getWeekSheet',
        tags: ['advice'],
        summary: 'For a printed week: why each thing is due, and the drives of seven days with the lures for each',
        querystring: asOf,
        response: { 200: weekSheetSchema, 400: problems },
      },
    },
    async (request) => weekSheetView(await reader.prepared(personOf(request), await dayFor(request.query.on))),
  );
};
