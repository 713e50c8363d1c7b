import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import { openStore, uuidv7 } from '@duskwatch/store';
import { z } from 'zod';
import { COORDINATOR } from '../people/guard.ts';
import { refuse } from '../problems.ts';
import { DATABASE_FILE, readBackup } from '../records/backup.ts';
import type { RecordsRoute } from '../records/context.ts';
import { unzipBackup } from '../records/unzip-backup.ts';
import { problems } from '../schemas/common.ts';

const shown = z.object({
  restoreId: z.string().describe('To be said again to put it in the place of the program.'),
  name: z.string().describe('Of the program that the backup holds.'),
  revisions: z.int(),
  newest: z.iso.datetime().nullable().describe('When the last thing in it was said; null: nothing was.'),
  people: z.int(),
  photos: z.int(),
  missing: z.int().describe('Photos that its records name and that it does not hold.'),
});

/** The folder of a restore that was looked at and not confirmed yet. */
const PENDING = 'restore-';

/** A backup brought back by a coordinator: looked at beside the program, and put in its place only when confirmed. */
export const restoringRoute: RecordsRoute = (app, { restoring }) => {
  let pending: string | null = null;
  const clear = async () => {
    if (pending !== null && restoring) await rm(join(restoring.folder, `${PENDING}${pending}`), { recursive: true, force: true });
    pending = null;
  };
  app.addHook('onClose', clear);
  // As it comes: a backup may be larger than memory.
  app.addContentTypeParser('application/zip', (_request, payload, done) => done(null, payload));

  app.post(
    '/api/restoring',
    {
      config: { allow: COORDINATOR },
      schema: {
        operationId: 'lookAtBackup',
        tags: ['program'],
        summary: 'Look at the zip of a backup before it takes the place of the program; nothing changes yet',
        consumes: ['application/zip'],
        response: { 200: shown, 409: problems },
      },
    },
    async (request, reply) => {
      if (restoring === null) return refuse(reply, 409, elsewhere);
      await clear();
      const restoreId = uuidv7();
      pending = restoreId;
      const work = join(restoring.folder, `${PENDING}${restoreId}`);
      try {
        const unzipped = await unzipBackup(request.body as AsyncIterable<Uint8Array>, join(work, 'backup'));
        if (!unzipped.ok) {
          await clear();
          return refuse(reply, 409, ...unzipped.problems);
        }
        const kept = await readBackup(join(work, 'backup'), join(work, 'data'));
        if (!kept.ok) {
          await clear();
          return refuse(reply, 409, ...kept.problems.slice(0, MOST_NAMED));
        }
        await rm(join(work, 'backup'), { recursive: true, force: true });
        const told = await toldBy(join(work, 'data', DATABASE_FILE));
        const { revisions, photos, missing } = kept.value;
        return { restoreId, ...told, revisions, photos, missing: missing.length };
      } catch (error) {
        await clear();
        throw error;
      }
    },
  );

  app.post(
    '/api/restoring/:restoreId',
    {
      config: { allow: COORDINATOR },
      schema: {
        operationId: 'restoreBackup',
        tags: ['program'],
        summary: 'Put the backup that was looked at in the place of the program, which is set aside; the server then begins anew',
        params: z.object({ restoreId: z.string() }),
        response: { 202: z.object({ aside: z.string().describe('Where the program is set aside.') }), 409: problems },
      },
    },
    async (request, reply) => {
      const { restoreId } = request.params;
      if (restoring === null) return refuse(reply, 409, elsewhere);
      if (pending === null || restoreId !== pending) return refuse(reply, 409, unknown(restoreId));
      pending = null;
      const { aside, swap } = restoring.prepare(join(restoring.folder, `${PENDING}${restoreId}`, 'data'));
      // The answer goes out before the server does.
      reply.raw.once('close', () => void swap());
      return reply.code(202).send({ aside });
    },
  );

  app.delete(
    '/api/restoring/:restoreId',
    {
      config: { allow: COORDINATOR },
      schema: {
        operationId: 'dropBackup',
        tags: ['program'],
        summary: 'Forget a backup that was looked at',
        params: z.object({ restoreId: z.string() }),
        response: { 204: z.null() },
      },
    },
    async (request, reply) => {
      if (request.params.restoreId === pending) await clear();
      return reply.code(204).send(null);
    },
  );
};

const MOST_NAMED = 20;

/** What the database says of itself, opened as any other is: an older one is brought up to date by it. */
async function toldBy(file: string): Promise<{ name: string; newest: string | null; people: number }> {
  const store = await openStore(file);
  try {
    const { settings } = await store.loadProgram();
    const { lastSequence } = await store.counts();
    const [last] = lastSequence === 0 ? [] : await store.changesSince(lastSequence - 1, 1);
    return { name: settings.name, newest: last?.at ?? null, people: (await store.accounts.people()).length };
  } finally {
    await store.close();
  }
}

const elsewhere = {
  where: {},
  got: 'a program in a PostgreSQL database, or a server that keeps no data folder',
  expected: 'a program in a data folder',
  fix: 'Have whoever runs the server restore it there, with the tools of that database.',
};

const unknown = (got: string) => ({
  where: { parameter: 'restoreId' },
  got,
  expected: 'the backup that was looked at last',
  fix: 'Choose the file again.',
});
