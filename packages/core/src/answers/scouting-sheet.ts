/** A scouting plan for one field and insect, ready to be printed and taken along. */
import type { Prepared } from '../advice/prepare.ts';
import type { IsoDay } from '../base/day.ts';
import { ok, type Problem, type Result, refuse } from '../base/problem.ts';
import { catalogue } from '../catalogue/index.ts';
import { type CountingPlan, countingPlan } from '../scouting/counting.ts';
import { type PlanCurves, planCurves } from '../scouting/curve.ts';
import { type PlanOptions, planFor, type ScoutingPlan, type WalkedPlaces } from '../scouting/plan-for.ts';
import { placeNow, type SheetLine, sheetLines } from '../scouting/walking.ts';
import type { InsectName } from './schema.ts';
import { lookIn, scoutingView } from './scouting.ts';
import type { ScoutingField, ScoutingPair, ScoutingView } from './scouting-schema.ts';

/** One sheet asked for; without a rule, the one that speaks for the crop now. */
export interface SheetWanted {
  readonly fieldId: string;
  readonly insect: string;
  readonly ruleId?: string | undefined;
}

export interface ScoutingSheet {
  readonly program: ScoutingView['program'];
  readonly on: IsoDay;
  readonly field: ScoutingField;
  readonly pair: ScoutingPair;
  readonly insect: InsectName;
  readonly look: ScoutingView['looks'][number] | null;
  readonly walk: WalkedPlaces;
  /** Null where no figure is published: the units are counted, and no line stops. */
  readonly plan: ScoutingPlan | null;
  readonly counting: CountingPlan | null;
  readonly lines: readonly SheetLine[];
  readonly curves: Omit<PlanCurves, 'curve'> | null;
}

/**
 * The sheets asked for, in that order; null: one for every field and insect that is to be scouted now. Refused when
 * a field, an insect there or a rule is not known, or the options make no plan.
 */
export function scoutingSheets(
  prepared: Prepared,
  wanted: readonly SheetWanted[] | null,
  options: PlanOptions = {},
): Result<readonly ScoutingSheet[]> {
  const view = scoutingView(prepared);
  const all = wanted ?? dueNow(view);
  const sheets: ScoutingSheet[] = [];
  const problems: Problem[] = [];
  for (const each of all) {
    const sheet = sheetOf(view, each, options);
    if (sheet.ok) sheets.push(sheet.value);
    else problems.push(...sheet.problems);
  }
  return problems.length > 0 ? refuse(...problems) : ok(sheets);
}

const dueNow = (view: ScoutingView): SheetWanted[] =>
  view.fields.flatMap(({ fieldId, pairs }) =>
    pairs.filter(({ verb }) => verb === 'scout').map(({ insect }) => ({ fieldId, insect })),
  );

function sheetOf(view: ScoutingView, wanted: SheetWanted, options: PlanOptions): Result<ScoutingSheet> {
  const field = view.fields.find(({ fieldId }) => fieldId === wanted.fieldId);
  if (!field) return refuse(unknown('fieldId', wanted.fieldId, 'a field with something to scout for on this day'));
  const pair = field.pairs.find(({ insect }) => insect === wanted.insect);
  if (!pair) return refuse(unknown('insect', wanted.insect, `an insect to scout for in ${wanted.fieldId}`));
  const ruleId = wanted.ruleId ?? pair.rules[0]?.ruleId;
  if (ruleId !== undefined && !pair.rules.some((rule) => rule.ruleId === ruleId))
    return refuse(unknown('ruleId', ruleId, `a rule for ${wanted.insect} in ${field.crop}`));
  const rule = catalogue.rules.find(({ id }) => id === ruleId);
  const clumping = view.plans.find((each) => each.ruleId === ruleId)?.clumping ?? undefined;
  const plan = rule ? planFor(rule, { clumping, ...options }) : null;
  if (plan && !plan.ok) return plan;
  const unit = plan?.value.unit ?? 'plants';
  const facts = {
    program: view.program,
    on: view.on,
    field,
    pair,
    insect: view.insects.find(({ id }) => id === wanted.insect)!,
    look: lookIn(view.looks, wanted.insect, field.crop, unit),
  };
  if (plan) {
    const { curve: _, ...curves } = planCurves(plan.value, 2);
    return ok({ ...facts, walk: plan.value.walk, plan: plan.value, counting: null, lines: sheetLines(plan.value), curves });
  }
  const counting = countingPlan(wanted.insect);
  return ok({ ...facts, walk: counting.walk, plan: null, counting, lines: countingLines(counting), curves: null });
}

/** The places of a fixed sample: none of them stops it. */
function countingLines({ units, walk }: CountingPlan): SheetLine[] {
  const lines: SheetLine[] = [];
  for (let before = 0; before < units; before += walk.perPlace) {
    const { lap, place } = placeNow(walk, before);
    lines.push({ lap, place, units: walk.perPlace, samples: before + walk.perPlace, below: null, above: null });
  }
  return lines;
}

const unknown = (parameter: string, got: string, expected: string): Problem => ({
  where: { parameter },
  got,
  expected,
  fix: 'Take it from the list of fields to scout.',
});
