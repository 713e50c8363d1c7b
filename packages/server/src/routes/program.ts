import { firstStepsSchema, firstStepsView, programHead, programHeadSchema, rulesSchema, rulesView } from '@duskwatch/core';
import { COORDINATOR, EVERY_ROLE, personOf } from '../people/guard.ts';
import { asOf, problems } from '../schemas/common.ts';
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

  app.get(
    '/api/first-steps',
    {
      config: { allow: COORDINATOR },
      schema: {
        operationId: 'getFirstSteps',
        tags: ['program'],
        summary: 'What the program lacks before it can give advice, and before that is as sure as it can be',
        querystring: asOf,
        response: { 200: firstStepsSchema, 400: problems },
      },
    },
    async (request) => firstStepsView(await reader.prepared(personOf(request), await dayFor(request.query.on))),
  );

  app.get(
    '/api/rules',
    {
      config: { allow: EVERY_ROLE },
      schema: {
        operationId: 'getRules',
        tags: ['advice'],
        summary: 'For which fields each rule speaks',
        querystring: asOf,
        response: { 200: rulesSchema, 400: problems },
      },
    },
    async (request) => rulesView(await reader.prepared(personOf(request), await dayFor(request.query.on))),
  );
};
