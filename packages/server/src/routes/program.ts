import { z } from 'zod';
import { EVERY_ROLE, personOf } from '../people/guard.ts';
import { date } from '../schemas/common.ts';
import type { Route } from './route.ts';

const program = z.object({
  name: z.string(),
  invented: z.boolean().describe('True for demonstration data.'),
  pinnedOn: date.nullable().describe('The day a program that stopped is read on; null: today.'),
  farms: z.array(z.string()),
  crops: z.array(z.string()),
  insects: z.array(z.string()),
});

export const programRoute: Route = (app, { reader }) => {
  app.get(
    '/api/program',
    {
      config: { allow: EVERY_ROLE },
      schema: {
        operationId: 'getProgram',
        tags: ['program'],
        summary: 'What the program is and whom it is about',
        response: { 200: program },
      },
    },
    async (request) => {
      const { settings, fields, traps } = await reader.program(personOf(request));
      return {
        ...settings,
        farms: distinct(fields.map((field) => field.farm)),
        crops: distinct(fields.map((field) => field.crop)),
        insects: distinct(traps.map((trap) => trap.insect)),
      };
    },
  );
};

const distinct = (words: readonly string[]): string[] => [...new Set(words)].sort();
