/** The season as its pages show it: plan, numbers of traps, lures, budget and what they rest on. */
import type { Prepared } from '../advice/prepare.ts';
import { addDays, day, formatDay } from '../base/day.ts';
import { practicesFor } from '../catalogue/index.ts';
import { SEASON_ASSUMPTIONS } from '../planning/assumptions.ts';
import {
  currentSeason,
  type HangBy,
  type LineLures,
  type PlanLine,
  type PlannedSeason,
  placingQuestions,
  plannedSeason,
  planRequest,
  seasonRecord,
  seasonSpan,
  trapNumberTable,
  trapsEnough,
  wishesOf,
} from '../planning/index.ts';
import { WEEKDAYS } from '../records/schema.ts';
import { PLAN_ASSUMPTIONS } from '../scouting/assumptions.ts';
import { seasonBudgetView } from './season-budget.ts';
import { fieldOf } from './season-field.ts';
import { seasonLures } from './season-lures.ts';
import type { CarriedFlight, SeasonLineView, SeasonQuestion, SeasonView, TrapNumbers } from './season-schema.ts';
import { insectName } from './week.ts';

/** Nights between checks that the table of trap numbers compares. */
const RHYTHMS = [1, 2, 3, 4, 7];
/** The table goes on beyond the most traps that are proposed, so that more can be weighed up. */
const TABLE_TRAPS = 8;

/** @param withPrices false: whoever asks is not shown what things cost */
export function seasonView(prepared: Prepared, season: number, withPrices: boolean): SeasonView {
  const { program } = prepared;
  const work = plannedSeason(prepared, season);
  const { from, to } = seasonSpan(program, season);
  const today = formatDay(prepared.on);
  const running = currentSeason(prepared);
  const written = seasonRecord(program, season);
  const request = planRequest(prepared, season);
  const numbers = numbersOf(prepared, work, season);
  return {
    program: { name: program.settings.name, invented: program.settings.invented },
    season,
    from,
    to,
    today,
    state: today < from ? 'ahead' : today < to ? 'running' : 'over',
    seasons: [
      ...new Set([
        running,
        running + 1,
        season,
        ...program.seasons.map((one) => one.season),
        ...program.plans.map((p) => p.season),
      ]),
    ].sort((a, b) => a - b),
    written,
    checkWeekdays: (request.checkWeekdays ?? [1, 4]).map((weekday) => WEEKDAYS[weekday - 1]!),
    insects: [...new Set([...prepared.insects, ...request.insects])].map(insectName),
    crops: [...new Set(program.fields.map(({ crop }) => crop))].sort(),
    fields: program.fields.map(({ fieldId }) => fieldOf(prepared, fieldId)),
    lines: work.lines.map((line) => lineView(prepared, line, season, numbers)),
    notHosts: countByInsect(work.plan.leftOut.filter(({ why }) => why === 'not-a-host')),
    trapsInAll: work.plan.trapsInAll,
    trapsProposed: work.plan.lines.reduce((sum, { traps }) => sum + traps.proposed, 0),
    numbers: [...numbers.values()],
    lures: seasonLures(prepared, work, withPrices),
    budget: withPrices ? seasonBudgetView(prepared, work) : null,
    questions: questionsOf(prepared, work, season),
    assumptions: assumptionsOf(written),
    cautions: ['setting-posts', 'handling-lures', 'walking-fields'].flatMap((act) =>
      practicesFor(act as 'siting').filter(({ weight }) => weight === 'caution'),
    ),
  };
}

function lineView(
  prepared: Prepared,
  { line, life, changes }: LineLures,
  season: number,
  numbers: ReadonlyMap<string, TrapNumbers>,
): SeasonLineView {
  const { id, insect, farm, fields, design, rule, traps, hang, takeDown, checkDays, nightsBetweenChecks, caution } = line;
  const decided = prepared.program.plans.filter((plan) => plan.season === season && plan.insect === insect);
  const key = numbersKey(line);
  return {
    id,
    insect,
    farm,
    fields: fields.map((field) => fieldOf(prepared, field)),
    design,
    rule,
    traps,
    numbers: key !== null && numbers.has(key) ? key : null,
    hang,
    flights: carriedFlights(hang),
    takeDown,
    checks: checkDays.length,
    nightsBetweenChecks,
    caution,
    lureLife: life,
    changes,
    decidedHere: decided.find(({ area }) => fields.includes(area)) ?? null,
    decidedEverywhere: decided.find(({ area }) => area === 'all') ?? null,
  };
}

/** Days after the earliest flight stay the same from one year to the season planned. */
function carriedFlights(hang: HangBy): CarriedFlight[] {
  if (hang.basis !== 'heat' && hang.basis !== 'chosen') return hang.years.map((year) => ({ ...year, carried: null }));
  const { years, earliest } = hang.spread;
  const least = Math.min(...years.flatMap((year) => (year.kind === 'reached' ? [year.wait] : [])));
  return years.map((year) => ({
    ...year,
    carried: year.kind === 'reached' ? formatDay(addDays(day(earliest), year.wait - least)) : null,
  }));
}

const numbersKey = ({ insect, rule, design, traps }: PlanLine): string | null =>
  rule === null || design.design === null || traps.dispersion === null
    ? null
    : [insect, design.design, rule.ruleId, rule.thresholdPerNight].join(' ');

/** One table for all lines with the same insect, design and rule. */
function numbersOf(prepared: Prepared, { plan }: PlannedSeason, season: number): Map<string, TrapNumbers> {
  const { wishes = {} } = planRequest(prepared, season);
  const wanted = wishesOf(wishes);
  const tables = new Map<string, TrapNumbers>();
  for (const line of plan.lines) {
    const key = numbersKey(line);
    const { rule, design, traps, nightsBetweenChecks } = line;
    if (key === null || tables.has(key) || !rule || !design.design || !traps.dispersion) continue;
    const question = { k: traps.dispersion.k, thresholdPerNight: rule.thresholdPerNight, windowNights: rule.windowNights };
    const rhythms = [...new Set([...RHYTHMS, nightsBetweenChecks])].sort((a, b) => a - b);
    const enough = trapsEnough({ ...question, nightsBetweenChecks }, wishes);
    tables.set(key, {
      key,
      insect: line.insect,
      design: design.design,
      rule,
      dispersion: traps.dispersion,
      riskMissed: wanted.riskMissed,
      riskFalse: wanted.riskFalse,
      aboveShare: wanted.aboveShare,
      belowShare: wanted.belowShare,
      mostTraps: wanted.mostTraps,
      planned: { nightsBetweenChecks, enough: enough.traps, isEnough: enough.enough },
      rows: trapNumberTable(question, rhythms, { ...wishes, mostTraps: Math.max(TABLE_TRAPS, wanted.mostTraps) }),
    });
  }
  return tables;
}

function countByInsect(pairs: readonly { readonly insect: string }[]): SeasonView['notHosts'] {
  const counts = new Map<string, number>();
  for (const { insect } of pairs) counts.set(insect, (counts.get(insect) ?? 0) + 1);
  return [...counts].map(([insect, fields]) => ({ insect, fields }));
}

/** Traps that hang now, or hung within the season before, are those whose places will be used again. */
function questionsOf(prepared: Prepared, { plan }: PlannedSeason, season: number): SeasonQuestion[] {
  const { from } = seasonSpan(prepared.program, Math.min(season, currentSeason(prepared)));
  const standing = [...prepared.traps.values()].filter(
    ({ takenDownOn, insect }) =>
      (takenDownOn === null || takenDownOn >= from) && plan.lines.some((line) => line.insect === insect),
  );
  const known = prepared.fields;
  const areas = prepared.program.plans.filter((row) => row.season === season && row.area !== 'all' && !known.has(row.area));
  return [
    ...placingQuestions(standing),
    ...areas.map(({ insect, area }) => ({ kind: 'no-such-area' as const, insect, area })),
    ...plan.leftOut.flatMap(({ field, insect, why }) => (why === 'no-such-field' ? [{ kind: why, field, insect }] : [])),
  ];
}

function assumptionsOf(written: SeasonView['written']): SeasonView['assumptions'] {
  const over: Readonly<Record<string, number | null | undefined>> = {
    hangLeadDays: written?.leadDays,
    mostTraps: written?.mostTraps,
    riskBelow: written?.riskMissed,
    riskAbove: written?.riskFalse,
    lureLeadDays: written?.orderLeadDays,
    usualChecks: written?.checkWeekdays.length || null,
    spareLures: written?.reserveShare,
    lostTraps: written?.reserveShare == null ? null : 0,
  };
  const { aboveShare, belowShare, riskAbove, riskBelow } = PLAN_ASSUMPTIONS;
  return [...Object.values(SEASON_ASSUMPTIONS), aboveShare, belowShare, riskBelow, riskAbove].map((assumption) => ({
    ...assumption,
    written: over[assumption.id] ?? null,
  }));
}
