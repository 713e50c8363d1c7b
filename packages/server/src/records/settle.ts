/** A person decides which of the things said about a record holds. */
import { type Person, type Problem, type Program, type Result, refuse } from '@duskwatch/core';
import { type Appended, type Conflict, type Revision, type Store, type StoredRevision, uuidv7 } from '@duskwatch/store';
import { mayWrite } from './permission.ts';
import { faultsOfSayingAgain } from './restore.ts';

export interface Settlement {
  readonly conflict: Conflict;
  readonly keep: StoredRevision;
}

/**
 * Keeps one side: it becomes the last word on its record, over all its rivals; other records that claim the same key
 * are removed. All in one step, and all of it in the history, from which any side can be restored.
 */
export async function settle(
  store: Pick<Store, 'append' | 'history'>,
  program: Program,
  person: Person,
  { conflict, keep }: Settlement,
  at: string,
): Promise<Result<Appended>> {
  const sides = [conflict.held, ...conflict.rivals];
  const ofRecord = sides.filter((said) => said.recordId === keep.recordId);
  const ofOthers = sides.filter((said) => said.recordId !== keep.recordId);
  const problems: Problem[] = faultsOfSayingAgain(program, person, keep, await store.history(keep.recordId));
  for (const said of ofOthers) {
    const forbidden = mayWrite(
      person,
      said.kind,
      [said.value].filter((value) => value !== null),
      null,
      program,
    );
    if (forbidden) problems.push(forbidden);
  }
  if (problems.length > 0) return refuse(...problems);

  const say = (over: StoredRevision, value: Revision['value'], settles: readonly string[] = []): Revision => ({
    revisionId: uuidv7(),
    recordId: over.recordId,
    kind: over.kind,
    baseRevisionId: over.revisionId,
    ...(settles.length > 0 ? { settles } : {}),
    author: person.id,
    at,
    value,
  });
  // Of one record the held revision is the one to build on; where another record holds the key, it is the side kept.
  const over = ofRecord.find((said) => said.revisionId === conflict.held.revisionId) ?? keep;
  const rivals = ofRecord.filter((said) => said !== over).map((said) => said.revisionId);
  return store.append([...ofOthers.map((said) => say(said, null)), say(over, keep.value, rivals)]);
}
