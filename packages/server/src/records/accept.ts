/** Taking in what people send: each revision is kept or refused by itself. */
import { naturalKey, type Person, type Problem, type Program } from '@duskwatch/core';
import type { Arrival, Conflict, Revision, Store, StoredKind, StoredRevision, ValueOf } from '@duskwatch/store';
import { ChangeJudge } from './change-judge.ts';
import { futureDay } from './future-day.ts';
import { mayWrite } from './permission.ts';
import { readRevision } from './revision.ts';

export type WritableStore = Pick<Store, 'append' | 'revisions' | 'history'>;

interface Refusal {
  /** As sent; null when it had none. */
  readonly revisionId: string | null;
  readonly problems: readonly Problem[];
}

export interface Accepted {
  /** Revision ids, in the order sent. */
  readonly added: readonly string[];
  readonly alreadyThere: readonly string[];
  readonly refused: readonly Refusal[];
  /** Open conflicts that touch what was sent. */
  readonly conflicts: readonly Conflict[];
}

/**
 * Keeps what is sound of `sent`, in order. What is there already is never judged again: that the phone did not hear
 * of it is no reason to refuse it now. The rest is judged against the program as it would be after those before it.
 */
export async function acceptRevisions(
  store: WritableStore,
  program: Program,
  person: Person,
  sent: readonly unknown[],
  arrival: Arrival,
): Promise<Accepted> {
  const refused: Refusal[] = [];
  const readable: Revision[] = [];
  for (const { revisionId, revision, problems } of sent.map(readRevision)) {
    if (revision) readable.push({ ...revision, author: person.id });
    else refused.push({ revisionId, problems });
  }
  const known = await knownTo(store, readable);
  const again = await appendEach(
    store,
    readable.filter(({ revisionId }) => known.has(revisionId)),
    arrival,
  );
  const judge = judgeFor(store, program, person, known, Date.parse(arrival.receivedAt));
  const sound: Revision[] = [];
  for (const revision of readable.filter(({ revisionId }) => !known.has(revisionId))) {
    const problems = await judge(revision);
    if (problems.length === 0) sound.push(revision);
    else refused.push({ revisionId: revision.revisionId, problems });
  }
  const fresh = await appendEach(store, sound, arrival);
  const conflicts = new Map([...again.conflicts, ...fresh.conflicts].map((conflict) => [conflict.held.revisionId, conflict]));
  return {
    added: fresh.added,
    alreadyThere: [...again.alreadyThere, ...fresh.alreadyThere],
    refused: [...refused, ...again.refused, ...fresh.refused],
    conflicts: [...conflicts.values()],
  };
}

/** Those of the revisions, and of what they build on, that the store has. */
async function knownTo(store: WritableStore, revisions: readonly Revision[]): Promise<Map<string, StoredRevision>> {
  const ids = new Set(
    revisions.flatMap(({ revisionId, baseRevisionId }) => [revisionId, ...(baseRevisionId ? [baseRevisionId] : [])]),
  );
  return new Map((await store.revisions([...ids])).map((stored) => [stored.revisionId, stored]));
}

/** What is wrong with a revision, given those judged and found sound before it. */
function judgeFor(
  store: WritableStore,
  program: Program,
  person: Person,
  known: ReadonlyMap<string, StoredRevision>,
  nowMs: number,
) {
  const judge = new ChangeJudge(program);
  const keys = new Map<string, string>();
  return async (revision: Revision): Promise<Problem[]> => {
    const { revisionId, recordId, kind, baseRevisionId, value } = revision;
    // Only a grower's right hangs on what a record said before: whoever names a record may change all of it.
    const before = person.role === 'grower' ? (await store.history(recordId)).map((said) => said.value) : [];
    const forbidden = mayWrite(
      person,
      kind,
      before.filter((said) => said !== null),
      value,
      program,
    );
    if (forbidden) return [forbidden];
    const future = futureDay(kind, value, nowMs);
    if (future) return [future];
    const baseKey = baseRevisionId === null ? null : (keys.get(baseRevisionId) ?? known.get(baseRevisionId)?.key ?? null);
    const problems = judge.change(kind, baseKey, value);
    if (problems.length === 0) keys.set(revisionId, value === null ? (baseKey ?? '') : keyOf(kind, value));
    return problems;
  };
}

const keyOf = (kind: StoredKind, value: ValueOf<StoredKind>): string =>
  kind === 'settings' ? kind : (naturalKey[kind] as (record: unknown) => string)(value);

/** Appends all at once where the store takes them, else by halves until what it will not take stands alone. */
async function appendEach(store: WritableStore, revisions: readonly Revision[], arrival: Arrival): Promise<Accepted> {
  if (revisions.length === 0) return { added: [], alreadyThere: [], refused: [], conflicts: [] };
  const appended = await store.append(revisions, arrival);
  if (appended.ok) return { ...appended.value, refused: [] };
  if (revisions.length === 1) {
    const refusal = { revisionId: revisions[0]!.revisionId, problems: appended.problems };
    return { added: [], alreadyThere: [], refused: [refusal], conflicts: [] };
  }
  const half = Math.ceil(revisions.length / 2);
  const first = await appendEach(store, revisions.slice(0, half), arrival);
  const second = await appendEach(store, revisions.slice(half), arrival);
  return {
    added: [...first.added, ...second.added],
    alreadyThere: [...first.alreadyThere, ...second.alreadyThere],
    refused: [...first.refused, ...second.refused],
    conflicts: [...first.conflicts, ...second.conflicts],
  };
}
