import { z } from 'zod';
import { personOf, WITH_PLACES } from '../people/guard.ts';
import { refuse } from '../problems.ts';
import type { RecordsRoute } from '../records/context.ts';
import { namer } from '../records/names.ts';
import { storedKind } from '../records/revision.ts';
import { settle } from '../records/settle.ts';
import { sightOf } from '../records/visible.ts';
import { problems } from '../schemas/common.ts';
import { conflict } from '../schemas/revisions.ts';

export const conflictsRoute: RecordsRoute = (app, { reader, store, inTurn, now }) => {
  const seenBy = async (person: ReturnType<typeof personOf>) => {
    const sight = sightOf(person, await reader.everything());
    return (await store.conflicts()).map(sight.conflict).filter((seen) => seen !== null);
  };

  app.get(
    '/api/conflicts',
    {
      config: { allow: WITH_PLACES },
      schema: {
        operationId: 'listConflicts',
        tags: ['records'],
        summary: 'What two people said of one thing, for a decision',
        response: { 200: z.array(conflict) },
      },
    },
    async (request) => {
      const name = await namer(store);
      return (await seenBy(personOf(request))).map((seen) => ({ ...seen, held: name(seen.held), rivals: seen.rivals.map(name) }));
    },
  );

  app.post(
    '/api/conflicts/settle',
    {
      config: { allow: WITH_PLACES },
      schema: {
        operationId: 'settleConflict',
        tags: ['records'],
        summary: 'Decide a conflict: one side holds, the others stay in the history',
        body: z.object({ kind: storedKind, key: z.string(), keepRevisionId: z.string() }),
        response: { 200: z.object({ added: z.array(z.string()), open: z.int() }), 400: problems, 404: problems },
      },
    },
    async (request, reply) => {
      const person = personOf(request);
      const { kind, key, keepRevisionId } = request.body;
      const settled = await inTurn(async () => {
        for (const open of await seenBy(person)) {
          const keep = [open.held, ...open.rivals].find((said) => said.revisionId === keepRevisionId);
          if (open.kind !== kind || open.key !== key || !keep) continue;
          return settle(store, await reader.everything(), person, { conflict: open, keep }, new Date(now()).toISOString());
        }
        return null;
      });
      if (settled === null) {
        return refuse(reply, 404, {
          where: { parameter: 'keepRevisionId' },
          got: `${kind} ${key}, ${keepRevisionId}`,
          expected: 'one side of an open conflict',
          fix: 'take one from /api/conflicts; somebody else may have decided already',
        });
      }
      if (!settled.ok) return refuse(reply, 400, ...settled.problems);
      return { added: settled.value.added, open: (await seenBy(person)).length };
    },
  );
};
