import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Program } from '@duskwatch/core';
import { COORDINATOR, personOf, WITH_PLACES } from '../people/guard.ts';
import { DATABASE_FILE, PHOTOS, SUMS_FILE, writeBackup } from '../records/backup.ts';
import type { RecordsRoute } from '../records/context.ts';
import { photoPath, photosIn } from '../records/photos.ts';
import { type ZippedFile, zipped } from '../records/zipped.ts';
import { bytes, problems, streamed } from '../schemas/common.ts';

const ZIP = streamed('A zip.', 'application/zip');
const XLSX_TYPE = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

/** The program as files to keep elsewhere: what a person may read as tables, and for a coordinator all there is. */
export const downloadsRoute: RecordsRoute = (app, { reader, store, photoFolder, dayFor }) => {
  app.get(
    '/api/program.zip',
    {
      config: { allow: WITH_PLACES },
      schema: {
        operationId: 'exportFolder',
        tags: ['program'],
        summary: 'The records that the person may read, as a zipped folder of CSV tables with their description (Data Package)',
        response: { 200: ZIP },
      },
    },
    async (request, reply) => {
      const { programFiles } = await import('@duskwatch/exchange');
      const program = await reader.program(personOf(request));
      const files = [...programFiles(program)].map(([name, text]): ZippedFile => ({ name, from: { text }, packed: true }));
      return reply
        .type('application/zip')
        .header('content-disposition', await named(program, 'zip'))
        .send(zipped(files));
    },
  );

  app.get(
    '/api/program.xlsx',
    {
      config: { allow: WITH_PLACES },
      schema: {
        operationId: 'exportWorkbook',
        tags: ['program'],
        summary: 'The records that the person may read, as a workbook: a sheet for each table and one that describes them',
        response: { 200: bytes('A workbook.', XLSX_TYPE) },
      },
    },
    async (request, reply) => {
      const { programWorkbook } = await import('@duskwatch/exchange');
      const program = await reader.program(personOf(request));
      const workbook = Buffer.from(await programWorkbook(program));
      return reply
        .type(XLSX_TYPE)
        .header('content-disposition', await named(program, 'xlsx'))
        .send(workbook);
    },
  );

  app.get(
    '/api/backup.zip',
    {
      config: { allow: COORDINATOR },
      schema: {
        operationId: 'backUp',
        tags: ['program'],
        summary: 'A backup: every record with its history, people and photos, checked before and after it was copied',
        response: { 200: ZIP, 500: problems },
      },
    },
    async (_request, reply) => {
      const work = await mkdtemp(join(tmpdir(), 'duskwatch-backup-'));
      const clear = () => rm(work, { recursive: true, force: true });
      try {
        const folder = join(work, 'backup');
        const written = await writeBackup(store, photoFolder, folder);
        if (!written.ok) {
          await clear();
          return reply.code(500).send({ problems: [...written.problems] });
        }
        const photos = await photosIn(join(folder, PHOTOS)).names();
        const files: ZippedFile[] = [
          { name: DATABASE_FILE, from: { path: join(folder, DATABASE_FILE) }, packed: true },
          { name: SUMS_FILE, from: { path: join(folder, SUMS_FILE) }, packed: true },
          ...photos.map((photo) => ({
            name: `${PHOTOS}/${photo.slice(0, 2)}/${photo}`,
            from: { path: join(folder, PHOTOS, photoPath(photo)) },
            packed: false,
          })),
        ];
        const stream = zipped(files);
        // Sent, broken off or failed: the copy goes.
        stream.once('close', () => void clear());
        const name = await named(await reader.everything(), 'zip', 'backup-');
        return reply.type('application/zip').header('content-disposition', name).send(stream);
      } catch (error) {
        await clear();
        throw error;
      }
    },
  );

  /** `duskwatch-ombrel-vale-2026-07-15.zip` */
  async function named({ settings }: Program, ending: string, what = ''): Promise<string> {
    const name = settings.name
      .normalize('NFKD')
      .replace(/\p{M}/gu, '')
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-|-$/g, '')
      .slice(0, 40);
    return `attachment; filename="duskwatch-${what}${name || 'program'}-${await dayFor(undefined)}.${ending}"`;
  }
};
