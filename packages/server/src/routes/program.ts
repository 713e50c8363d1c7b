import { programHead, programHeadSchema } from '@duskwatch/core';
import { EVERY_ROLE, personOf } from '../people/guard.ts';
import type { Route } from './route.ts';

export const programRoute: Route = (app, { reader, dayFor }) => {
  app.get(
    '/api/program',
    {
      config: { allow: EVERY_ROLE },
      schema: {
        operationId: 'getProgram',
        tags: ['program'],
        summary: 'What the program is and whom it is about',
        response: { 200: programHeadSchema },
      },
    },
    async (request) => programHead(await reader.program(personOf(request)), await dayFor(undefined)),
  );
};
