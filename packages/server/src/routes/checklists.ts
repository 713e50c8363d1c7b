import { LANGUAGES, TRAP_DESIGNS } from '@duskwatch/core';
import { z } from 'zod';
import { areProblems, trapsToLabel } from '../documents/which-traps.ts';
import { FIELD_WORKERS, personOf } from '../people/guard.ts';
import { PDF, problems } from '../schemas/common.ts';
import type { Route } from './route.ts';

const query = z.object({
  design: z.enum(TRAP_DESIGNS).optional().describe('Default: a checklist for each design that hangs or is to be hung.'),
  language: z.enum(LANGUAGES),
  length: z.enum(['m', 'ft']),
  paper: z.enum(['A4', 'Letter']),
});

export const checklistsRoute: Route = (app, { reader, dayFor }) => {
  app.get(
    '/api/checklists.pdf',
    {
      config: { allow: FIELD_WORKERS },
      schema: {
        operationId: 'printChecklists',
        tags: ['documents'],
        summary: 'Checklists for hanging traps, one for each design, to print',
        querystring: query,
        response: { 200: PDF, 400: problems },
      },
    },
    async (request, reply) => {
      const { design, ...how } = request.query;
      const prepared = await reader.prepared(personOf(request), await dayFor(undefined));
      const found = trapsToLabel(prepared, null);
      const traps = areProblems(found) ? [] : found;
      const used = TRAP_DESIGNS.filter((each) => traps.some((trap) => trap.design === each));
      const wanted = design ? [design] : used.length > 0 ? used : TRAP_DESIGNS;
      const { name: programName, invented } = prepared.program.settings;
      const { checklistsPdf } = await import('../documents/checklist.ts');
      const requests = wanted.map((each) => {
        const insects = [...new Set(traps.filter((trap) => trap.design === each).map(({ insect }) => insect))];
        return { design: each, insects, programName, invented, ...how };
      });
      return reply.type('application/pdf').send(await checklistsPdf(requests));
    },
  );
};
