/** The plan of a season as the program's records ask for it. */
import { cellKey, once, type Prepared } from '../advice/prepare.ts';
import { day, dayOf, formatDay, type IsoDay, yearOf } from '../base/day.ts';
import type { Program } from '../records/program.ts';
import { type PlanRecord, type SeasonRecord, WEEKDAYS } from '../records/schema.ts';
import { type LureOrders, type LureUse, lureOrders } from './lure-need.ts';
import { type LineLures, planLures } from './plan-lures.ts';
import type { PlanRequest, SeasonPlan, StatedPlan } from './plan-types.ts';
import { seasonPlan } from './season-plan.ts';
import { stockNow } from './stock-now.ts';

/** First day of the growing year that begins in `season`, and of the next; south of the equator from July to June. */
export function seasonSpan({ fields }: Pick<Program, 'fields'>, season: number): { readonly from: IsoDay; readonly to: IsoDay } {
  const month = isSouthern(fields) ? 7 : 1;
  return { from: formatDay(dayOf(season, month, 1)), to: formatDay(dayOf(season + 1, month, 1)) };
}

const isSouthern = (fields: Program['fields']): boolean => (fields.find(({ latitude }) => latitude !== null)?.latitude ?? 0) < 0;

/** The growing year that holds the day of `prepared`. */
export function currentSeason({ program, on }: Pick<Prepared, 'program' | 'on'>): number {
  const year = yearOf(on);
  return formatDay(on) < seasonSpan(program, year).from ? year - 1 : year;
}

/** The season to show where nobody names one: the running one where it is planned, else the next where that is, else the running one. */
export function seasonToShow(prepared: Pick<Prepared, 'program' | 'on'>): number {
  const running = currentSeason(prepared);
  const planned = new Set(prepared.program.seasons.map(({ season }) => season));
  return !planned.has(running) && planned.has(running + 1) ? running + 1 : running;
}

/** What is written for a season; null: nothing, so that all of it is proposed. */
export const seasonRecord = ({ seasons }: Pick<Program, 'seasons'>, season: number): SeasonRecord | null =>
  seasons.find((one) => one.season === season) ?? null;

export function planRequest(prepared: Prepared, season: number): PlanRequest {
  const { program } = prepared;
  const asked = seasonRecord(program, season);
  const stated: Record<string, StatedPlan> = {};
  const statedAt: Record<string, StatedPlan> = {};
  for (const plan of program.plans) {
    if (plan.season !== season) continue;
    if (plan.area === 'all') stated[plan.insect] = statedPlan(plan);
    else statedAt[cellKey(plan.area, plan.insect)] = statedPlan(plan);
  }
  const some = <T>(list: readonly T[] | undefined) => (list && list.length > 0 ? list : undefined);
  return {
    season,
    insects: some(asked?.insects) ?? prepared.insects,
    crops: some(asked?.crops),
    fields: some(asked?.fields),
    checkWeekdays: some(asked?.checkWeekdays)?.map((weekday) => WEEKDAYS.indexOf(weekday) + 1),
    leadDays: asked?.leadDays ?? undefined,
    trapBudget: asked?.trapBudget ?? undefined,
    wishes: {
      mostTraps: asked?.mostTraps ?? undefined,
      riskMissed: asked?.riskMissed ?? undefined,
      riskFalse: asked?.riskFalse ?? undefined,
    },
    stated,
    statedAt,
  };
}

/** Only what is stated: what is left out must not hide what is decided for the insect. */
function statedPlan({ design, traps, hangOn, takeDownOn, lureLifeDays }: PlanRecord): StatedPlan {
  const entries = Object.entries({ design, traps, hangOn, takeDownOn, lureLifeDays });
  return Object.fromEntries(entries.filter(([, value]) => value !== null)) as StatedPlan;
}

/** A season's plan with its lures, and what is still to order. */
export interface PlannedSeason {
  readonly season: number;
  readonly plan: SeasonPlan;
  readonly lines: readonly LineLures[];
  readonly lures: LureOrders;
  /** What `calendarEntries` takes. */
  readonly orders: LureOrders['orders'];
}

/** Everything planned for a season by the records of `prepared`. Orders cover what is placed from the day of `prepared` on. */
export const plannedSeason = (prepared: Prepared, season: number): PlannedSeason =>
  once(prepared, 'all checks', `season ${season}`, () => workOf(prepared, season));

function workOf(prepared: Prepared, season: number): PlannedSeason {
  const asked = seasonRecord(prepared.program, season);
  const plan = seasonPlan(prepared, planRequest(prepared, season));
  const lines = planLures(prepared, plan);
  const lures = lureOrders(
    lines.flatMap((line) => usesToCome(prepared, line)),
    stockNow(prepared).map(({ lure }) => lure),
    {
      today: prepared.on,
      leadDays: asked?.orderLeadDays ?? undefined,
      keepsDays: asked?.luresKeepDays ?? null,
      ...(asked?.reserveShare !== null && asked !== null ? { spares: asked.reserveShare, losses: 0 } : {}),
    },
  );
  return { season, plan, lines, lures, orders: lures.orders };
}

/** Placings from today on; a hanging day that has passed still takes its lures where traps are missing. */
function usesToCome(prepared: Prepared, { line, uses }: LineLures): LureUse[] {
  const today = formatDay(prepared.on);
  const ahead = uses.filter(({ on }) => on >= today);
  if (line.hang.on === null || line.hang.on >= today || (line.takeDown.on !== null && line.takeDown.on <= today)) return ahead;
  const hung = [...prepared.traps.values()].filter(
    ({ insect, hungOn, takenDownOn, informs }) =>
      insect === line.insect &&
      informs.some((field) => line.fields.includes(field)) &&
      (takenDownOn === null || takenDownOn > today) &&
      day(hungOn) <= prepared.on,
  ).length;
  const missing = line.traps.count - hung;
  return missing > 0 ? [{ insect: line.insect, on: today, lures: missing }, ...ahead] : ahead;
}
