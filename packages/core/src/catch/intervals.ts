import { type Day, day, daysBetween } from '../base/day.ts';
import type { CheckRecord, LureRecord, TrapRecord } from '../records/schema.ts';
import { type LureAge, lureAges } from './lure-age.ts';
import type { CatchInterval, CheckQuestion, NoInformation, TrapHistory } from './types.ts';

/**
 * What each visit to a trap tells about the nights since the visit before it, as it was known on the day `on`.
 *
 * - At every visit, of any condition, the trap is put right and, unless noted otherwise, emptied: the interval runs
 *   from the visit before (or the hanging) to this one.
 * - An `unfit` visit says nothing about its nights; they are never zeros.
 * - Moths left in the trap (`emptied: false`) are taken off the next count. A count below what was left is a question
 *   to the scout, and those nights say nothing. Moths left without having been counted (at an unfit visit) make the
 *   next count unusable: `left-uncounted`.
 * - A further visit on one day covers no nights. It is folded into the interval that ended that day: the first visit
 *   saw the nights and gives the condition, so unfit stays unfit; moths found by a later fit visit are added; a later
 *   unfit visit takes nothing away; a later count below what the first left makes the nights a question.
 * - A visit on the day of hanging covers no nights and gives no interval, but moths left in the trap then count.
 *
 * Records of other traps, and checks before the hanging, after the taking down or after `on`, are passed over.
 * Order of the input does not matter. Time: that of sorting the trap's own records.
 */
export function catchIntervals(
  trap: TrapRecord,
  checks: readonly CheckRecord[],
  lures: readonly LureRecord[],
  on: Day,
): TrapHistory {
  const { trapId } = trap;
  const lureAt = lureAges(lures.filter((lure) => lure.trapId === trapId));
  const intervals: CatchInterval[] = [];
  const questions: CheckQuestion[] = [];
  let from = day(trap.hungOn);
  let inTrap: Moths = { target: 0, others: 0 };
  for (const { visit, check } of visitsInOrder(trap, checks, on)) {
    const reading = readVisit(check, inTrap);
    if (reading.noInformation === 'count-went-down') {
      questions.push({ kind: 'count-went-down', trapId, on: visit, got: check.targetCount!, before: inTrap.target! });
    }
    const last = intervals.at(-1);
    if (last?.to === visit)
      intervals[intervals.length - 1] = foldSameDay({ ...last, visits: [...last.visits, check.visit] }, reading);
    else if (visit > from) intervals.push(intervalOf(trap, from, visit, reading, check, lureAt(visit)));
    from = visit;
    inTrap = check.emptied ? { target: 0, others: 0 } : { target: check.targetCount, others: check.otherCount };
  }
  return { trapId, intervals, questions };
}

/** Moths hanging in the trap; null when nobody counted them. */
interface Moths {
  readonly target: number | null;
  readonly others: number | null;
}

interface Reading {
  readonly count: number | null;
  readonly others: number | null;
  readonly noInformation: NoInformation | null;
}

function visitsInOrder(trap: TrapRecord, checks: readonly CheckRecord[], on: Day) {
  const first = day(trap.hungOn);
  const last = trap.takenDownOn === null ? on : Math.min(on, day(trap.takenDownOn));
  return checks
    .filter(({ trapId }) => trapId === trap.trapId)
    .map((check) => ({ visit: day(check.checkedOn), check }))
    .filter(({ visit }) => first <= visit && visit <= last)
    .sort((a, b) => a.visit - b.visit || a.check.visit - b.check.visit);
}

function readVisit(check: CheckRecord, inTrap: Moths): Reading {
  if (check.condition === 'unfit') return withoutInformation('unfit');
  if (check.targetCount === null || inTrap.target === null) return withoutInformation('left-uncounted');
  const count = check.targetCount - inTrap.target;
  if (count < 0) return withoutInformation('count-went-down');
  return { count, others: gained(check.otherCount, inTrap.others), noInformation: null };
}

const withoutInformation = (noInformation: NoInformation): Reading => ({ count: null, others: null, noInformation });

function gained(found: number | null, before: number | null): number | null {
  return found === null || before === null || found < before ? null : found - before;
}

function foldSameDay(interval: CatchInterval, later: Reading): CatchInterval {
  if (interval.noInformation !== null) return interval;
  if (later.noInformation === 'count-went-down') return { ...interval, ...later };
  if (later.count === null) return interval;
  const others = interval.others === null || later.others === null ? null : interval.others + later.others;
  return { ...interval, count: interval.count! + later.count, others };
}

function intervalOf(
  trap: TrapRecord,
  from: Day,
  to: Day,
  { count, others, noInformation }: Reading,
  { condition, visit }: CheckRecord,
  { lureAgeDays, lureLifeDays, lurePastLife }: LureAge,
): CatchInterval {
  return {
    trapId: trap.trapId,
    design: trap.design,
    from,
    to,
    visits: [visit],
    nights: daysBetween(from, to),
    count,
    others,
    condition,
    noInformation,
    lureAgeDays,
    lureLifeDays,
    lurePastLife,
  };
}
