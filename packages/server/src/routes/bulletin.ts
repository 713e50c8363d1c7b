import { bulletinSchema, bulletinView } from '@duskwatch/core';
import { FIELD_WORKERS, personOf } from '../people/guard.ts';
import { asOf, problems } from '../schemas/common.ts';
import type { Route } from './route.ts';

export const bulletinRoute: Route = (app, { reader, dayFor }) => {
  app.get(
    '/api/bulletin',
    {
      config: { allow: FIELD_WORKERS },
      schema: {
        operationId: 'getBulletin',
        tags: ['advice'],
        summary: 'What the week’s bulletin is drafted from: no figure of fewer farms than may be told, and no place',
        querystring: asOf,
        response: { 200: bulletinSchema, 400: problems },
      },
    },
    async (request) => {
      const on = await dayFor(request.query.on);
      return bulletinView(await reader.prepared(personOf(request), on));
    },
  );
};
