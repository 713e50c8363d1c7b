import { type Entry, type Person, questionsSchema } from '@duskwatch/core';
import { z } from 'zod';
import { FIELD_WORKERS, personOf } from '../people/guard.ts';
import type { RecordsContext, RecordsRoute } from '../records/context.ts';
import { asOf, date, problems } from '../schemas/common.ts';

export const questionsRoute: RecordsRoute = (app, context) => {
  app.get(
    '/api/questions',
    {
      config: { allow: FIELD_WORKERS },
      schema: {
        operationId: 'listQuestions',
        tags: ['questions'],
        summary: "What somebody should look at again in the season's records, and what was answered",
        querystring: asOf,
        response: { 200: questionsSchema, 400: problems },
      },
    },
    async (request) => questionsOf(context, personOf(request), await context.dayFor(request.query.on)),
  );

  app.get(
    '/api/questions/open',
    {
      config: { allow: FIELD_WORKERS },
      schema: {
        operationId: 'countOpenQuestions',
        tags: ['questions'],
        summary: 'How many questions are open',
        querystring: asOf,
        response: { 200: z.object({ on: date, open: z.int() }), 400: problems },
      },
    },
    async (request) => {
      const { on, open } = await questionsOf(context, personOf(request), await context.dayFor(request.query.on));
      return { on, open: open.length };
    },
  );
};

function questionsOf({ reader, store, work }: RecordsContext, person: Person, on: string) {
  return reader.kept(person, `questions ${on}`, async (program) =>
    work.run({ kind: 'questions', on, entries: await enteredOnce(store) }, program),
  );
}

/** Checks as somebody first sent them. What was imported at the database has one instant for all and tells nothing. */
async function enteredOnce(store: RecordsContext['store']): Promise<Entry[]> {
  const names = new Map((await store.accounts.people()).map(({ id, name }) => [id, name]));
  return (await store.current('checks'))
    .filter(({ arrival, baseRevisionId }) => arrival !== null && baseRevisionId === null)
    .map((check) => ({ check: check.value, author: names.get(check.author) ?? check.author, at: check.at }));
}
