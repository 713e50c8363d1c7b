import { weatherSourcesSchema, weatherSourcesView } from '@duskwatch/core';
import { personOf, WITH_PLACES } from '../people/guard.ts';
import { asOf, problems } from '../schemas/common.ts';
import type { Route } from './route.ts';

export const weatherSourcesRoute: Route = (app, { reader, dayFor }) => {
  app.get(
    '/api/weather-sources',
    {
      config: { allow: WITH_PLACES },
      schema: {
        operationId: 'getWeatherSources',
        tags: ['program'],
        summary: 'Where weather comes from, how far it reaches, and what is missing of it',
        querystring: asOf,
        response: { 200: weatherSourcesSchema, 400: problems },
      },
    },
    async (request) => weatherSourcesView(await reader.program(personOf(request)), await dayFor(request.query.on)),
  );
};
