import type { Conflict } from '@duskwatch/store';
import { z } from 'zod';
import { EVERY_ROLE, personOf, WITH_PLACES } from '../people/guard.ts';
import { refuse } from '../problems.ts';
import { acceptRevisions } from '../records/accept.ts';
import type { RecordsRoute } from '../records/context.ts';
import { namer } from '../records/names.ts';
import { restoreRevision } from '../records/restore.ts';
import { sightOf } from '../records/visible.ts';
import { problems } from '../schemas/common.ts';
import { conflict, elsewhere, offer, receipt } from '../schemas/revisions.ts';

/** A thousand checks with the longest notes there are. */
const BODY_BYTES = 8 * 1024 * 1024;

export const revisionsRoute: RecordsRoute = (app, { reader, store, inTurn, now }) => {
  app.post(
    '/api/revisions',
    {
      bodyLimit: BODY_BYTES,
      // Who may write what is said of each revision, so that one who lost a right mid-way learns what arrived before.
      config: { allow: EVERY_ROLE },
      schema: {
        operationId: 'writeRevisions',
        tags: ['records'],
        summary: 'Write records: each revision is kept or refused by itself, and sending it again is harmless',
        body: offer,
        response: { 200: receipt, 400: problems, 409: elsewhere },
      },
    },
    async (request, reply) => {
      const { sentAt, person: believed, epoch: knownEpoch, anchor, revisions } = request.body;
      const receivedMs = now();
      const person = personOf(request);
      const epoch = await store.epoch();
      if (believed !== undefined && believed !== person.id) {
        const problem = { where: {}, got: believed, expected: person.id, fix: 'sign in as whoever wrote this' };
        return reply.code(409).send({ reason: 'other-person' as const, epoch, problems: [problem] });
      }
      const lost = anchor != null && (await store.revisions([anchor])).length === 0;
      if (lost || (knownEpoch != null && knownEpoch !== epoch)) {
        const got = lost ? `revision ${anchor}` : `epoch ${knownEpoch}`;
        const problem = { where: {}, got, expected: `epoch ${epoch}`, fix: 'offer again all that was acknowledged' };
        return reply.code(409).send({ reason: 'other-history' as const, epoch, problems: [problem] });
      }
      const skewMs = sentAt === undefined ? null : Date.parse(sentAt) - receivedMs;
      const arrival = { receivedAt: new Date(receivedMs).toISOString(), skewMs };
      const accepted = await inTurn(async () => acceptRevisions(store, await reader.everything(), person, revisions, arrival));
      const { lastSequence: last } = await store.counts();
      return { ...accepted, conflicts: await shown(accepted.conflicts, person), epoch, last, skewMs };
    },
  );

  app.post(
    '/api/revisions/:revisionId/restore',
    {
      config: { allow: WITH_PLACES },
      schema: {
        operationId: 'restoreRevision',
        tags: ['records'],
        summary: 'Say again what an earlier revision said; decides over all rivals of its record',
        params: z.object({ revisionId: z.string() }),
        response: {
          200: z.object({ added: z.array(z.string()), conflicts: z.array(conflict) }),
          400: problems,
          404: problems,
        },
      },
    },
    async (request, reply) => {
      const person = personOf(request);
      const restored = await inTurn(async () =>
        restoreRevision(store, await reader.everything(), person, request.params.revisionId, new Date(now()).toISOString()),
      );
      if (restored === null) {
        return refuse(reply, 404, {
          where: { parameter: 'revisionId' },
          got: request.params.revisionId,
          expected: 'a revision of this program',
          fix: 'take one from the history of a record',
        });
      }
      if (!restored.ok) return refuse(reply, 400, ...restored.problems);
      return { added: restored.value.added, conflicts: await shown(restored.value.conflicts, person) };
    },
  );

  async function shown(conflicts: readonly Conflict[], person: ReturnType<typeof personOf>) {
    if (conflicts.length === 0) return [];
    const sight = sightOf(person, await reader.everything());
    const name = await namer(store);
    return conflicts
      .map(sight.conflict)
      .filter((seen) => seen !== null)
      .map((seen) => ({ ...seen, held: name(seen.held), rivals: seen.rivals.map(name) }));
  }
};
