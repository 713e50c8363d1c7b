/** What this phone has written, put together from the outbox: one line of revisions for each record. */
import { type CheckRecord, type IsoDay, type LureRecord, naturalKey, type SkipRecord, type StageRecord } from '@duskwatch/core';
import { newRevision } from '../../sync/new-revision.ts';
import type { Base, NewRevision, OutboxEntry, ValueOf } from '../../sync/types.ts';

/** The kinds that somebody in the field writes. */
export type RoundKind = 'checks' | 'skips' | 'lures' | 'stages' | 'samples' | 'decisions';

export interface Written<K extends RoundKind = RoundKind> {
  readonly kind: K;
  readonly recordId: string;
  readonly key: string;
  /** As it was last said here; null: taken back. */
  readonly value: ValueOf<K> | null;
  /** What the record last was, also when it is taken back. */
  readonly last: ValueOf<K>;
  /** Place in the outbox of its first revision. */
  readonly firstPlace: number;
  readonly entries: readonly OutboxEntry<K>[];
}

const KINDS: readonly string[] = ['checks', 'skips', 'lures', 'stages', 'samples', 'decisions'] satisfies RoundKind[];

/** The day that a record of a kind tells of. */
const DAY = {
  checks: 'checkedOn',
  skips: 'skippedOn',
  lures: 'placedOn',
  stages: 'observedOn',
  samples: 'sampledOn',
  decisions: 'decidedOn',
} as const satisfies { readonly [K in RoundKind]: keyof ValueOf<K> };

export const dayOf = ({ kind, last }: Pick<Written, 'kind' | 'last'>): IsoDay =>
  (last as unknown as Readonly<Record<string, IsoDay>>)[DAY[kind]]!;

/** The record as it would be on another day. */
export const onDay = ({ kind, last }: Pick<Written, 'kind' | 'last'>, day: IsoDay): WantedRecord =>
  ({ kind, value: { ...last, [DAY[kind]]: day } }) as WantedRecord;

/** Records in the order in which they were first written. */
export function writtenRecords(entries: readonly OutboxEntry[]): Written[] {
  const lines = new Map<string, OutboxEntry<RoundKind>[]>();
  for (const entry of entries) {
    if (!KINDS.includes(entry.revision.kind)) continue;
    const line = lines.get(entry.revision.recordId) ?? [];
    lines.set(entry.revision.recordId, [...line, entry as OutboxEntry<RoundKind>]);
  }
  return [...lines.values()].flatMap((line) => {
    const last = line.findLast(({ revision }) => revision.value !== null)?.revision.value;
    if (!last) return [];
    const { kind, recordId, value } = line.at(-1)!.revision;
    return [{ kind, recordId, key: keyOf(kind, last), value, last, firstPlace: line[0]!.place, entries: line }];
  });
}

const keyOf = (kind: RoundKind, value: ValueOf<RoundKind>) => naturalKey[kind](value as never);

export const ofKind = <K extends RoundKind>(written: readonly Written[], kind: K) =>
  written.filter((each): each is Written & Written<K> => each.kind === kind);

/** What stands, as the core's round wants it. */
export const standing = (written: readonly Written[]) => ({
  checks: valuesOf(written, 'checks') as CheckRecord[],
  lures: valuesOf(written, 'lures') as LureRecord[],
  stages: valuesOf(written, 'stages') as StageRecord[],
  skips: valuesOf(written, 'skips') as SkipRecord[],
});

const valuesOf = <K extends RoundKind>(written: readonly Written[], kind: K) =>
  ofKind(written, kind).flatMap(({ value }) => (value === null ? [] : [value]));

export const isRefused = (written: Written) => written.entries.at(-1)!.state === 'refused';

/** What the next revision of a record builds on: the newest that the server did not refuse. */
function baseOf(written: Written): Base | null {
  const known = written.entries.findLast((entry) => entry.state !== 'refused');
  return known ? { revisionId: known.revision.revisionId, recordId: written.recordId } : null;
}

export interface WantedRecord<K extends RoundKind = RoundKind> {
  readonly kind: K;
  readonly value: ValueOf<K>;
}

export interface PlannedRevisions {
  readonly revisions: readonly NewRevision[];
  /** Refused revisions that the plan puts right, to be given up once it is kept. */
  readonly replaces: readonly string[];
}

/**
 * The revisions after which `wanted` is what this phone says about the records that `before` held: new records, edits
 * of what was said before, removals of what is no longer said. Nothing for what stays as it is.
 */
export function revisionsFor(
  wanted: readonly WantedRecord[],
  before: readonly Written[],
  written: readonly Written[],
  nowMs: number,
): PlannedRevisions {
  const revisions: NewRevision[] = [];
  const replaces: string[] = [];
  const say = (earlier: Written | undefined, kind: RoundKind, value: ValueOf<RoundKind> | null) => {
    const wasRefused = earlier !== undefined && isRefused(earlier);
    if (earlier && !wasRefused && same(earlier.value, value)) return;
    const base = earlier ? baseOf(earlier) : null;
    for (const entry of earlier?.entries ?? []) if (entry.state === 'refused') replaces.push(entry.revision.revisionId);
    if (base !== null || value !== null) revisions.push(newRevision(kind, value as never, base, nowMs));
  };
  const said = new Set<Written>();
  for (const { kind, value } of wanted) {
    const key = keyOf(kind, value);
    const earlier =
      before.find((each) => each.kind === kind && each.key === key) ??
      written.findLast((each) => each.kind === kind && each.key === key);
    if (earlier) said.add(earlier);
    say(earlier, kind, value);
  }
  for (const each of before) if (!said.has(each) && each.value !== null) say(each, each.kind, null);
  return { revisions, replaces };
}

/**
 * The revisions that take back what a plan said: each record is again what it was before, and one that was new is removed.
 * @param was what was written when the plan was made
 */
export function revisionsBack(
  plan: PlannedRevisions,
  was: readonly Written[],
  written: readonly Written[],
  nowMs: number,
): PlannedRevisions {
  const touched = new Set(plan.revisions.map(({ recordId }) => recordId));
  const wanted = was.flatMap(({ recordId, kind, value }) => (touched.has(recordId) && value !== null ? [{ kind, value }] : []));
  return revisionsFor(
    wanted,
    written.filter(({ recordId }) => touched.has(recordId)),
    written,
    nowMs,
  );
}

const same = (a: object | null, b: object | null) => a === b || (a !== null && b !== null && sorted(a) === sorted(b));
/** Null and left out say the same. */
const sorted = (value: object) =>
  JSON.stringify(
    Object.entries(value)
      .filter(([, said]) => said !== null)
      .sort(([a], [b]) => (a < b ? -1 : 1)),
  );
