/** What a field's rules say of the present catch, what would change the verb, and the decisions ahead while it holds. */
import type { Prepared } from '../advice/prepare.ts';
import { type CatchRule, cellRules, lowestPerNight, reaches } from '../advice/rules.ts';
import type { Advice, Evidence, Verb } from '../advice/types.ts';

import { addDays, type Day, day, formatDay, type IsoDay } from '../base/day.ts';
import { ASSUMPTIONS } from '../catalogue/index.ts';
import type { ActionRule } from '../catalogue/types.ts';
import type { FieldRecord } from '../records/schema.ts';
import type { DecisionsAhead, Otherwise, RuleShown } from './field-schema.ts';

type Rules = readonly ActionRule[];

/** Every rule for the pair, the one in use first, each with what it says of what is known now. */
export function rulesShown(prepared: Prepared, field: FieldRecord, insect: string, advice: Advice): RuleShown[] {
  const rules = cellRules(prepared, field, insect);
  const all: Rules = [...rules.catch, ...rules.infestation];
  const inUse = (rule: ActionRule) => advice.rule?.id === rule.id && advice.verb !== 'none';
  return [...all]
    .sort((a, b) => Number(inUse(b)) - Number(inUse(a)))
    .map((rule) => ({
      ruleId: rule.id,
      kind: rule.kind === 'infestation' ? ('infestation' as const) : ('catch' as const),
      region: rule.region,
      may: rule.may,
      standing: rule.standing,
      source: rule.source,
      stages: [...(rule.stages ?? [])],
      design: rule.kind === 'infestation' ? null : (rule as CatchRule).design,
      steps: stepsOf(rule, inUse(rule) ? advice.rate : null),
      sample:
        rule.kind === 'infestation' ? { unit: rule.unit, sign: rule.sign, share: rule.share, examine: rule.examine.units } : null,
      inUse: inUse(rule),
      says: inUse(rule) ? advice.verb : saysElsewhere(rule, advice.because),
      harvestStopDays: rule.kind === 'catch-table' ? rule.harvestStopDays : null,
      weather: adjustmentsOf(rule, advice.because),
    }));
}

/** The figures from which a catch rule asks for something; the step that the rate stands in is marked. */
function stepsOf(rule: ActionRule, rate: number | null): RuleShown['steps'] {
  if (rule.kind === 'catch-threshold') {
    const from = lowestPerNight(rule);
    const inForce = rate !== null && reaches(rate, from);
    return [
      {
        fromPerNight: from,
        belowPerNight: null,
        per: rule.per,
        figure: rule.threshold,
        intervalDays: rule.intervalDays,
        inForce,
      },
    ];
  }
  if (rule.kind !== 'catch-table') return [];
  const last =
    rate === null ? -1 : rule.tiers.findLastIndex(({ from, exclusive }) => (exclusive ? rate > from : reaches(rate, from)));
  return rule.tiers.map(({ from, intervalDays }, index) => ({
    fromPerNight: from,
    belowPerNight: rule.tiers[index + 1]?.from ?? null,
    per: 'night' as const,
    figure: from,
    intervalDays,
    inForce: index === last,
  }));
}

/** What a rule that is not in use says; null where the records give it nothing to speak of. */
function saysElsewhere(rule: ActionRule, because: readonly Evidence[]): Verb | null {
  for (const item of because) {
    if (item.kind === 'other-rule' && item.ruleId === rule.id) return item.verb;
    if (item.kind === 'threshold' && item.ruleId === rule.id)
      return item.reached ? (rule.may === 'decide' ? 'decide' : 'scout') : 'watch';
    if (item.kind === 'sample' && item.ruleId === rule.id)
      return item.verdict === 'above'
        ? 'decide'
        : item.verdict === 'below'
          ? 'watch'
          : item.verdict === 'not-yet'
            ? 'scout'
            : null;
  }
  return null;
}

function adjustmentsOf(rule: ActionRule, because: readonly Evidence[]): RuleShown['weather'] {
  if (rule.kind !== 'catch-table') return [];
  return rule.adjustments.map(({ when, temperatureC, days, addDays: more }) => ({
    when,
    temperatureC,
    days,
    addDays: more,
    applied:
      because
        .filter((item) => item.kind === 'weather-adjustment')
        .find((item) => item.when === when && item.temperatureC === temperatureC)?.applied ?? null,
  }));
}

/** What would change the verb, the nearest first. */
export function otherwise(advice: Advice, rules: readonly RuleShown[]): Otherwise[] {
  const rule = rules.find((each) => each.inUse) ?? null;
  const steps = rule?.steps ?? [];
  const lowest = steps[0] ?? null;
  const next = steps.find(({ fromPerNight }) => advice.rate !== null && fromPerNight > advice.rate) ?? null;
  const asks = advice.verb === 'decide' || advice.verb === 'scout';
  const changes: Otherwise[] = [];
  if (asks && lowest && advice.rate !== null && advice.rate >= lowest.fromPerNight)
    changes.push({ when: 'catch-below', perNight: lowest.fromPerNight, verb: 'watch', intervalDays: null, on: null });
  if (asks && next && next !== lowest && next.intervalDays !== null)
    changes.push({
      when: 'catch-over',
      perNight: next.fromPerNight,
      verb: advice.verb,
      intervalDays: next.intervalDays,
      on: null,
    });
  if ((advice.verb === 'watch' || advice.verb === 'covered') && lowest && rule && (advice.rate ?? 0) < lowest.fromPerNight)
    changes.push({
      when: 'catch-over',
      perNight: lowest.fromPerNight,
      verb: rule.may === 'decide' ? 'decide' : 'scout',
      intervalDays: null,
      on: null,
    });
  if (advice.verb === 'decide') {
    changes.push({ when: 'treated', perNight: null, verb: 'covered', intervalDays: null, on: null });
    changes.push({ when: 'decided-not', perNight: null, verb: 'watch', intervalDays: null, on: null });
  }
  if (advice.verb === 'scout') {
    changes.push({ when: 'sample-above', perNight: null, verb: 'decide', intervalDays: null, on: null });
    changes.push({ when: 'sample-below', perNight: null, verb: 'watch', intervalDays: null, on: null });
  }
  if (advice.verb === 'covered' && advice.by !== null)
    changes.push({ when: 'cover-over', perNight: null, verb: 'decide', intervalDays: null, on: advice.by });
  const seen = lastCounted(advice.because);
  if (seen !== null && advice.verb !== 'blind' && advice.verb !== 'none')
    changes.push({
      when: 'no-check',
      perNight: null,
      verb: 'blind',
      intervalDays: null,
      on: formatDay(addDays(day(seen), ASSUMPTIONS.maxCheckGapDays.value + 1)),
    });
  return changes;
}

/** The newest visit that the rate rests on. */
function lastCounted(because: readonly Evidence[]): IsoDay | null {
  const rate = because.find((item) => item.kind === 'rate');
  return (
    rate?.checks
      .map(({ to }) => to)
      .sort()
      .at(-1) ?? null
  );
}

const MOST_AHEAD = 8;

/**
 * The days on which the rule would ask again while the catch holds, if it were decided today, and the first day from which
 * it asks no more because harvest is near.
 */
export function decisionsAhead(
  advice: Advice,
  field: Pick<FieldRecord, 'harvestOn'>,
  rules: readonly RuleShown[],
  on: Day,
): DecisionsAhead {
  const rule = rules.find((each) => each.inUse) ?? null;
  const harvest = field.harvestOn === null ? null : day(field.harvestOn);
  const stop = harvest === null ? null : rule?.harvestStopDays ? addDays(harvest, 1 - rule.harvestStopDays) : harvest;
  const days: IsoDay[] = [];
  if (advice.verb === 'decide' && advice.intervalDays !== null)
    for (let next = addDays(on, advice.intervalDays); days.length < MOST_AHEAD; next = addDays(next, advice.intervalDays)) {
      if (stop === null ? days.length >= 2 : next >= stop) break;
      days.push(formatDay(next));
    }
  // Only what the rule itself says: where it names no days before harvest, it names no end.
  const ends = rule?.harvestStopDays && stop !== null && stop > on ? formatDay(stop) : null;
  return { again: days, noneFrom: ends };
}
