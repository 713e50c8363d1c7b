/** The advice for one field and insect: its verb, the day, and all that it rests on. */

import { type Day, formatDay } from '../base/day.ts';
import { ASSUMPTIONS } from '../catalogue/index.ts';
import type { ActionRule } from '../catalogue/types.ts';
import type { FieldRecord } from '../records/schema.ts';
import { catchFinding, type DesignFinding } from './catch-finding.ts';
import { confidenceOf, nothingMeansLittle } from './confidence.ts';
import { stageOf, whyOutOfSeason } from './crop-stage.ts';
import { decisionFinding } from './decisions.ts';
import { otherDesign } from './designs.ts';
import { type Findings, isOpen } from './findings.ts';
import { dueFrom } from './lateness.ts';
import { type HeatFinding, heatFinding } from './phenology.ts';
import { cellKey, type Prepared } from './prepare.ts';
import { cellRules, isChosen, otherRules } from './rules.ts';
import { sampleFinding } from './scouting.ts';
import { asking, type Conclusion, firstOf, stageEvidence, treatmentEvidence } from './steps.ts';
import { labelCautions, treatmentFinding } from './treatment.ts';
import type { Advice, Caution, Evidence, RuleReference, Verb } from './types.ts';

/** Worked out once for a prepared program. */
export function adviseCell(prepared: Prepared, fieldId: string, insect: string): Advice {
  const cell = cellKey(fieldId, insect);
  const known = prepared.advice.get(cell);
  if (known) return known;
  const advice = adviceFor(prepared, fieldId, insect);
  prepared.advice.set(cell, advice);
  return advice;
}

function adviceFor(prepared: Prepared, fieldId: string, insect: string): Advice {
  const field = fieldOf(prepared, fieldId);
  const away = outOfSeason(prepared, field, insect);
  if (away) return finish(prepared, field, insect, { conclusion: away, due: null, reasons: away.because(), context: [] });
  const findings = findingsOf(prepared, field, insect);
  const conclusion = firstOf(findings);
  const due = dueFrom(findings, conclusion, (earlier) => conclusionOf(earlier, field, insect));
  const reasons = conclusion.because();
  return finish(prepared, field, insect, { conclusion, due, reasons, context: contextOf(findings, conclusion, reasons) });
}

/** The verb with its rule and the day that this day's records alone give it: what many days of a season are read for. */
export function verbOf(
  prepared: Prepared,
  fieldId: string,
  insect: string,
): { readonly verb: Verb; readonly rule: ActionRule | null; readonly due: Day | null; readonly forecast: boolean } {
  const { verb, rule = null, due, forecast = false } = conclusionOf(prepared, fieldOf(prepared, fieldId), insect);
  return { verb, rule, due, forecast };
}

function fieldOf(prepared: Prepared, fieldId: string): FieldRecord {
  const field = prepared.fields.get(fieldId);
  if (!field) throw new Error(`no field ${fieldId} in the program`);
  return field;
}

const conclusionOf = (prepared: Prepared, field: FieldRecord, insect: string): Conclusion =>
  outOfSeason(prepared, field, insect) ?? firstOf(findingsOf(prepared, field, insect));

function findingsOf(prepared: Prepared, field: FieldRecord, insect: string): Findings {
  const rules = cellRules(prepared, field, insect);
  const stage = stageOf(prepared, field);
  const caught = catchFinding(prepared, field, insect, rules.catch);
  const asks = asking(caught);
  let heat: HeatFinding | null = null;
  return {
    prepared,
    field,
    insect,
    rules,
    stage,
    noStage: { kind: 'missing', what: 'stage', from: stage?.observedOn ?? null, to: null, detail: stage?.written ?? null },
    caught,
    sample: sampleFinding(prepared, field, insect, rules.infestation),
    // Heat takes longest, and many verbs are found without it.
    get heat() {
      heat ??= heatFinding(
        prepared,
        field,
        rules.heat.filter((rule) => isOpen(field, rule, stage)),
      );
      return heat;
    },
    treatment: treatmentFinding(prepared, field, insect, asks),
    notTreated: decisionFinding(prepared, field, insect, 'not-treated', asks),
    notScouted: decisionFinding(prepared, field, insect, 'not-scouted', asks),
  };
}

/** Why field and insect do not meet now, whatever the catch; null when they may. */
function outOfSeason(prepared: Prepared, field: FieldRecord, insect: string): Conclusion | null {
  const because = whyOutOfSeason(prepared, field, insect);
  return because && { verb: 'none', due: null, because: () => [because] };
}

/** Evidence that every verb should carry besides its own reason. */
function contextOf(findings: Findings, conclusion: Conclusion, reasons: readonly Evidence[]): Evidence[] {
  const { caught, stage, heat, treatment, notTreated, notScouted, sample, field, rules } = findings;
  const off = rules.off.map(({ rule: { id, region }, reason }): Evidence => ({ kind: 'rule-off', ruleId: id, region, reason }));
  if (conclusion.verb === 'none') return off;
  const lead = conclusion.lead ?? null;
  const context: Evidence[] = [];
  if (lead) context.push(...lead.because);
  for (const other of caught.designs)
    if (other !== lead && other.design !== lead?.design) context.push(...otherDesign(other, lead));
  context.push(...caught.unusable);
  const speaking = conclusion.rule ? [conclusion.rule] : [...rules.catch, ...rules.infestation, ...rules.heat];
  if (stage && !reasons.some(({ kind }) => kind === 'stage')) context.push(stageEvidence(field, speaking, stage));
  else if (!stage && speaking.some((rule) => rule.stages !== null)) context.push(findings.noStage);
  context.push(...heat.because);
  if (sample) context.push(sample.because);
  if (treatment) context.push(...treatmentEvidence(treatment));
  for (const decided of [notTreated, notScouted]) if (decided) context.push(decided.because);
  const others = otherRules(rules, lead);
  const { settings } = findings.prepared.program;
  if (lead?.rule && others.length > 0 && lead.rule.standing !== 'own' && !isChosen(settings, lead.rule))
    context.push({ kind: 'choice-open', ruleId: lead.rule.id, region: lead.rule.region });
  context.push(...others, ...off);
  return context;
}

function finish(
  prepared: Prepared,
  field: FieldRecord,
  insect: string,
  {
    conclusion,
    due,
    reasons,
    context,
  }: {
    readonly conclusion: Conclusion;
    readonly due: Day | null;
    readonly reasons: readonly Evidence[];
    readonly context: readonly Evidence[];
  },
): Advice {
  const lead = conclusion.lead ?? null;
  const rule = conclusion.rule ?? null;
  // A verb by the catch begins with the doubt about its traps. A finding is one object wherever it is used, so the set
  // keeps each once.
  const doubts = reasons[0]?.kind === 'rate' && conclusion.verb !== 'none' ? (lead?.doubts ?? []) : [];
  const because = [...new Set([...doubts, ...reasons, ...context])];
  const cautions = [
    ...(conclusion.cautions ?? []),
    ...standing(prepared, conclusion, lead, because),
    ...labelCautions(prepared, field),
  ];
  return {
    field: field.fieldId,
    insect,
    verb: conclusion.verb,
    by: due === null ? null : formatDay(Math.max(due, prepared.on) as Day),
    dueSince: due === null || due > prepared.on || conclusion.verb === 'covered' ? null : formatDay(due),
    rate: lead?.rate.perNight ?? null,
    interval: lead ? [lead.rate.low, lead.rate.high] : null,
    intervalDays: lead?.intervalDays ?? null,
    probabilityAbove: rule === null || rule === lead?.rule ? (lead?.probabilityAbove ?? null) : null,
    because,
    cautions,
    confidence: confidenceOf(conclusion.verb, lead, because),
    rule: rule ? ruleReference(rule) : null,
    source: rule && rule.source !== '' ? rule.source : null,
  };
}

/** Cautions that follow from the verb and from what it rests on. */
function standing(
  prepared: Prepared,
  conclusion: Conclusion,
  lead: DesignFinding | null,
  because: readonly Evidence[],
): Caution[] {
  const cautions: Caution[] = [];
  const rule = conclusion.rule ?? null;
  if (conclusion.verb === 'decide') cautions.push({ kind: 'label-and-adviser' }, { kind: 'bees' });
  if (lead && conclusion.verb !== 'none') {
    if (lead.readsLow) cautions.push({ kind: 'reads-low', why: 'spent-lure' });
    if (lead.doubtful) cautions.push({ kind: 'reads-low', why: 'doubtful-check' });
    if (lead.rate.trapNights < ASSUMPTIONS.fewTrapNights.value)
      cautions.push({ kind: 'few-nights', trapNights: lead.rate.trapNights });
    if (nothingMeansLittle(lead)) {
      const { high, level } = lead.rate;
      cautions.push({ kind: 'nothing-caught', upTo: high, level, thresholdPerNight: lead.thresholdPerNight! });
    }
    if (lead.rule?.design === null) cautions.push({ kind: 'rule-design-unstated' });
  }
  const designs = because.flatMap((item) => (item.kind === 'other-design' ? [item.design] : []));
  if (lead && designs.length > 0) cautions.push({ kind: 'designs-not-pooled', designs: [lead.design, ...designs] });
  if (rule && rule.standing !== 'own' && rule.region !== '' && !isChosen(prepared.program.settings, rule))
    cautions.push({ kind: 'rule-from-elsewhere', region: rule.region });
  const stage = because.find((item) => item.kind === 'stage');
  if (stage && stage.ageDays > ASSUMPTIONS.stageOldDays.value) cautions.push({ kind: 'stage-old', ageDays: stage.ageDays });
  return cautions;
}

function ruleReference(rule: ActionRule): RuleReference {
  return { id: rule.id, kind: rule.kind, region: rule.region, may: rule.may, standing: rule.standing };
}
