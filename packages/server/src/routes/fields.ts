import { fieldView, fieldViewSchema } from '@duskwatch/core';
import { z } from 'zod';
import { personOf, WITH_PLACES } from '../people/guard.ts';
import { noSuchField } from '../problems.ts';
import { asOf, problems } from '../schemas/common.ts';
import type { Route } from './route.ts';

export const fieldRoute: Route = (app, { reader, dayFor }) => {
  app.get(
    '/api/fields/:fieldId',
    {
      config: { allow: WITH_PLACES },
      schema: {
        operationId: 'getField',
        tags: ['advice'],
        summary: 'One field: its season on one time axis, and the evidence beneath',
        params: z.object({ fieldId: z.string().describe('field_id') }),
        querystring: asOf,
        response: { 200: fieldViewSchema, 400: problems, 404: problems },
      },
    },
    async (request, reply) => {
      const { fieldId } = request.params;
      const view = fieldView(await reader.prepared(personOf(request), await dayFor(request.query.on)), fieldId);
      if (view) return view;
      return noSuchField(reply, fieldId);
    },
  );
};
