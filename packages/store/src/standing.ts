/**
 * Which of the things said about a record holds.
 *
 * Everything here is a function of the set of revisions alone, never of the order in which they arrived, so that
 * two stores with the same revisions agree.
 */
import type { RevisionStanding, StoredKind } from './types.ts';

/** The part of a revision that decides its standing. */
export interface JudgedRevision {
  readonly revisionId: string;
  readonly recordId: string;
  readonly kind: StoredKind;
  readonly key: string;
  readonly baseRevisionId: string | null;
  readonly settles: readonly string[];
  /** The instant it counts from, in UTC with milliseconds. */
  readonly at: string;
  /** The value as canonical JSON; null: removed. */
  readonly json: string | null;
}

/** Two people who make the same change to the same base have said one thing, and are not at odds. */
const step = (said: JudgedRevision): string => `${said.baseRevisionId} ${said.json}`;

/** A revision with the instant it counts from, in milliseconds. */
interface Timed<T> {
  readonly said: T;
  readonly ms: number;
}

const later = (a: Timed<JudgedRevision>, b: Timed<JudgedRevision>): number =>
  a.ms - b.ms || compare(a.said.at, b.said.at) || compare(a.said.revisionId, b.said.revisionId);

const compare = (a: string, b: string): number => (a < b ? -1 : Number(a > b));

const latest = <T extends JudgedRevision>(all: readonly Timed<T>[]): Timed<T> =>
  all.reduce((newest, timed) => (later(newest, timed) < 0 ? timed : newest));

/** Of one record: the latest revision that nothing builds upon, and those at odds with it, oldest first. */
export function readRecord<T extends JudgedRevision>(revisions: readonly T[]): { head: T; headMs: number; rivals: T[] } {
  const byId = new Map(revisions.map((said) => [said.revisionId, said]));
  const parentsOf = (said: T): T[] =>
    [said.baseRevisionId, ...said.settles].flatMap((id) => (id === null ? [] : (byId.get(id) ?? [])));
  const builtUpon = new Set(revisions.flatMap(parentsOf).map(step));

  // Who builds on a revision writes after it, whatever the two clocks say.
  const times = new Map<T, number>();
  const timeOf = (said: T): number => {
    const known = times.get(said);
    if (known !== undefined) return known;
    times.set(said, Date.parse(said.at));
    const ms = Math.max(Date.parse(said.at), ...parentsOf(said).map((parent) => timeOf(parent) + 1));
    times.set(said, ms);
    return ms;
  };

  const timed = revisions.map((said) => ({ said, ms: timeOf(said) }));
  const open = timed.filter(({ said }) => !builtUpon.has(step(said)));
  const head = latest(open.length > 0 ? open : timed);
  const rivals = open.filter(({ said }) => step(said) !== step(head.said)).sort(later);
  return { head: head.said, headMs: head.ms, rivals: rivals.map(({ said }) => said) };
}

/** `kind` and key together: what at most one current record may hold. */
export const claimOf = (said: Pick<JudgedRevision, 'kind' | 'key'>): string => `${said.kind}|${said.key}`;

/**
 * The standing of every revision of the records given, but for heads whose claim is not among `claims`: those
 * depend on records that are not here. A removed record claims nothing.
 */
export function deriveStandings(
  records: Iterable<readonly JudgedRevision[]>,
  claims: ReadonlySet<string>,
): Map<string, RevisionStanding> {
  const standings = new Map<string, RevisionStanding>();
  const claimants = new Map<string, Timed<JudgedRevision>[]>();
  for (const revisions of records) {
    const { head, headMs, rivals } = readRecord(revisions);
    for (const said of revisions) standings.set(said.revisionId, 'past');
    for (const said of rivals) standings.set(said.revisionId, 'rival');
    standings.delete(head.revisionId);
    if (head.json === null) standings.set(head.revisionId, 'removed');
    else if (claims.has(claimOf(head))) {
      claimants.set(claimOf(head), [...(claimants.get(claimOf(head)) ?? []), { said: head, ms: headMs }]);
    }
  }
  for (const heads of claimants.values()) {
    const holder = latest(heads);
    for (const head of heads) standings.set(head.said.revisionId, head === holder ? 'current' : 'rival');
  }
  return standings;
}
