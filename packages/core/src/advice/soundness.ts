/** Whether the records leave a doubt about a trap, for the fields that it informs. */

import { type Day, day, formatDay, yearOf } from '../base/day.ts';
import { groupByEach } from '../base/group-by.ts';
import type { TrapOfSeason } from '../catch/nights-of-kind.ts';
import { type NightsSeen, nightsSeen, type TrapDoubt, trapDoubt } from '../catch/soundness.ts';
import type { CatchInterval, TrapHistory } from '../catch/types.ts';
import type { TrapDesign, TrapRecord } from '../records/schema.ts';
import { weatherSourceFor } from '../records/weather-source.ts';
import { endedBy, growingYearStart, historyOf, once, type Prepared, scatterOf, visitsOf, weatherSources } from './prepare.ts';
import type { Evidence } from './types.ts';
import { visitDispersion } from './visit-dispersion.ts';

/** What the records leave in doubt about a trap, unless somebody answered that it is just so. */
export function doubtAbout(prepared: Prepared, trap: TrapRecord): TrapDoubt | null {
  const doubt = doubtByRecords(prepared, trap);
  return doubt && !saidToBeSo(prepared, doubtKey(doubt.kind, trap.trapId, yearOf(kindOf(prepared, trap)!.from))) ? doubt : null;
}

/** A strong doubt is about a silent trap: one that caught at its newest visit that can be judged is above it. */
export function isSurelyUnsound(prepared: Prepared, trap: TrapRecord): boolean {
  const newest = historyOf(prepared, trap).intervals.findLast(isJudged);
  return newest?.count === 0 && doubtAbout(prepared, trap)?.degree === 'strong';
}

/**
 * The doubt about one trap by the others of its insect and design under the same weather, as known on the prepared day;
 * null where there is none.
 *
 * The others' nights are read once for a prepared program.
 */
export function doubtByRecords(prepared: Prepared, trap: TrapRecord): TrapDoubt | null {
  const known = once(prepared, scatterOf(trap), 'doubts', () => new WeakMap<TrapHistory, { readonly doubt: TrapDoubt | null }>());
  const history = historyOf(prepared, trap);
  const before = known.get(history);
  if (before) return before.doubt;
  const doubt = judge(prepared, trap, history);
  known.set(history, { doubt });
  return doubt;
}

function judge(prepared: Prepared, trap: TrapRecord, history: TrapHistory): TrapDoubt | null {
  const kind = kindOf(prepared, trap);
  if (kind === null) return null;
  const { nights, traps, from } = others(prepared, kind);
  const among = traps.get(trap.trapId);
  if (!among || nights === null) return null;
  const lures = (prepared.luresByTrap.get(trap.trapId) ?? []).map(({ placedOn }) => day(placedOn));
  const putRight = putRightOn(history, lures, prepared.on);
  const k = visitDispersion(prepared, trap.insect, trap.design).median;
  return trapDoubt(nights, { among, visits: judged(history, from), putRight, k });
}

/** Names the question that a doubt asks, once in a season. */
const doubtKey = (kind: TrapDoubt['kind'], trapId: string, year: number): string => `${kind}-trap ${trapId} ${year}`;

/** Days on which somebody put a trap right, in order: a lure placed, a visit that found it unfit or doubtful. */
function putRightOn({ intervals }: TrapHistory, lures: readonly Day[], on: Day): Day[] {
  const mended = intervals.filter(({ condition }) => condition !== 'fit').map(({ to }) => to);
  return [...lures.filter((placed) => placed <= on), ...mended].sort((a, b) => a - b);
}

/** Visits of the season that can be held against other traps. */
const judged = ({ intervals }: TrapHistory, from: Day): CatchInterval[] =>
  intervals.filter((visit) => visit.from >= from && isJudged(visit));

const isJudged = ({ count, condition }: CatchInterval): boolean => count !== null && condition === 'fit';

interface Kind {
  readonly insect: string;
  readonly design: TrapDesign;
  readonly key: string;
  readonly from: Day;
}

/** Traps of one insect and design under one weather source fly under one flight; null where no field says which. */
function kindOf(prepared: Prepared, trap: TrapRecord): Kind | null {
  const field = trap.informs.map((id) => prepared.fields.get(id)).find((known) => known !== undefined);
  if (!field) return null;
  const from = growingYearStart(field, prepared.on);
  const sources = weatherSources(prepared);
  const { insect, design } = trap;
  return { insect, design, key: `${insect}\n${design}\n${weatherSourceFor(field, sources)}\n${from}`, from };
}

interface Others {
  readonly from: Day;
  readonly traps: ReadonlyMap<string, TrapOfSeason>;
  /** Null while nobody has seen a night. */
  readonly nights: NightsSeen | null;
}

function others(prepared: Prepared, kind: Kind): Others {
  return once(prepared, visitsOf(kind), `others\n${kind.key}`, () => readOthers(prepared, kind));
}

function readOthers(prepared: Prepared, kind: Kind): Others {
  const { from } = kind;
  const traps = prepared.present ? othersUpTo(prepared.on, others(prepared.present, kind)) : new Map<string, TrapOfSeason>();
  // A day of an earlier season has traps of its own.
  if (traps.size === 0)
    for (const trap of trapsOf(prepared, kind)) traps.set(trap.trapId, { intervals: judged(historyOf(prepared, trap), from) });
  return { from, traps, nights: nightsSeen([...traps.values()]) };
}

const othersUpTo = (on: Day, { traps }: Others): Map<string, TrapOfSeason> =>
  new Map([...traps].map(([trapId, { intervals }]) => [trapId, { intervals: endedBy(intervals, on) }]));

function trapsOf(prepared: Prepared, { key, from }: Kind): readonly TrapRecord[] {
  const groups = once(prepared, 'no check', 'traps by kind', () => {
    const hanging = [...prepared.traps.values()].filter(({ takenDownOn }) => takenDownOn === null || day(takenDownOn) >= from);
    return groupByEach(hanging, (trap) => {
      const kind = kindOf(prepared, trap);
      return kind ? [kind.key] : [];
    });
  });
  return groups.get(key) ?? [];
}

function saidToBeSo(prepared: Prepared, key: string): boolean {
  const today = formatDay(prepared.on);
  const said = once(
    prepared,
    'no check',
    'answers',
    () =>
      new Set(
        prepared.program.answers
          .filter(({ answer, answeredOn }) => answer === 'right' && answeredOn <= today)
          .map(({ question }) => question),
      ),
  );
  return said.has(key);
}

export function doubtEvidence({ trapId, design }: TrapRecord, doubt: TrapDoubt): Evidence {
  const { kind, degree, since, to, nights, count, expected, chance } = doubt;
  const span = { since: formatDay(since), to: formatDay(to) };
  return { kind: 'trap-doubt', trapId, design, doubt: kind, degree, ...span, nights, count, expected, chance };
}
