import { type SheetWanted, scoutingSchema, scoutingSheets, scoutingView } from '@duskwatch/core';
import { personOf, WITH_PLACES } from '../people/guard.ts';
import { refuse } from '../problems.ts';
import { asOf, PDF, problems } from '../schemas/common.ts';
import { MOST_SHEETS, sheetsQuery } from '../schemas/scouting.ts';
import type { Route } from './route.ts';

export const scoutingRoute: Route = (app, { reader, dayFor }) => {
  app.get(
    '/api/scouting',
    {
      config: { allow: WITH_PLACES },
      schema: {
        operationId: 'getScouting',
        tags: ['scouting'],
        summary: 'Fields and insects that may be sampled, with the plan for each: complete enough to work without signal',
        querystring: asOf,
        response: { 200: scoutingSchema, 400: problems },
      },
    },
    async (request) => scoutingView(await reader.prepared(personOf(request), await dayFor(request.query.on))),
  );

  app.get(
    '/api/scouting.pdf',
    {
      config: { allow: WITH_PLACES },
      schema: {
        operationId: 'printScoutingSheets',
        tags: ['documents'],
        summary: 'Scouting sheets to print: where to look, how many, when to stop',
        querystring: sheetsQuery,
        response: { 200: PDF, 400: problems },
      },
    },
    async (request, reply) => {
      const { on, sheet, paper, language, ...options } = request.query;
      const prepared = await reader.prepared(personOf(request), await dayFor(on));
      const sheets = scoutingSheets(prepared, sheet === undefined ? null : [sheet].flat().map(wanted), options);
      if (!sheets.ok) return refuse(reply, 400, ...sheets.problems);
      if (sheets.value.length > MOST_SHEETS) return refuse(reply, 400, tooMany(sheets.value.length));
      const { scoutingPdf } = await import('../documents/scouting-sheets.ts');
      const pdf = await scoutingPdf(sheets.value, { paper: paper === 'a4' ? 'A4' : 'Letter', language });
      return reply.type('application/pdf').header('content-disposition', 'inline; filename="scouting.pdf"').send(pdf);
    },
  );
};

function wanted(text: string): SheetWanted {
  const [fieldId = '', insect = '', ruleId] = text.split('|');
  return { fieldId, insect, ...(ruleId ? { ruleId } : {}) };
}

const tooMany = (sheets: number) => ({
  where: { parameter: 'sheet' },
  got: `${sheets} sheets`,
  expected: `at most ${MOST_SHEETS} at once`,
  fix: 'name the fields of one farm at a time',
});
