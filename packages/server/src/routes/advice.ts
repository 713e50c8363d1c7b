import { adviceSchema, adviseAll, adviseCell } from '@duskwatch/core';
import { z } from 'zod';
import { personOf, WITH_PLACES } from '../people/guard.ts';
import { refuse } from '../problems.ts';
import { asOf, problems } from '../schemas/common.ts';
import type { Route } from './route.ts';

export const adviceRoute: Route = (app, { reader, dayFor }) => {
  app.get(
    '/api/advice',
    {
      config: { allow: WITH_PLACES },
      schema: {
        operationId: 'listAdvice',
        tags: ['advice'],
        summary: 'The verb, its date and what it rests on, for every field and insect',
        querystring: asOf,
        response: { 200: z.array(adviceSchema), 400: problems },
      },
    },
    async (request) => adviseAll(await reader.prepared(personOf(request), await dayFor(request.query.on))),
  );

  app.get(
    '/api/advice/:fieldId/:insect',
    {
      config: { allow: WITH_PLACES },
      schema: {
        operationId: 'getAdvice',
        tags: ['advice'],
        summary: 'The verb for one field and insect, its date and what it rests on',
        params: z.object({ fieldId: z.string().describe('field_id'), insect: z.string() }),
        querystring: asOf,
        response: { 200: adviceSchema, 400: problems, 404: problems },
      },
    },
    async (request, reply) => {
      const { fieldId, insect } = request.params;
      const prepared = await reader.prepared(personOf(request), await dayFor(request.query.on));
      if (prepared.fields.has(fieldId) && prepared.insects.includes(insect)) return adviseCell(prepared, fieldId, insect);
      return refuse(reply, 404, {
        where: { parameter: prepared.fields.has(fieldId) ? 'insect' : 'fieldId' },
        got: `${fieldId}, ${insect}`,
        expected: 'the field_id of a field in this program, and an insect that the program traps',
        fix: 'take both from /api/week',
      });
    },
  );
};
