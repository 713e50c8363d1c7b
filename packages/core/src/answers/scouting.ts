/** Fields and insects that may be sampled now, and the plan for each. */

import { stageFit, stageOf } from '../advice/crop-stage.ts';
import { adviseCell } from '../advice/decide.ts';
import { cellKey, growingYearStart, type Prepared } from '../advice/prepare.ts';
import { cellRules } from '../advice/rules.ts';
import type { Advice, Verb } from '../advice/types.ts';
import { formatDay } from '../base/day.ts';
import { catalogue, cropById, lookFor } from '../catalogue/index.ts';
import type { FieldRecord } from '../records/schema.ts';
import { clumpingFound } from '../scouting/clumping.ts';
import { countingPlan } from '../scouting/counting.ts';
import { planFor } from '../scouting/plan-for.ts';
import { roundField } from './round.ts';
import { sampleShown } from './sample-shown.ts';
import type { ScoutingField, ScoutingPair, ScoutingView, StageMatch } from './scouting-schema.ts';
import { insectName } from './week.ts';

const VERBS: readonly Verb[] = ['scout', 'decide', 'blind', 'watch', 'covered', 'none'];

export function scoutingView(prepared: Prepared): ScoutingView {
  const { name, invented } = prepared.program.settings;
  const fields = prepared.program.fields
    .map((field) => scoutingField(prepared, field))
    .filter((field) => field.pairs.length > 0)
    .sort((a, b) => compare(urgency(a.pairs[0]!), urgency(b.pairs[0]!)) || compare(a.name, b.name));
  const pairs = fields.flatMap((field) => field.pairs.map((pair) => ({ ...pair, crop: field.crop })));
  const ruleIds = new Set(pairs.flatMap(({ rules }) => rules.map(({ ruleId }) => ruleId)));
  const today = formatDay(prepared.on);
  const taken = prepared.program.samples.filter(({ sampledOn }) => sampledOn <= today);
  const plans = catalogue.rules.flatMap((rule) => {
    if (!ruleIds.has(rule.id)) return [];
    const plan = planFor(rule, { clumping: clumpingFound(taken, rule.insect) });
    return plan.ok ? [plan.value] : [];
  });
  const counting = distinct(pairs.filter(({ rules }) => rules.length === 0).map(({ insect }) => insect)).map(countingPlan);
  const looks = pairs.flatMap(({ insect, crop }) =>
    distinct(['plants', ...plans.filter((plan) => plan.insect === insect).map(({ unit }) => unit)]).flatMap((unit) => {
      const look = lookFor(insect, crop, unit);
      return look ? [{ insect, crop, unit, text: look.text, source: look.source }] : [];
    }),
  );
  return {
    program: { name, invented },
    on: formatDay(prepared.on),
    insects: distinct(pairs.map(({ insect }) => insect)).map(insectName),
    crops: distinct(fields.map(({ crop }) => crop)).map((crop) => ({
      crop,
      stages: (cropById(crop)?.stages ?? []).map(({ id, name: stageName }) => ({ id, name: stageName })),
    })),
    plans,
    counting,
    looks: [...new Map(looks.map((look) => [`${look.insect} ${look.crop} ${look.unit}`, look])).values()],
    fields,
  };
}

/** What to look for on a unit of a sample; null where the catalogue has no word. */
export const lookIn = (looks: ScoutingView['looks'], insect: string, crop: string, unit: string) =>
  looks.find((look) => look.insect === insect && look.crop === crop && look.unit === unit) ?? null;

function scoutingField(prepared: Prepared, field: FieldRecord): ScoutingField {
  const { stages: _, ...facts } = roundField(prepared, field);
  const { growthHabit, latitude, longitude } = field;
  const pairs = prepared.insects
    .map((insect) => pairOf(prepared, field, insect))
    .filter((pair) => pair !== null)
    .sort((a, b) => compare(urgency(a), urgency(b)) || compare(a.insect, b.insect));
  return { ...facts, growthHabit, latitude, longitude, pairs };
}

/** Null where there is nothing to sample: another crop, not planted yet, or harvested. */
function pairOf(prepared: Prepared, field: FieldRecord, insect: string): ScoutingPair | null {
  const advice = adviseCell(prepared, field.fieldId, insect);
  if (isAway(advice)) return null;
  const stage = stageOf(prepared, field);
  const rules = cellRules(prepared, field, insect).infestation.map((rule) => {
    const { kind } = stageFit(field, rule.stages, stage);
    return {
      ruleId: rule.id,
      match: kind === 'susceptible' ? ('now' as const) : kind === 'may-be' ? ('unknown' as const) : kind,
    };
  });
  const start = formatDay(growingYearStart(field, prepared.on));
  const last = (prepared.samplesByCell.get(cellKey(field.fieldId, insect)) ?? []).findLast(
    ({ sampledOn }) => sampledOn >= start && sampledOn <= formatDay(prepared.on),
  );
  return {
    insect,
    verb: advice.verb,
    by: advice.by,
    dueSince: advice.dueSince,
    rules: rules.sort((a, b) => MATCHES.indexOf(a.match) - MATCHES.indexOf(b.match)),
    lastSample: last ? sampleShown(last) : null,
  };
}

const MATCHES: readonly StageMatch[] = ['now', 'any', 'unknown', 'not-yet', 'over'];

const AWAY = new Set(['not-a-host', 'no-rule', 'not-planted', 'harvested']);
const isAway = ({ verb, because }: Advice) =>
  verb === 'none' && because.some((each) => each.kind === 'out-of-season' && AWAY.has(each.why));

const urgency = ({ verb, by, dueSince }: ScoutingPair) => `${VERBS.indexOf(verb)} ${dueSince ?? by ?? '9999'}`;
const compare = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);
const distinct = <T>(values: readonly T[]): T[] => [...new Set(values)];
