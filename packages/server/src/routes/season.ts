import { seasonToShow, seasonTruthSchema, seasonTruthView, seasonView, seasonViewSchema } from '@duskwatch/core';
import { z } from 'zod';
import { FIELD_WORKERS, personOf } from '../people/guard.ts';
import { asOf, problems } from '../schemas/common.ts';
import type { Route } from './route.ts';

const ofYear = asOf.extend({
  year: z.coerce
    .number()
    .int()
    .min(1900)
    .max(2200)
    .optional()
    .describe('Year in which the growing year begins. Default: the running season where it is planned, else the next that is.'),
});

export const seasonRoute: Route = (app, { reader, dayFor }) => {
  app.get(
    '/api/season',
    {
      config: { allow: FIELD_WORKERS },
      schema: {
        operationId: 'getSeason',
        tags: ['season'],
        summary: 'The plan of a season: traps and when to hang them, lures and orders, budget, and what each rests on',
        querystring: ofYear,
        response: { 200: seasonViewSchema, 400: problems },
      },
    },
    async (request) => {
      const person = personOf(request);
      const prepared = await reader.prepared(person, await dayFor(request.query.on));
      return seasonView(prepared, request.query.year ?? seasonToShow(prepared), person.role === 'coordinator');
    },
  );

  app.get(
    '/api/season/truth',
    {
      config: { allow: FIELD_WORKERS },
      schema: {
        operationId: 'getSeasonTruth',
        tags: ['season'],
        summary: 'The plan held against what happened: hung late, checks missed, lures overdue, and what that does to the advice',
        querystring: ofYear,
        response: { 200: seasonTruthSchema, 400: problems },
      },
    },
    async (request) => {
      const prepared = await reader.prepared(personOf(request), await dayFor(request.query.on));
      return seasonTruthView(prepared, request.query.year ?? seasonToShow(prepared));
    },
  );
};
