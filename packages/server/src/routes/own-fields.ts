import { ownFieldsSchema, ownFieldsView } from '@duskwatch/core';
import { personOf, WITH_PLACES } from '../people/guard.ts';
import { asOf, problems } from '../schemas/common.ts';
import type { Route } from './route.ts';

export const ownFieldsRoute: Route = (app, { reader, dayFor }) => {
  app.get(
    '/api/own-fields',
    {
      config: { allow: WITH_PLACES },
      schema: {
        operationId: 'getOwnFields',
        tags: ['advice'],
        summary: 'The fields that the person may know, one line each, the most urgent first; for a grower those of own farms',
        querystring: asOf,
        response: { 200: ownFieldsSchema, 400: problems },
      },
    },
    async (request) => ownFieldsView(await reader.prepared(personOf(request), await dayFor(request.query.on))),
  );
};
