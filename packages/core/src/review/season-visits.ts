/** Whether a season's traps were visited and their lures changed in time. */

import { addDays, type Day, day, daysBetween } from '../base/day.ts';
import { groupBy } from '../base/group-by.ts';
import { ASSUMPTIONS } from '../catalogue/assumptions.ts';
import type { CheckRecord, LureRecord, UnfitReason } from '../records/schema.ts';
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
  /** Most frequent first. */
  readonly unfit: readonly UnfitVisits[];
}

/** Visits that found a trap unfit for one reason. */
export interface UnfitVisits {
  /** Null: nobody said why. */
  readonly reason: UnfitReason | null;
  readonly visits: number;
  readonly traps: number;
}

export function seasonVisits(
  traps: readonly TrapWithHistory[],
  lures: ReadonlyMap<string, readonly LureRecord[]>,
  checks: ReadonlyMap<string, readonly CheckRecord[]>,
  season: GrowingYear,
  on: Day,
): SeasonVisits {
  const spans = traps.flatMap((one) => hangingSpan(one, season, on));
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
    unfit: unfitVisits(spans.flatMap((span) => (checks.get(span.trapId) ?? []).filter((check) => isWithin(check, span)))),
  };
}

const isWithin = ({ checkedOn }: CheckRecord, { from, to }: HangingSpan) => from <= day(checkedOn) && day(checkedOn) <= to;

function unfitVisits(checks: readonly CheckRecord[]): UnfitVisits[] {
  const unfit = checks.filter(({ condition }) => condition === 'unfit');
  return [...groupBy(unfit, ({ unfitReason }) => unfitReason ?? '')]
    .map(([, own]) => ({
      reason: own[0]!.unfitReason ?? null,
      visits: own.length,
      traps: new Set(own.map(({ trapId }) => trapId)).size,
    }))
    .sort((a, b) => b.visits - a.visits);
}

/** The part of the season in which a trap hung. */
interface HangingSpan {
  readonly trapId: string;
  readonly from: Day;
  readonly to: Day;
  readonly visits: readonly Day[];
}

function hangingSpan({ trap, history }: TrapWithHistory, season: GrowingYear, on: Day): HangingSpan[] {
  const from = Math.max(season.from, day(trap.hungOn)) as Day;
  const to = Math.min(season.to, on, trap.takenDownOn === null ? on : day(trap.takenDownOn)) as Day;
  const visits = history.intervals.map((interval) => interval.to).filter((visit) => from <= visit && visit <= to);
  return from > to ? [] : [{ trapId: trap.trapId, from, to, visits }];
}

function missedVisits({ trapId, from, to, visits }: HangingSpan): MissedVisits[] {
  const most = ASSUMPTIONS.maxCheckGapDays.value;
  return [...visits, null].flatMap((visit, i): MissedVisits[] => {
    const since = visits[i - 1] ?? from;
    const nights = daysBetween(since, visit ?? to);
    return nights > most ? [{ trapId, from: since, to: visit, nights }] : [];
  });
}

/** Lures that hung at any time of the span, in order. */
function luresWithin(lures: readonly LureRecord[], { from, to }: HangingSpan): LureRecord[] {
  const inOrder = lures.filter(({ placedOn }) => day(placedOn) <= to).sort((a, b) => (a.placedOn < b.placedOn ? -1 : 1));
  return inOrder.filter((_, i) => inOrder[i + 1] === undefined || day(inOrder[i + 1]!.placedOn) > from);
}

function lateLures(lures: readonly LureRecord[], { trapId, to }: HangingSpan): LateLure[] {
  return lures.flatMap(({ placedOn, lifeDays }, i): LateLure[] => {
    if (lifeDays === null) return [];
    const next = lures[i + 1];
    const changedOn = next ? day(next.placedOn) : null;
    const dueOn = addDays(day(placedOn), lifeDays);
    const daysLate = daysBetween(dueOn, changedOn ?? to);
    return daysLate > 0 ? [{ trapId, placedOn: day(placedOn), dueOn, changedOn, daysLate }] : [];
  });
}
