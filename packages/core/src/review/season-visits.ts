/** Whether a season's traps were visited and their lures changed in time. */

import { addDays, type Day, day, daysBetween } from '../base/day.ts';
import { ASSUMPTIONS } from '../catalogue/assumptions.ts';
import type { LureRecord } from '../records/schema.ts';
import type { GrowingYear } from './growing-year.ts';
import type { TrapWithHistory } from './trap-histories.ts';

/** Longer between two visits than a trap should be left. */
export interface MissedVisits {
  readonly trapId: string;
  readonly from: Day;
  /** The visit that ended it; null: still waiting, or taken down without one. */
  readonly to: Day | null;
  readonly nights: number;
}

export interface LateLure {
  readonly trapId: string;
  readonly placedOn: Day;
  readonly dueOn: Day;
  /** Null: not changed before the season ended for the trap. */
  readonly changedOn: Day | null;
  readonly daysLate: number;
}

export interface SeasonVisits {
  readonly visits: number;
  readonly missed: readonly MissedVisits[];
  readonly lateLures: readonly LateLure[];
  readonly luresPlaced: number;
  /** Lures of which nobody wrote how long they last: late or not, nobody can tell. */
  readonly luresWithoutLife: number;
  readonly trapsWithoutLure: readonly string[];
}

export function seasonVisits(
  traps: readonly TrapWithHistory[],
  lures: ReadonlyMap<string, readonly LureRecord[]>,
  season: GrowingYear,
  on: Day,
): SeasonVisits {
  const spans = traps.flatMap((one) => standing(one, season, on));
  const placed = spans.map((span) => ({ span, lures: luresWithin(lures.get(span.trapId) ?? [], span) }));
  return {
    visits: spans.reduce((sum, { visits }) => sum + visits.length, 0),
    missed: spans.flatMap(missedVisits),
    lateLures: placed.flatMap(({ span, lures }) => lateLures(lures, span)),
    luresPlaced: placed.reduce(
      (sum, { span, lures }) => sum + lures.filter(({ placedOn }) => day(placedOn) >= span.from).length,
      0,
    ),
    luresWithoutLife: placed.reduce((sum, { lures }) => sum + lures.filter(({ lifeDays }) => lifeDays === null).length, 0),
    trapsWithoutLure: placed.filter(({ lures }) => lures.length === 0).map(({ span }) => span.trapId),
  };
}

/** The part of the season in which a trap hung. */
interface Standing {
  readonly trapId: string;
  readonly from: Day;
  readonly to: Day;
  readonly visits: readonly Day[];
}

function standing({ trap, history }: TrapWithHistory, season: GrowingYear, on: Day): Standing[] {
  const from = Math.max(season.from, day(trap.hungOn)) as Day;
  const to = Math.min(season.to, on, trap.takenDownOn === null ? on : day(trap.takenDownOn)) as Day;
  const visits = history.intervals.map((interval) => interval.to).filter((visit) => from <= visit && visit <= to);
  return from > to ? [] : [{ trapId: trap.trapId, from, to, visits }];
}

function missedVisits({ trapId, from, to, visits }: Standing): MissedVisits[] {
  const most = ASSUMPTIONS.maxCheckGapDays.value;
  return [...visits, null].flatMap((visit, i): MissedVisits[] => {
    const since = visits[i - 1] ?? from;
    const nights = daysBetween(since, visit ?? to);
    return nights > most ? [{ trapId, from: since, to: visit, nights }] : [];
  });
}

/** Lures that hung at any time of the span, in order. */
function luresWithin(lures: readonly LureRecord[], { from, to }: Standing): LureRecord[] {
  const inOrder = lures.filter(({ placedOn }) => day(placedOn) <= to).sort((a, b) => (a.placedOn < b.placedOn ? -1 : 1));
  return inOrder.filter((_, i) => inOrder[i + 1] === undefined || day(inOrder[i + 1]!.placedOn) > from);
}

function lateLures(lures: readonly LureRecord[], { trapId, to }: Standing): LateLure[] {
  return lures.flatMap(({ placedOn, lifeDays }, i): LateLure[] => {
    if (lifeDays === null) return [];
    const next = lures[i + 1];
    const changedOn = next ? day(next.placedOn) : null;
    const dueOn = addDays(day(placedOn), lifeDays);
    const daysLate = daysBetween(dueOn, changedOn ?? to);
    return daysLate > 0 ? [{ trapId, placedOn: day(placedOn), dueOn, changedOn, daysLate }] : [];
  });
}
