import { newSources } from '@duskwatch/core';
import { z } from 'zod';
import { COORDINATOR, personOf } from '../people/guard.ts';
import { refuse } from '../problems.ts';
import type { RecordsRoute } from '../records/context.ts';
import { faultsOfImport, faultsOfUndoing, type ImportedRecords, inventedFolder } from '../records/imports.ts';
import { authorNames } from '../records/names.ts';
import { problems } from '../schemas/common.ts';
import { importBody, importDone, keptImport, undone } from '../schemas/imports.ts';

/** As large as a file that may be read. */
const IMPORT_BODY_BYTES = 64 * 1024 * 1024;

export const importsRoute: RecordsRoute = (app, { reader, store, inTurn, now }) => {
  app.get(
    '/api/imports',
    {
      config: { allow: COORDINATOR },
      schema: {
        operationId: 'listImports',
        tags: ['records'],
        summary: 'Files whose records came in together, newest first',
        response: { 200: z.array(keptImport) },
      },
    },
    async () => {
      const nameOf = await authorNames(store);
      const named = <T extends { readonly author: string }>(said: T) => ({ ...said, authorName: nameOf(said.author) });
      return (await store.imports.list()).map((kept) => ({ ...named(kept), undone: kept.undone && named(kept.undone) }));
    },
  );

  app.post(
    '/api/imports',
    {
      config: { allow: COORDINATOR },
      bodyLimit: IMPORT_BODY_BYTES,
      schema: {
        operationId: 'importRecords',
        tags: ['records'],
        summary: 'Bring in the records of a file, all or nothing, as one import that can be taken back',
        body: importBody,
        response: { 200: importDone, 400: problems, 409: problems },
      },
    },
    async (request, reply) => {
      const { records: sent, settings, ...as } = request.body;
      const given: ImportedRecords = Object.fromEntries(Object.entries(sent).filter(([, of]) => of !== undefined));
      const { id } = personOf(request);
      return inTurn(async () => {
        const held = await reader.everything();
        // A program folder says what it says; a sheet says of a source only what nobody has written down.
        const records = as.match === null ? given : { ...given, sources: newSources(given.sources ?? [], held.sources) };
        const faults = settings?.invented ? [inventedFolder] : faultsOfImport(held, records, now());
        if (faults.length > 0) return refuse(reply, 409, ...faults.slice(0, MOST_NAMED));
        const named = settings !== undefined && (await store.current('settings')).length === 0;
        const imported = await store.importProgram(named ? { ...records, settings } : records, {
          author: id,
          at: new Date(now()).toISOString(),
          as,
        });
        return imported.ok ? imported.value : refuse(reply, 409, ...imported.problems.slice(0, MOST_NAMED));
      });
    },
  );

  app.post(
    '/api/imports/:importId/undo',
    {
      config: { allow: COORDINATOR },
      schema: {
        operationId: 'undoImport',
        tags: ['records'],
        summary: 'Take back all that a file brought; refused where people have built on it since',
        params: z.object({ importId: z.string() }),
        response: { 200: undone, 400: problems, 404: problems, 409: problems },
      },
    },
    async (request, reply) => {
      const { importId } = request.params;
      const { id } = personOf(request);
      return inTurn(async () => {
        const revisions = await store.imports.revisions(importId);
        if (revisions === null) {
          return refuse(reply, 404, {
            where: { parameter: 'importId' },
            got: importId,
            expected: 'an import of this program',
            fix: 'Choose one from the list.',
          });
        }
        const faults = faultsOfUndoing(await reader.everything(), revisions);
        if (faults.length > 0) return refuse(reply, 409, ...faults);
        const taken = await store.imports.undo(importId, { author: id, at: new Date(now()).toISOString() });
        return taken.ok ? taken.value : refuse(reply, 409, ...taken.problems);
      });
    },
  );
};

const MOST_NAMED = 100;
