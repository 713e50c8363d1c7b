/** Which traps to hang next season, where, how many and when. */
import { catchDispersion } from '../advice/dispersion.ts';
import { cellKey, heatOf, type Prepared, weatherSourceOf } from '../advice/prepare.ts';
import { cellRules, lowestPerNight, ruleForDesign } from '../advice/rules.ts';
import { addDays, type Day, day, formatDay } from '../base/day.ts';
import { insectById, modelsFor, practicesFor } from '../catalogue/index.ts';
import type { FieldRecord, TrapDesign } from '../records/schema.ts';
import { hangBy, openingEvent } from './hanging-date.ts';
import type { PlanLine, PlannedDesign, PlannedNumber, PlannedRule, PlanRequest, SeasonPlan, StatedPlan } from './plan-types.ts';
import { takeDownOf } from './take-down.ts';
import { fitBudget } from './trap-budget.ts';
import { trapNumberRow, trapsEnough, wishesOf } from './trap-table.ts';

/** `SEASON_ASSUMPTIONS.usualChecks`. */
const USUAL_WEEKDAYS = [1, 4];

/** A line for every insect and area of the request, as known on the day of `prepared`. */
export function seasonPlan(prepared: Prepared, request: PlanRequest): SeasonPlan {
  const lines: PlanLine[] = [];
  const leftOut: SeasonPlan['leftOut'][number][] = [];
  for (const insect of request.insects) {
    const chosen: FieldRecord[] = [];
    for (const id of request.fields ?? prepared.fields.keys()) {
      const field = prepared.fields.get(id);
      if (!field) leftOut.push({ field: id, insect, why: 'no-such-field' });
      else if (request.crops && !request.crops.includes(field.crop)) continue;
      else if (isTrapped(prepared, field, insect)) chosen.push(field);
      else leftOut.push({ field: id, insect, why: insectById(insect)?.feedsOn.includes(field.crop) ? 'no-rule' : 'not-a-host' });
    }
    for (const area of areasOf(prepared, chosen, insect, request.areas)) lines.push(planLine(prepared, area, insect, request));
  }
  const fitted = fitBudget(lines, request.trapBudget ?? null, request.wishes);
  const trapsInAll = fitted.reduce((sum, { traps }) => sum + traps.count, 0);
  return { season: request.season, madeOn: formatDay(prepared.on), lines: fitted, leftOut, trapsInAll };
}

function planLine(prepared: Prepared, area: readonly FieldRecord[], insect: string, request: PlanRequest): PlanLine {
  const stated = statedFor(area, insect, request);
  const weekdays = [...new Set(request.checkWeekdays ?? USUAL_WEEKDAYS)].sort((a, b) => a - b);
  const nightsBetweenChecks = shortestStretch(weekdays);
  const design = designFor(prepared, area, insect, stated);
  const rule = strictestRule(prepared, area, insect, design.design);
  const hang = hangFor(prepared, area, insect, request, stated);
  const takeDown = takeDownOf(prepared, area, insect, request.season, stated.takeDownOn ?? null, hang.on);
  const ends = takeDown.on !== null && hang.on !== null && takeDown.on <= hang.on;
  return {
    id: `${insect}|${area.map(({ fieldId }) => fieldId).join(';')}`,
    insect,
    fields: area.map(({ fieldId }) => fieldId),
    farm: area[0]!.farm,
    design,
    rule,
    traps: numberFor(prepared, insect, design.design, rule, nightsBetweenChecks, request, stated),
    hang,
    takeDown,
    checkDays: hang.on === null || takeDown.on === null || ends ? [] : checkDays(day(hang.on), day(takeDown.on), weekdays),
    nightsBetweenChecks,
    caution: ends ? 'ends-before-it-begins' : null,
    lureLifeDays: stated.lureLifeDays ?? null,
  };
}

/** What is decided for the insect, and over it what is decided for a field of the area. */
function statedFor(area: readonly FieldRecord[], insect: string, { stated, statedAt }: PlanRequest): StatedPlan {
  const own = area.map(({ fieldId }) => statedAt?.[cellKey(fieldId, insect)] ?? {});
  return Object.assign({}, stated?.[insect], ...own);
}

/** A crop is worth trapping in when the catalogue says so, when it does not know, or when the program traps the pair. */
function isTrapped(prepared: Prepared, field: FieldRecord, insect: string): boolean {
  const known = insectById(insect);
  if (known === null || known.hosts.includes(field.crop) || prepared.trapsByCell.has(cellKey(field.fieldId, insect))) return true;
  const { catch: caught, infestation, heat } = cellRules(prepared, field, insect);
  return caught.length + infestation.length + heat.length > 0;
}

/** Fields that one set of traps informs: as asked for, else those that a trap of the insect has informed together. */
function areasOf(
  prepared: Prepared,
  chosen: readonly FieldRecord[],
  insect: string,
  asked: PlanRequest['areas'],
): FieldRecord[][] {
  const together =
    asked ?? [...prepared.traps.values()].filter((trap) => trap.insect === insect).map((trap): readonly string[] => trap.informs);
  const areas = new Map(chosen.map((field) => [field.fieldId, [field]]));
  for (const group of together) {
    const [first, ...rest] = group.map((id) => areas.get(id)).filter((area) => area !== undefined);
    for (const other of rest) {
      if (other === first) continue;
      first!.push(...other);
      for (const field of other) areas.set(field.fieldId, first!);
    }
  }
  return [...new Set(areas.values())];
}

/** The rule's design first: a threshold is read only with the design it was made for. */
function designFor(prepared: Prepared, area: readonly FieldRecord[], insect: string, stated: StatedPlan): PlannedDesign {
  if (stated.design) return { design: stated.design, why: 'stated', source: null, standing: null };
  const rules = area.flatMap((field) => cellRules(prepared, field, insect).catch);
  const rule = rules.find(({ design }) => design !== null);
  if (rule) return { design: rule.design, why: 'rule', source: rule.source, standing: rule.standing };
  const before = [...prepared.traps.values()]
    .filter((trap) => trap.insect === insect)
    .sort((a, b) => (a.hungOn < b.hungOn ? 1 : -1))[0];
  if (before) return { design: before.design, why: 'used-before', source: null, standing: 'own' };
  const practice = practicesFor('planning').find(({ insects, designs }) => insects?.includes(insect) && designs?.length === 1);
  if (practice) return { design: practice.designs![0]!, why: 'practice', source: practice.source, standing: practice.standing };
  return { design: null, why: 'not-known', source: null, standing: null };
}

/** Of the rules for this design at the area's fields, the one that is reached first. */
function strictestRule(
  prepared: Prepared,
  area: readonly FieldRecord[],
  insect: string,
  design: TrapDesign | null,
): PlannedRule | null {
  if (design === null) return null;
  const rules = area
    .map((field) => ruleForDesign(cellRules(prepared, field, insect).catch, design))
    .filter((rule) => rule !== null);
  const rule = rules.sort((a, b) => lowestPerNight(a) - lowestPerNight(b))[0];
  if (!rule || lowestPerNight(rule) === 0) return null;
  const windowNights = rule.kind === 'catch-threshold' && rule.per === 'week' ? 7 : 1;
  const { id: ruleId, source, standing } = rule;
  return { ruleId, thresholdPerNight: lowestPerNight(rule), windowNights, source, standing };
}

function numberFor(
  prepared: Prepared,
  insect: string,
  design: TrapDesign | null,
  rule: PlannedRule | null,
  nightsBetweenChecks: number,
  { wishes = {} }: PlanRequest,
  stated: StatedPlan,
): PlannedNumber {
  const dispersion = design === null ? null : catchDispersion(prepared, insect, design);
  if (rule === null || dispersion === null) {
    const count = stated.traps ?? wishesOf(wishes).fewestTraps;
    return { count, why: stated.traps === undefined ? 'no-rule' : 'stated', quality: null, proposed: count, dispersion };
  }
  const question = { ...rule, k: dispersion.k, nightsBetweenChecks };
  if (stated.traps !== undefined) {
    const quality = trapNumberRow(question, stated.traps, wishes);
    return { count: stated.traps, why: 'stated', quality, proposed: stated.traps, dispersion };
  }
  const quality = trapsEnough(question, wishes);
  return { count: quality.traps, why: quality.enough ? 'risk' : 'most', quality, proposed: quality.traps, dispersion };
}

function hangFor(prepared: Prepared, area: readonly FieldRecord[], insect: string, request: PlanRequest, stated: StatedPlan) {
  const opening = openingEvent(modelsFor(insect));
  const field = area.find((one) => weatherSourceOf(prepared, one) !== null);
  const track = field && opening ? heatOf(prepared, weatherSourceOf(prepared, field)!, opening.model.heat) : null;
  const latitude = area.find((one) => one.latitude !== null)?.latitude ?? null;
  return hangBy(opening, track, { season: request.season, latitude, leadDays: request.leadDays, stated: stated.hangOn ?? null });
}

/** Monday 1 to Sunday 7; 1 January 1970 was a Thursday. */
export const weekdayOf = (on: Day): number => ((((on + 3) % 7) + 7) % 7) + 1;

function checkDays(hungOn: Day, takeDownOn: Day, weekdays: readonly number[]): string[] {
  const days: string[] = [];
  for (let on = addDays(hungOn, 1); on <= takeDownOn; on = addDays(on, 1))
    if (weekdays.includes(weekdayOf(on)) || on === takeDownOn) days.push(formatDay(on));
  return days;
}

/** Weekdays ascend; one a week is seven nights, none is taken as that too. */
function shortestStretch(weekdays: readonly number[]): number {
  if (weekdays.length < 2) return WEEK;
  return Math.min(...weekdays.map((weekday, i) => (weekdays[i + 1] ?? weekdays[0]! + WEEK) - weekday));
}

const WEEK = 7;
