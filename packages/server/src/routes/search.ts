import { searchSchema, searchView } from '@duskwatch/core';
import { z } from 'zod';
import { personOf, WITH_PLACES } from '../people/guard.ts';
import { problems } from '../schemas/common.ts';
import type { Route } from './route.ts';

const LONGEST = 100;

const typed = z.object({
  q: z.string().max(LONGEST).describe('Words that must all be found, in any order; accents and case do not matter.'),
});

export const searchRoute: Route = (app, { reader, accounts }) => {
  app.get(
    '/api/search',
    {
      config: { allow: WITH_PLACES },
      schema: {
        operationId: 'search',
        tags: ['program'],
        summary: 'Fields, farms, traps, insects, people and notes by what somebody types, of what this person may see',
        querystring: typed,
        response: { 200: searchSchema, 400: problems },
      },
    },
    async (request) => {
      const person = personOf(request);
      const people = person.role === 'coordinator' && accounts !== null ? await accounts.store.people() : [];
      return searchView(await reader.program(person), people, request.query.q);
    },
  );
};
