/** What was said of one thing, as a list of versions with what each changed. */
import type { RecordKind } from '@duskwatch/core';
import type { Base, OutboxEntry, StoredKind } from '../../sync/types.ts';
import { keyOfValue } from '../record/naming.ts';
import type { RevisionStanding, StoredVersion } from '../record/queries.ts';

export interface Version {
  readonly said: Pick<StoredVersion, 'revisionId' | 'recordId' | 'kind' | 'baseRevisionId' | 'at' | 'countedAt' | 'value'> & {
    readonly authorName: string | null;
  };
  readonly standing: RevisionStanding;
  /** Written here, and not known to have arrived. */
  readonly notSent: boolean;
  readonly changes: readonly PropertyChange[];
}

export interface PropertyChange {
  readonly property: string;
  readonly before: unknown;
  readonly after: unknown;
}

/** Properties that differ, in the order of the records. */
export function changesBetween(before: object | null, after: object | null): PropertyChange[] {
  const [old, now] = [(before ?? {}) as Record<string, unknown>, (after ?? {}) as Record<string, unknown>];
  return [...new Set([...Object.keys(old), ...Object.keys(now)])]
    .filter((property) => !alike(old[property], now[property]))
    .map((property) => ({ property, before: old[property] ?? null, after: now[property] ?? null }));
}

/** Left out and null say the same. */
const alike = (a: unknown, b: unknown) => JSON.stringify(a ?? null) === JSON.stringify(b ?? null);

/**
 * Newest first. What this machine wrote and the server does not have yet comes on top, and holds.
 * @param said as the server tells it, oldest first
 */
export function versionsOf(
  kind: StoredKind,
  key: string,
  said: readonly StoredVersion[],
  entries: readonly OutboxEntry[],
): Version[] {
  const known = new Set(said.map(({ revisionId }) => revisionId));
  const records = new Set(said.map(({ recordId }) => recordId));
  const own = entries.filter(({ state, revision }) => {
    if (revision.kind !== kind || state === 'refused' || known.has(revision.revisionId)) return false;
    return records.has(revision.recordId) || (revision.value !== null && keyOfValue(kind, revision.value) === key);
  });
  const all = [
    ...said.map((each) => ({ each, standing: each.standing, notSent: false })),
    ...own.map(({ revision }) => ({
      each: { ...revision, authorName: null, countedAt: revision.at },
      standing: 'past' as RevisionStanding,
      notSent: true,
    })),
  ];
  const newestOwn = own.at(-1)?.revision;
  const byId = new Map(all.map(({ each }) => [each.revisionId, each]));
  return all
    .map(({ each, standing, notSent }): Version => {
      const before = each.baseRevisionId === null ? null : (byId.get(each.baseRevisionId)?.value ?? null);
      const last = each.revisionId === newestOwn?.revisionId;
      const now: RevisionStanding = last ? (each.value === null ? 'removed' : 'current') : standing;
      const past: RevisionStanding = newestOwn && !last && now !== 'rival' ? 'past' : now;
      return { said: each, standing: past, notSent, changes: changesBetween(before, each.value) };
    })
    .reverse();
}

/** The version that an edit builds on, or a restored one is said over; null: nothing was said. */
export function headOf(versions: readonly Version[]): Version | null {
  return (
    versions.find(({ standing }) => standing === 'current') ?? versions.find(({ standing }) => standing === 'removed') ?? null
  );
}

/** To say something over what holds, and over what competes with it on the same record. */
export function baseOver(versions: readonly Version[], head: Version): Base {
  const { recordId, revisionId } = head.said;
  const rivals = versions
    .filter(({ standing, said }) => standing === 'rival' && said.recordId === recordId)
    .map(({ said }) => said.revisionId);
  return { recordId, revisionId, ...(rivals.length > 0 ? { rivals } : {}) };
}

export const isRecord = (kind: StoredKind): kind is RecordKind => kind !== 'settings';
