import { type Person, type Problem, type Program, type Result, refuse } from '@duskwatch/core';
import type { Appended, Store, StoredRevision } from '@duskwatch/store';
import { ChangeJudge } from './change-judge.ts';
import { mayWrite } from './permission.ts';
import { sightOf } from './visible.ts';

/** Says again what a revision said; null when there is none that the person may see. */
export async function restoreRevision(
  store: Pick<Store, 'revisions' | 'history' | 'restore'>,
  program: Program,
  person: Person,
  revisionId: string,
  at: string,
): Promise<Result<Appended> | null> {
  const [wanted] = await store.revisions([revisionId]);
  if (!wanted || sightOf(person, program).revision(wanted) === null) return null;
  const history = await store.history(wanted.recordId);
  const problems = faultsOfSayingAgain(program, person, wanted, history);
  return problems.length > 0 ? refuse(...problems) : store.restore(revisionId, { author: person.id, at });
}

/** Why a person may not make `wanted` the last word on its record, or what would be wrong then. */
export function faultsOfSayingAgain(
  program: Program,
  person: Person,
  wanted: StoredRevision,
  history: readonly StoredRevision[],
): Problem[] {
  const before = history.map((said) => said.value).filter((value) => value !== null);
  const forbidden = mayWrite(person, wanted.kind, before, wanted.value, program);
  if (forbidden) return [forbidden];
  const held = history.find((said) => said.standing === 'current');
  return new ChangeJudge(program).change(wanted.kind, held?.key ?? null, wanted.value);
}
