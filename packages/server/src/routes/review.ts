import { lessonsSchema, reviewSchema, yearsSchema } from '@duskwatch/core';
import { z } from 'zod';
import { COORDINATOR, personOf, WITH_PLACES } from '../people/guard.ts';
import { asOf, problems } from '../schemas/common.ts';
import type { Route } from './route.ts';

export const reviewRoute: Route = (app, { reader, work, dayFor }) => {
  app.get(
    '/api/review/lessons',
    {
      config: { allow: COORDINATOR },
      schema: {
        operationId: 'getLessons',
        tags: ['review'],
        summary: "What the program's own records teach: designs side by side, lure decay, catch against infestation",
        querystring: asOf,
        response: { 200: lessonsSchema, 400: problems },
      },
    },
    async (request) => {
      const on = await dayFor(request.query.on);
      return reader.kept(personOf(request), `lessons ${on}`, (program) => work.run({ kind: 'lessons', on }, program));
    },
  );

  app.get(
    '/api/review',
    {
      config: { allow: WITH_PLACES },
      schema: {
        operationId: 'getReview',
        tags: ['review'],
        summary: 'A look back at the season that holds the day, for each farm and all of them: a grower sees the own farms',
        querystring: asOf,
        response: { 200: reviewSchema, 400: problems },
      },
    },
    async (request) => {
      const on = await dayFor(request.query.on);
      return reader.kept(personOf(request), `review ${on}`, (program) => work.run({ kind: 'review', on }, program));
    },
  );

  app.get(
    '/api/review/years',
    {
      config: { allow: WITH_PLACES },
      schema: {
        operationId: 'getYears',
        tags: ['review'],
        summary: "One insect's catch, year against year, by the calendar and by heat",
        querystring: asOf.extend({
          insect: z.string().describe('Slug of the scientific name.'),
          farm: z.string().optional().describe('Traps of one farm. Default: all.'),
        }),
        response: { 200: yearsSchema, 400: problems },
      },
    },
    async (request) => {
      const { insect, farm = null } = request.query;
      const on = await dayFor(request.query.on);
      const key = JSON.stringify(['years', on, insect, farm]);
      return reader.kept(personOf(request), key, (program) => work.run({ kind: 'years', on, insect, farm }, program));
    },
  );
};
