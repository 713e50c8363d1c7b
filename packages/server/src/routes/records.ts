import { z } from 'zod';
import { personOf, WITH_PLACES } from '../people/guard.ts';
import type { RecordsRoute } from '../records/context.ts';
import { namer } from '../records/names.ts';
import { storedKind } from '../records/revision.ts';
import { sightOf } from '../records/visible.ts';
import { problems } from '../schemas/common.ts';
import { storedRevision } from '../schemas/revisions.ts';

const CHANGES = 1_000;

export const recordsRoute: RecordsRoute = (app, { reader, store }) => {
  app.get(
    '/api/records/:kind',
    {
      config: { allow: WITH_PLACES },
      schema: {
        operationId: 'listRecords',
        tags: ['records'],
        summary: 'Records as they now are, each with the revision that an edit builds on',
        params: z.object({ kind: storedKind }),
        response: { 200: z.array(storedRevision), 400: problems },
      },
    },
    async (request) => {
      const sight = sightOf(personOf(request), await reader.everything());
      const records = await store.current(request.params.kind);
      return records
        .map(sight.revision)
        .filter((seen) => seen !== null)
        .map(await namer(store));
    },
  );

  app.get(
    '/api/records/:kind/:key/history',
    {
      config: { allow: WITH_PLACES },
      schema: {
        operationId: 'getRecordHistory',
        tags: ['records'],
        summary: 'All that was ever said of what has this natural key, oldest first',
        params: z.object({ kind: storedKind, key: z.string().describe('The natural key: ids and days with | between.') }),
        response: { 200: z.array(storedRevision), 400: problems },
      },
    },
    async (request) => {
      const sight = sightOf(personOf(request), await reader.everything());
      const { kind, key } = request.params;
      const said = await store.history({ kind, key });
      return said
        .map(sight.revision)
        .filter((seen) => seen !== null)
        .map(await namer(store));
    },
  );

  app.get(
    '/api/changes',
    {
      config: { allow: WITH_PLACES },
      schema: {
        operationId: 'listChanges',
        tags: ['records'],
        summary: 'What arrived after a sequence number, in order of arrival',
        querystring: z.object({
          since: z.coerce.number().int().min(0).default(0),
          limit: z.coerce.number().int().min(1).max(CHANGES).default(CHANGES),
        }),
        response: {
          200: z.object({
            epoch: z.string().describe('When it is another than before, begin again from 0.'),
            last: z.int().describe('Ask for what came since this next time.'),
            more: z.boolean(),
            revisions: z.array(storedRevision),
          }),
          400: problems,
        },
      },
    },
    async (request) => {
      const { since, limit } = request.query;
      const sight = sightOf(personOf(request), await reader.everything());
      const page = await store.changesSince(since, limit);
      const revisions = page
        .map(sight.revision)
        .filter((seen) => seen !== null)
        .map(await namer(store));
      return { epoch: await store.epoch(), last: page.at(-1)?.sequence ?? since, more: page.length === limit, revisions };
    },
  );
};
