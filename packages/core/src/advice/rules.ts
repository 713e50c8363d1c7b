/**
 * Which rules speak for a field and an insect: the program's own first, then the catalogue's as the program chose among
 * them. Nothing is preferred in code: while rivals stand and nothing is chosen, the strictest speaks and the choice is asked for.
 */

import { type Day, formatDay } from '../base/day.ts';
import { regionDistance, rulesFor } from '../catalogue/index.ts';
import type { ActionRule, CatchTableRule, CatchThresholdRule, HeatScoutRule, InfestationRule } from '../catalogue/types.ts';
import type { FieldRecord, ProgramSettings, RuleRecord, TrapDesign } from '../records/schema.ts';
import { once, type Prepared } from './prepare.ts';
import type { Evidence, Verb } from './types.ts';

export type CatchRule = CatchThresholdRule | CatchTableRule;

export interface CellRules {
  /** The first that fits a trap's design speaks for it. */
  readonly catch: readonly CatchRule[];
  readonly infestation: readonly InfestationRule[];
  readonly heat: readonly HeatScoutRule[];
  /** Rules of the catalogue that would hold here but for the program, which goes by them no more. */
  readonly off: readonly { readonly rule: ActionRule; readonly reason: string }[];
}

export function cellRules(prepared: Prepared, field: FieldRecord, insect: string): CellRules {
  const key = `rules\n${field.crop}\n${field.growthHabit}\n${insect}`;
  return once(prepared, 'no check', key, () => rulesOn(prepared, field, insect));
}

const rulesOn = (prepared: Prepared, field: FieldRecord, insect: string): CellRules =>
  rulesAmong(prepared.program, { crop: field.crop, growthHabit: field.growthHabit, insect, on: prepared.on });

/** Of the program's own rules (crops as the catalogue writes them) and the catalogue's, those that hold on a day. */
export function rulesAmong(
  { rules, settings }: { readonly rules: readonly RuleRecord[]; readonly settings: ProgramSettings },
  { crop, growthHabit, insect, on }: Pick<FieldRecord, 'crop' | 'growthHabit'> & { readonly insect: string; readonly on: Day },
): CellRules {
  const today = formatDay(on);
  const own = rules
    .filter(
      (rule) =>
        rule.crop === crop &&
        rule.insect === insect &&
        (rule.validFrom === null || rule.validFrom <= today) &&
        (rule.validTo === null || rule.validTo >= today),
    )
    .map(ownRule);
  const published = rulesFor({ crop, insect, growthHabit });
  const off = published.flatMap((rule) => {
    const reason = whyOff(settings, rule.id);
    return reason === null ? [] : [{ rule, reason }];
  });
  const ordered = inOrder(settings, goneBy(settings, published));
  return {
    catch: [...own, ...ordered.filter(isCatchRule)],
    infestation: ordered.filter((rule) => rule.kind === 'infestation'),
    heat: ordered.filter((rule) => rule.kind === 'heat-scout'),
    off,
  };
}

/** Why the program does not go by a rule; null: it does. */
const whyOff = ({ rulesOff }: ProgramSettings, ruleId: string): string | null =>
  rulesOff?.find((off) => off.ruleId === ruleId)?.reason ?? null;

const goneBy = <R extends ActionRule>(settings: ProgramSettings, rules: readonly R[]): R[] =>
  rules.filter(({ id }) => whyOff(settings, id) === null);

const inOrder = <R extends ActionRule>(settings: ProgramSettings, rules: readonly R[]): R[] =>
  [...rules].sort((a, b) => choiceRank(settings, a) - choiceRank(settings, b) || strictness(a) - strictness(b));

/** Rivals in the order in which they speak, and what put the first of them there. */
export function speakingFirst(settings: ProgramSettings, rivals: readonly ActionRule[]) {
  // One that is off speaks only where all are, and then nobody listens to it.
  const on = goneBy(settings, rivals);
  const rules = inOrder(settings, on.length > 0 ? on : rivals);
  const rank = choiceRank(settings, rules[0]!);
  return { rules, by: rank < 0 ? ('name' as const) : rank < 2 ? ('region' as const) : ('strictest' as const) };
}

/** A rule the program chose by name, then those of its region, of a wider one, of none, and of others. */
function choiceRank({ region = null, chosenRules }: ProgramSettings, rule: ActionRule): number {
  return chosenRules?.includes(rule.id) ? -1 : regionDistance(rule.region, region);
}

/** True when the program said that this rule is to hold: by name, or by the region it is in. */
export const isChosen = (settings: ProgramSettings, rule: ActionRule): boolean => choiceRank(settings, rule) < 2;

const strictness = (rule: ActionRule): number => (isCatchRule(rule) ? lowestPerNight(rule) : 0);

/** The rule for traps of one design: one made for the design, else one that names none; the program's own before others. */
export function ruleForDesign(rules: readonly CatchRule[], design: TrapDesign): CatchRule | null {
  const fits = (own: boolean, exact: boolean) =>
    rules.find((rule) => (rule.standing === 'own') === own && rule.design === (exact ? design : null));
  return fits(true, true) ?? fits(true, false) ?? fits(false, true) ?? fits(false, false) ?? null;
}

/** The catch per night at which a rule begins to ask for a decision. */
export function lowestPerNight(rule: CatchRule): number {
  return rule.kind === 'catch-table' ? rule.tiers[0]!.from : rule.per === 'week' ? rule.threshold / 7 : rule.threshold;
}

/** A rule of the program's own as the catalogue writes rules. */
export function ownRule(rule: RuleRecord): CatchThresholdRule {
  return {
    kind: 'catch-threshold',
    id: rule.ruleId,
    insect: rule.insect,
    crops: [rule.crop],
    growthHabits: null,
    stages: rule.stages.length > 0 ? rule.stages : null,
    region: '',
    may: rule.may ?? 'decide',
    design: rule.design,
    threshold: rule.threshold,
    per: rule.per,
    intervalDays: rule.intervalDays,
    unless: null,
    source: rule.source ?? '',
    standing: 'own',
  };
}

const isCatchRule = (rule: ActionRule): rule is CatchRule => rule.kind === 'catch-threshold' || rule.kind === 'catch-table';

/**
 * Rules of other regions (or the catalogue's behind the program's own) that would also fit: named with what each would
 * say of the same catch, not applied.
 */
export function otherRules(
  rules: CellRules,
  lead: { readonly rule: CatchRule | null; readonly design: TrapDesign; readonly rate: { readonly perNight: number } } | null,
): (Evidence & { kind: 'other-rule' })[] {
  if (!lead?.rule) return [];
  return rules.catch
    .filter((rule) => rule !== lead.rule && (rule.design === null || rule.design === lead.design))
    .map((rule) => ({
      kind: 'other-rule',
      ruleId: rule.id,
      region: rule.region,
      threshold: rule.kind === 'catch-table' ? rule.tiers[0]!.from : rule.threshold,
      per: rule.kind === 'catch-table' ? 'night' : rule.per,
      stages: rule.stages ?? [],
      verb: verbAt(rule, lead.rate.perNight),
      source: rule.source,
    }));
}

/** What a rule alone would say of a nightly catch at one of its stages. */
const verbAt = (rule: CatchRule, perNight: number): Verb =>
  reaches(perNight, lowestPerNight(rule)) ? (rule.may === 'decide' ? 'decide' : 'scout') : 'watch';

/** Rates are compared with a rule's figure after a relative slack: 1.4 a week is 0.2 a night, whatever binary fractions say. */
export const SLACK = 1e-9;

export const reaches = (perNight: number, figure: number): boolean => perNight >= figure * (1 - SLACK);
