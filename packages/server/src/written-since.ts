/** A program brought up to date by what was written since it was read, where that is sure to be the same as reading it anew. */
import type { CheckRecord, Program } from '@duskwatch/core';
import { naturalKey } from '@duskwatch/core';
import type { Store, StoredRevision } from '@duskwatch/store';

export interface Updated {
  readonly program: Program;
  /** trap_id of every trap with a check that was written or corrected. */
  readonly touched: ReadonlySet<string>;
}

type History = Pick<Store, 'history'>;

/**
 * The program with the checks of these revisions, or null where it must be read anew: something else than checks was
 * written, something was removed, decided or is disputed, or a record was once under another natural key, so that more
 * may have changed than what the revisions themselves say.
 */
export async function withWritten(
  program: Program,
  revisions: readonly StoredRevision[],
  store: History,
): Promise<Updated | null> {
  const written = new Map<string, CheckRecord>();
  for (const revision of revisions) {
    if (revision.kind !== 'checks' || revision.value === null || (revision.settles ?? []).length > 0) return null;
    if (revision.standing === 'past' && isBuiltUpon(revision, revisions)) continue;
    if (revision.standing !== 'current') return null;
    if (revision.baseRevisionId !== null) {
      const said = await store.history(revision.recordId);
      if (said.some(({ key, standing }) => key !== revision.key || standing === 'rival')) return null;
    }
    written.set(revision.key, revision.value as CheckRecord);
  }
  const touched = new Set([...written.values()].map(({ trapId }) => trapId));
  return { program: { ...program, checks: merged(program.checks, written) }, touched };
}

const isBuiltUpon = ({ revisionId, recordId }: StoredRevision, revisions: readonly StoredRevision[]): boolean =>
  revisions.some((later) => later.baseRevisionId === revisionId && later.recordId === recordId);

/** Checks with those written in the place of their like, or between their neighbours by natural key (UTF-8 bytes). */
function merged(checks: readonly CheckRecord[], written: ReadonlyMap<string, CheckRecord>): CheckRecord[] {
  const fresh = [...written].map(([key, check]) => ({ key: Buffer.from(key), check }));
  fresh.sort((a, b) => Buffer.compare(a.key, b.key));
  const all: CheckRecord[] = [];
  let copied = 0;
  for (const { key, check } of fresh) {
    const place = placeOf(checks, key, copied);
    for (; copied < place; copied++) all.push(checks[copied]!);
    all.push(check);
    if (place < checks.length && keyOf(checks[place]!).equals(key)) copied++;
  }
  for (; copied < checks.length; copied++) all.push(checks[copied]!);
  return all;
}

const keyOf = (check: CheckRecord): Buffer => Buffer.from(naturalKey.checks(check));

/** The first place from `low` on whose key is not before `key`. */
function placeOf(checks: readonly CheckRecord[], key: Buffer, from: number): number {
  let [low, high] = [from, checks.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (Buffer.compare(keyOf(checks[middle]!), key) < 0) low = middle + 1;
    else high = middle;
  }
  return low;
}
