import { adviseAll } from '@duskwatch/core';
import { z } from 'zod';
import { personOf, WITH_PLACES } from '../people/guard.ts';
import { advice } from '../schemas/advice.ts';
import { asOf, problems } from '../schemas/common.ts';
import type { Route } from './route.ts';

export const adviceRoute: Route = (app, { reader, dayFor }) => {
  app.get(
    '/api/advice',
    {
      config: { allow: WITH_PLACES },
      schema: {
        summary: 'The verb, its date and what it rests on, for every field and insect',
        querystring: asOf,
        response: { 200: z.array(advice), 400: problems },
      },
    },
    async (request) => adviseAll(await reader.prepared(personOf(request), await dayFor(request.query.on))),
  );
};
