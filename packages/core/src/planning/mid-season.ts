/** The plan held against what happened, and what that does to the advice. */

import { adviseCell } from '../advice/advise.ts';
import { lureEnds } from '../advice/due.ts';
import { historyOf, type Prepared } from '../advice/prepare.ts';
import type { Advice } from '../advice/types.ts';
import { addDays, day, daysBetween, formatDay, type IsoDay } from '../base/day.ts';
import type { Shape } from '../base/shape.ts';
import { ASSUMPTIONS } from '../catalogue/index.ts';
import type { TrapRecord } from '../records/schema.ts';
import { independentTraps } from './placing.ts';
import type { PlanLine, SeasonPlan } from './plan-types.ts';
import type { deviationSchema, effectSchema, truthCauseSchema } from './schema.ts';
import { type TrapWishes, trapNumberRow } from './trap-table.ts';

export type PlanDeviation = Shape<typeof deviationSchema>;
export type EffectOnAdvice = Shape<typeof effectSchema>;

export interface LineTruth {
  readonly line: PlanLine;
  readonly deviations: readonly PlanDeviation[];
  readonly effects: readonly EffectOnAdvice[];
  /** Share of the planned checks up to now that were made, over the traps that hang; null before the first. */
  readonly checksMade: number | null;
  /** What the advice says now at each field of the line. */
  readonly advice: readonly LineAdvice[];
  /** The gravest of what went otherwise than planned. */
  readonly cause: TruthCause;
  /** Traps that tell something now; null where the line is not in its season. */
  readonly telling: number | null;
  /** Chance of missing the rule by the number of traps: as planned, and now; null where there is none to give. */
  readonly risk: { readonly planned: number | null; readonly now: number | null };
  /** First hung first. */
  readonly traps: readonly TrapTruth[];
}

export type LineAdvice = { readonly field: string } & Pick<Advice, 'verb' | 'by' | 'dueSince'>;

/** One trap of a line, day by day. */
export interface TrapTruth {
  readonly trapId: string;
  readonly hungOn: IsoDay;
  readonly takenDownOn: IsoDay | null;
  /** Visits, and planned checks that nobody made. */
  readonly checks: readonly IsoDay[];
  readonly missed: readonly IsoDay[];
  /** `ends`: the last day of its stated life; null when none is stated. */
  readonly lures: readonly { readonly placedOn: IsoDay; readonly ends: IsoDay | null }[];
}

export type TruthCause = Shape<typeof truthCauseSchema>;

/** Every line of the plan as it stands on the day of `prepared`. */
export function planAgainstSeason(plan: SeasonPlan, prepared: Prepared, wishes: TrapWishes = {}): LineTruth[] {
  return plan.lines.map((line) => lineTruth(line, prepared, plan.madeOn, wishes));
}

function lineTruth(line: PlanLine, prepared: Prepared, madeOn: IsoDay, wishes: TrapWishes): LineTruth {
  const today = formatDay(prepared.on);
  const hung = trapsOf(line, prepared, madeOn);
  const hanging = hung.filter(({ takenDownOn }) => takenDownOn === null || takenDownOn > today);
  const checked = hung.map((trap) => missedChecks(line, prepared, trap));
  const deviations: PlanDeviation[] = [
    ...hangingDeviations(line, prepared, hung),
    ...hung
      .filter(({ design }) => line.design.design !== null && design !== line.design.design)
      .map(({ trapId, design }): PlanDeviation => ({ kind: 'other-design', trapId, design })),
    ...checked.flatMap(({ deviation }) => deviation ?? []),
    ...hanging.flatMap((trap) => lureDeviation(prepared, trap)),
  ];
  const inSeason = line.hang.on !== null && line.hang.on <= today && (line.takeDown.on === null || today < line.takeDown.on);
  const telling = independentTraps(hanging.filter((trap) => tellsNow(prepared, trap)));
  if (inSeason && telling < line.traps.count) deviations.push({ kind: 'fewer-traps', planned: line.traps.count, telling });
  const planned = checked.reduce((sum, one) => sum + one.planned, 0);
  const missed = checked.reduce((sum, one) => sum + one.missed.length, 0);
  return {
    line,
    deviations,
    cause: causeOf(deviations, inSeason && telling === 0 && hung.length > 0),
    telling: inSeason ? telling : null,
    risk: riskOf(line, inSeason ? telling : line.traps.count, wishes),
    traps: hung
      .map((trap, index) => trapTruth(prepared, trap, checked[index]!.missed))
      .sort((a, b) => (a.hungOn < b.hungOn ? -1 : a.hungOn > b.hungOn ? 1 : 0)),
    effects: inSeason ? effectsOf(line, deviations, { hung: hung.length, telling }, wishes) : [],
    checksMade: planned === 0 ? null : 1 - missed / planned,
    advice: line.fields
      .filter((field) => prepared.fields.has(field))
      .map((field) => {
        const { verb, by, dueSince } = adviseCell(prepared, field, line.insect);
        return { field, verb, by, dueSince };
      }),
  };
}

/**
 * A lure nobody wrote a life for is a deviation, but nothing that is known to have gone wrong. Without any trap hung the
 * cause is that, and not that traps tell nothing: going there mends nothing.
 */
function causeOf(deviations: readonly PlanDeviation[], isBlind: boolean): TruthCause {
  if (isBlind) return 'blind';
  const has = (kind: PlanDeviation['kind']) => deviations.some((one) => one.kind === kind);
  if (has('not-hung')) return 'not-hung';
  if (has('lure-overdue')) return 'lure-spent';
  if (has('missed-checks')) return 'checks-missed';
  if (has('hung-late')) return 'hung-late';
  if (has('other-design')) return 'other-design';
  return has('fewer-traps') ? 'not-telling' : 'as-planned';
}

function riskOf({ rule, traps, nightsBetweenChecks }: PlanLine, telling: number, wishes: TrapWishes): LineTruth['risk'] {
  const planned = traps.quality?.missed ?? null;
  if (!rule || planned === null || telling === 0) return { planned, now: null };
  if (telling >= traps.count) return { planned, now: planned };
  const question = { ...rule, k: traps.dispersion?.k ?? null, nightsBetweenChecks };
  return { planned, now: trapNumberRow(question, telling, wishes).missed };
}

function trapTruth(prepared: Prepared, trap: TrapRecord, missed: readonly IsoDay[]): TrapTruth {
  const today = formatDay(prepared.on);
  const visits = (prepared.checksByTrap.get(trap.trapId) ?? []).map(({ checkedOn }) => checkedOn);
  const lures = (prepared.luresByTrap.get(trap.trapId) ?? []).filter(({ placedOn }) => placedOn <= today);
  return {
    trapId: trap.trapId,
    hungOn: trap.hungOn,
    takenDownOn: trap.takenDownOn,
    checks: [...new Set(visits.filter((on) => on <= today))].sort(),
    missed,
    lures: lures
      .map(({ placedOn, lifeDays }) => ({
        placedOn,
        ends: lifeDays === null ? null : formatDay(addDays(day(placedOn), lifeDays)),
      }))
      .sort((a, b) => (a.placedOn < b.placedOn ? -1 : 1)),
  };
}

/** Traps of the line's insect at its fields that stood at some time between its hanging and its taking down. */
function trapsOf(line: PlanLine, prepared: Prepared, madeOn: IsoDay): TrapRecord[] {
  const from = line.hang.on ?? madeOn;
  return [...prepared.traps.values()].filter(
    (trap) =>
      trap.insect === line.insect &&
      trap.informs.some((field) => line.fields.includes(field)) &&
      (trap.takenDownOn === null || trap.takenDownOn > from) &&
      (line.takeDown.on === null || trap.hungOn < line.takeDown.on),
  );
}

function hangingDeviations(line: PlanLine, prepared: Prepared, hung: readonly TrapRecord[]): PlanDeviation[] {
  if (line.hang.on === null) return [];
  const planned = day(line.hang.on);
  const late = hung.flatMap((trap): PlanDeviation[] => {
    const daysLate = daysBetween(planned, day(trap.hungOn));
    if (daysLate <= 0) return [];
    const first = historyOf(prepared, trap).intervals.find(({ count }) => count !== null);
    return [{ kind: 'hung-late', trapId: trap.trapId, daysLate, firstVisitCaught: (first?.count ?? 0) > 0 }];
  });
  const missing = line.traps.count - hung.length;
  const since = daysBetween(planned, prepared.on);
  return missing > 0 && since > 0 ? [...late, { kind: 'not-hung', missing, daysLate: since }] : late;
}

/** A planned check is made by any visit from its day until before the next planned day; the last may still come. */
function missedChecks(line: PlanLine, prepared: Prepared, { trapId, hungOn, takenDownOn }: TrapRecord) {
  const today = formatDay(prepared.on);
  const visits = (prepared.checksByTrap.get(trapId) ?? []).map(({ checkedOn }) => checkedOn).filter((on) => on <= today);
  const due = line.checkDays.filter((on) => on > hungOn && (takenDownOn === null || on <= takenDownOn));
  const closed = due.filter((_, i) => due[i + 1] !== undefined && due[i + 1]! <= today);
  const days = closed.filter((on, i) => !visits.some((visit) => visit >= on && visit < due[i + 1]!));
  const deviation: PlanDeviation | null =
    days.length === 0 ? null : { kind: 'missed-checks', trapId, days, planned: closed.length };
  return { planned: closed.length, missed: days, deviation };
}

function lureDeviation(prepared: Prepared, trap: TrapRecord): PlanDeviation[] {
  const lure = lureEnds(prepared, trap);
  if (lure === null) return [{ kind: 'lure-unknown', trapId: trap.trapId }];
  const days = daysBetween(lure.ends, prepared.on);
  return days > 0 ? [{ kind: 'lure-overdue', trapId: trap.trapId, endedOn: formatDay(lure.ends), days }] : [];
}

/** Not overdue, and fit at its newest visit, whatever its design; a trap just hung counts until its first check is overdue. */
function tellsNow(prepared: Prepared, trap: TrapRecord): boolean {
  const last = historyOf(prepared, trap).intervals.at(-1);
  if (last !== undefined && last.count === null) return false;
  const since = last?.to ?? day(trap.hungOn);
  return daysBetween(since, prepared.on) <= ASSUMPTIONS.maxCheckGapDays.value;
}

function effectsOf(
  line: PlanLine,
  deviations: readonly PlanDeviation[],
  { hung, telling }: { hung: number; telling: number },
  wishes: TrapWishes,
): EffectOnAdvice[] {
  const effects: EffectOnAdvice[] = [];
  const trapIds = (kind: PlanDeviation['kind'], which: (one: PlanDeviation) => boolean = () => true) =>
    deviations.filter((one) => one.kind === kind && which(one)).flatMap((one) => ('trapId' in one ? [one.trapId] : []));
  const late = trapIds(
    'hung-late',
    (one) => one.kind === 'hung-late' && (one.firstVisitCaught || afterPlausible(line, one.daysLate)),
  );
  // One trap that hung in time dates the start of the flight for all.
  if (late.length > 0 && trapIds('hung-late').length === hung) effects.push({ kind: 'biofix-late', trapIds: late });
  if (telling === 0) effects.push({ kind: 'out-of-sight' });
  const spent = trapIds('lure-overdue');
  if (spent.length > 0) effects.push({ kind: 'reads-low', trapIds: spent });
  const { rule, traps, nightsBetweenChecks } = line;
  if (rule && traps.quality && telling > 0 && telling < traps.count) {
    const now = trapNumberRow({ ...rule, k: traps.dispersion?.k ?? null, nightsBetweenChecks }, telling, wishes);
    effects.push({ kind: 'risks-grown', planned: traps.quality, now });
  }
  const other = trapIds('other-design');
  if (rule && other.length > 0) effects.push({ kind: 'rule-not-for-design', trapIds: other });
  return effects;
}

/** Hung after the day from which the flight was plausible. */
function afterPlausible({ hang }: PlanLine, daysLate: number): boolean {
  return (hang.basis === 'heat' || hang.basis === 'chosen') && daysLate > daysBetween(day(hang.on), day(hang.spread.plausible));
}
