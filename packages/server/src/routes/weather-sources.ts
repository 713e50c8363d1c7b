import { weatherComparison, weatherComparisonSchema, weatherSourcesSchema, weatherSourcesView } from '@duskwatch/core';
import { z } from 'zod';
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

  app.get(
    '/api/weather-comparison',
    {
      config: { allow: WITH_PLACES },
      schema: {
        operationId: 'compareWeather',
        tags: ['program'],
        summary: 'Two weather sources on the days that both have',
        querystring: asOf.extend({ first: z.string(), second: z.string() }),
        response: { 200: weatherComparisonSchema, 400: problems },
      },
    },
    async (request) => {
      const { on, first, second } = request.query;
      return weatherComparison(await reader.program(personOf(request)), await dayFor(on), first, second);
    },
  );
};
