import { type Problem, type Result, refuse } from '@duskwatch/core';
import { append } from './append.ts';
import { faultsOf, normalInstant } from './prepare.ts';
import type { Context, Procedure } from './procedure.ts';
import { byRecord, byRevision } from './queries.ts';
import { readRecord } from './standing.ts';
import type { Appended } from './types.ts';
import { uuidv7 } from './uuid.ts';

export function* restore(
  context: Context,
  revisionId: string,
  by: { readonly author: string; readonly at: string },
): Procedure<Result<Appended>> {
  const [wanted] = yield* byRevision(context, [revisionId]);
  const problems = faultsOf(by);
  if (!wanted) problems.push(unknownRevision(revisionId));
  if (!wanted || problems.length > 0) return refuse(...problems);

  const record = (yield* byRecord(context, [wanted.record_id])).get(wanted.record_id)!;
  const { head, rivals } = readRecord(record);
  const settles = rivals.map((said) => said.revisionId);
  return yield* append(context, [
    {
      ...wanted,
      revision_id: uuidv7(),
      base_revision_id: head.revisionId,
      settles: settles.length > 0 ? JSON.stringify(settles) : null,
      author: by.author,
      at: normalInstant(by.at)!,
      received_at: null,
      skew_ms: null,
    },
  ]);
}

const unknownRevision = (got: string): Problem => ({
  where: { column: 'revisionId' },
  got,
  expected: 'a revision of this program',
  fix: 'Choose one from the history of the record.',
});
