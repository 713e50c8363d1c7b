import type { FastifyRequest } from 'fastify';
import type { z } from 'zod';
import type { LabelRequest } from '../documents/labels.ts';
import { areProblems, trapsToLabel } from '../documents/which-traps.ts';
import { FIELD_WORKERS, personOf } from '../people/guard.ts';
import { ownOrigin } from '../people/origin.ts';
import { refuse } from '../problems.ts';
import { PDF, problems } from '../schemas/common.ts';
import { labelRequest, labelSummary, MOST_LABELS } from '../schemas/labels.ts';
import { isLoopback } from '../security.ts';
import type { Route } from './route.ts';

export const labelsRoute: Route = (app, { reader, dayFor, publicOrigin }) => {
  async function laid(request: FastifyRequest, body: z.infer<typeof labelRequest>) {
    const person = personOf(request);
    const prepared = await reader.prepared(person, await dayFor(undefined));
    const traps = trapsToLabel(prepared, body.trapIds);
    if (areProblems(traps)) return { problems: traps };
    if (traps.length > MOST_LABELS)
      return {
        problems: [
          {
            where: { parameter: 'trapIds' },
            got: `${traps.length} traps`,
            expected: `at most ${MOST_LABELS} at once`,
            fix: 'name the traps of one farm or insect at a time',
          },
        ],
      };
    const { name: programName, invented } = prepared.program.settings;
    return { labels: { ...body, traps, programName, invented, origin: ownOrigin(request, publicOrigin) } satisfies LabelRequest };
  }

  app.post(
    '/api/labels',
    {
      config: { allow: FIELD_WORKERS },
      schema: {
        operationId: 'layLabels',
        tags: ['documents'],
        summary: 'What a sheet of labels would hold: how many sheets, how large the letters, where the codes lead',
        body: labelRequest,
        response: { 200: labelSummary, 400: problems },
      },
    },
    async (request, reply) => {
      const asked = await laid(request, request.body);
      if (!asked.labels) return refuse(reply, 400, ...asked.problems);
      const { labelSummary: summaryOf } = await import('../documents/labels.ts');
      const { origin } = asked.labels;
      return { ...(await summaryOf(asked.labels)), origin, onlyThisMachine: isLoopback(new URL(origin).hostname) };
    },
  );

  app.post(
    '/api/labels.pdf',
    {
      config: { allow: FIELD_WORKERS },
      schema: {
        operationId: 'printLabels',
        tags: ['documents'],
        summary: 'Sheets of trap labels, to print at full size',
        body: labelRequest,
        response: { 200: PDF, 400: problems },
      },
    },
    async (request, reply) => {
      const asked = await laid(request, request.body);
      if (!asked.labels) return refuse(reply, 400, ...asked.problems);
      const { labelsPdf } = await import('../documents/labels.ts');
      return reply.type('application/pdf').send(await labelsPdf(asked.labels));
    },
  );
};
