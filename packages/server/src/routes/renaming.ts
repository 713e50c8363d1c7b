import { isTaken, type Problem, type Program, RENAMED_KINDS, type RenamedKind, recordSchemas, renamed } from '@duskwatch/core';
import { type Revision, uuidv7 } from '@duskwatch/store';
import { z } from 'zod';
import { COORDINATOR, personOf } from '../people/guard.ts';
import { refuse } from '../problems.ts';
import type { RecordsRoute } from '../records/context.ts';
import { problems } from '../schemas/common.ts';

const typed = z.string().max(200);

export const renamingRoute: RecordsRoute = (app, { reader, store, inTurn, now }) => {
  app.post(
    '/api/renaming',
    {
      config: { allow: COORDINATOR },
      schema: {
        operationId: 'renameRecord',
        tags: ['records'],
        summary: 'Give a field, a trap or a weather source another identifier, with all that names it, or nothing of it',
        body: z.object({ kind: z.enum(RENAMED_KINDS), from: typed, to: typed }),
        response: { 200: z.object({ renamed: z.int() }), 400: problems, 409: problems },
      },
    },
    async (request, reply) => {
      const { kind, from, to: written } = request.body;
      const to = written.trim();
      const { id } = personOf(request);
      return inTurn(async () => {
        const program = await reader.everything();
        const fault = faultOf(program, kind, from, to);
        if (fault !== null) return refuse(reply, 409, fault);
        const at = new Date(now()).toISOString();
        const changes = renamed(program, kind, from, to);
        const revisions: Revision[] = [];
        for (const each of new Set(changes.map((change) => change.kind))) {
          const held = new Map((await store.current(each)).map((current) => [JSON.stringify(current.value), current]));
          for (const { before, after } of changes.filter((change) => change.kind === each)) {
            const current = held.get(JSON.stringify(before));
            if (current === undefined) throw new Error(`a record of ${each} is not as it was read`);
            const { recordId, revisionId: baseRevisionId } = current;
            revisions.push({ revisionId: uuidv7(), recordId, kind: each, baseRevisionId, author: id, at, value: after });
          }
        }
        const kept = await store.append(revisions, { receivedAt: at, skewMs: 0 });
        return kept.ok ? { renamed: revisions.length } : refuse(reply, 409, ...kept.problems);
      });
    },
  );
};

function faultOf(program: Program, kind: RenamedKind, from: string, to: string): Problem | null {
  const column = { fields: 'field_id', traps: 'trap_id', sources: 'source_id' }[kind];
  const problem = (got: string, expected: string, fix: string): Problem => ({ where: { column }, got, expected, fix });
  if (!isTaken(program, kind, from)) return problem(from, 'one that is there', 'Choose one from the list.');
  const shape = {
    fields: recordSchemas.fields.shape.fieldId,
    traps: recordSchemas.traps.shape.trapId,
    sources: recordSchemas.sources.shape.sourceId,
  };
  if (!shape[kind].safeParse(to).success) return problem(to, '1 to 80 characters, without ; and |', 'Write another short name.');
  if (to !== from && isTaken(program, kind, to))
    return problem(to, 'one that is free', 'Another has this short name: choose another.');
  return null;
}
