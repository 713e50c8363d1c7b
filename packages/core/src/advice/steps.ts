/**
 * From findings to one verb.
 *
 * In this order: out of season; covered; a decision due (a sample or the catch has reached its rule); scouting due (catch
 * near its rule or adding up below it, or heat says that eggs or larvae are due, by the model's start or by the moths caught); blind when something that could have
 * raised a verb cannot be seen; else watch. The order is the urgency of the act, and each step keeps its evidence.
 */

import { addDays, type Day, day, formatDay } from '../base/day.ts';
import { ASSUMPTIONS, cropById } from '../catalogue/index.ts';
import type { ActionRule } from '../catalogue/types.ts';
import type { FieldRecord } from '../records/schema.ts';
import { blindSpots } from './blind-spots.ts';
import type { CatchFinding, DesignFinding } from './catch-finding.ts';
import { type StageFit, type StageKnown, stageFit } from './crop-stage.ts';
import { nextCheck } from './due.ts';
import type { Findings } from './findings.ts';
import { larvaeFinding } from './larvae-finding.ts';
import { samplingEvidence, samplingRule } from './scouting.ts';
import type { CarriedByHeat } from './stage-carried.ts';
import type { TreatmentFinding } from './treatment.ts';
import type { Caution, Evidence, Verb } from './types.ts';

export interface Conclusion {
  readonly verb: Verb;
  /** The day it is due, which may lie before today; until when, for `covered`. */
  readonly due: Day | null;
  /** `due` is as the heat to come was expected: it may move. */
  readonly forecast?: boolean;
  /** Put together only where somebody is to read it: past days are read for the verb and its day. */
  readonly because: () => readonly Evidence[];
  readonly cautions?: readonly Caution[];
  readonly lead?: DesignFinding | null;
  readonly rule?: ActionRule | null;
}

type Step = (findings: Findings) => Conclusion | null;

const steps: readonly Step[] = [unwatched, notSusceptible, covered, decideBySample, decideByCatch, harvestStop, scout, blind];

/** The first step that has something to say; `watch` always has. */
export function firstOf(findings: Findings): Conclusion {
  for (const step of steps) {
    const conclusion = step(findings);
    if (conclusion) return conclusion;
  }
  return watch(findings);
}

/** The insect may feed here, but no rule is known for it and nobody traps or samples it: there is nothing to be blind about. */
function unwatched({ rules, caught, sample }: Findings): Conclusion | null {
  if (rules.catch.length + rules.infestation.length + rules.heat.length > 0 || caught.traps.length > 0 || sample) return null;
  return { verb: 'none', due: null, because: () => [{ kind: 'out-of-season', why: 'no-rule', date: null, days: null }] };
}

/** All the rules for the pair wait for another stage of the crop, or are past it. */
function notSusceptible({ field, rules, stage, sample }: Findings): Conclusion | null {
  const all = [...rules.catch, ...rules.infestation, ...rules.heat];
  if (all.length === 0 || stage === null || sample?.verdict === 'above') return null;
  const fits = all.map((rule) => stageFit(field, rule.stages, stage).kind);
  if (!fits.every((kind) => kind === 'not-yet' || kind === 'over')) return null;
  return {
    verb: 'none',
    due: null,
    because: () => [{ kind: 'out-of-season', why: 'stage', date: null, days: null }, stageEvidence(field, all, stage)],
  };
}

function covered({ treatment, sample, caught }: Findings): Conclusion | null {
  if (!treatment?.covering) return null;
  if (sample?.verdict === 'above' && sample.sampledOn > treatment.appliedOn) return null;
  const lead = asking(caught) ?? leading(caught);
  const because = () => treatmentEvidence(treatment);
  return { verb: 'covered', due: treatment.coversUntil, because, lead, rule: lead?.rule ?? null };
}

function decideBySample({ sample, treatment, notTreated, caught }: Findings): Conclusion | null {
  if (sample?.verdict !== 'above') return null;
  const answered = [treatment?.appliedOn, notTreated?.decidedOn].some((on) => on !== undefined && on >= sample.sampledOn);
  if (answered) return null;
  const due = addDays(sample.sampledOn, decideWithin(sample.rule));
  return { verb: 'decide', due, because: () => [sample.because], lead: leading(caught), rule: sample.rule };
}

function decideByCatch({ caught, stage, treatment, notTreated }: Findings): Conclusion | null {
  const lead = asking(caught);
  if (!lead || notTreated?.holding) return null;
  const reached = addDays(newestVisit(lead), decideWithin(lead.rule));
  // Before the stage was seen there was nothing to decide, whatever had been caught.
  const seen = lead.rule?.stages && stage ? day(stage.observedOn) : reached;
  const due = Math.max(reached, seen, treatment?.coversUntil ?? reached, notTreated?.holdsUntil ?? reached) as Day;
  return { verb: 'decide', due, because: () => lead.because, lead, rule: lead.rule };
}

/** Days from the reaching of a rule to its decision: as many as the biology leaves, where the rule knows it. */
const decideWithin = (rule: ActionRule | null): number => rule?.decideWithin?.days ?? ASSUMPTIONS.decideWithinDays.value;

const newestVisit = ({ intervals }: DesignFinding): Day => Math.max(...intervals.map((interval) => interval.to)) as Day;

/** The rule itself asks for nothing so close to harvest. */
function harvestStop({ field, caught }: Findings): Conclusion | null {
  const stopped = caught.designs.find((finding) => finding.harvestStop && speaks(finding));
  if (!stopped || field.harvestOn === null) return null;
  const days = stopped.rule?.kind === 'catch-table' ? stopped.rule.harvestStopDays : null;
  const stop: Evidence = { kind: 'out-of-season', why: 'harvest-stop', date: field.harvestOn, days };
  const lead = { ...stopped, intervalDays: null };
  return {
    verb: 'none',
    due: null,
    because: () => [stop, ...stopped.because],
    lead,
    rule: stopped.rule,
  };
}

function scout(findings: Findings): Conclusion | null {
  const { prepared, field, caught, rules, sample, notScouted } = findings;
  if (notScouted?.holding) return null;
  const sampling = samplingRule(prepared, field, rules.infestation);
  // Nobody is sent for larvae alone without a figure to hold a sample against, nor where the crop's stage must be seen first.
  const plantsDecide = sampling !== null && holds(stageFit(field, sampling.stages, findings.stage));
  const asks = caught.designs
    .filter((finding) => asksForScouting(finding) && maySendScouting(finding, plantsDecide))
    .sort(bySeverity)[0];
  const how = sampling ? [samplingEvidence(sampling)] : [];
  if (sample?.verdict === 'below') return asks ? betterLook(findings, asks, how) : null;

  const byHeat = findings.heat.due[0];
  const lead = asks ?? leading(caught);
  const half = sample !== null && !sample.clean && sample.verdict === 'not-yet' ? sample : null;
  if (!asks && !byHeat && !plantsDecide && !half) return null;
  const larvae = larvaeFinding(prepared, field, caught.traps, findings.treatment);
  const left = () => (larvae ? [larvae.because] : []);
  if (half) {
    const due = soonest(addDays(half.sampledOn, ASSUMPTIONS.scoutWithinDays.value), byHeat?.by, larvae?.by);
    const because = () => [scoutingAsked('sample-small'), half.because, ...how, ...(asks ? asks.because : []), ...left()];
    return { verb: 'scout', due, because, lead, rule: half.rule };
  }
  if (asks) {
    const due = soonest(addDays(newestVisit(asks), ASSUMPTIONS.scoutWithinDays.value), byHeat?.by, larvae?.by);
    const cautions: Caution[] = asks.accumulating ? [{ kind: 'threshold-is-estimate' }] : [];
    const unseen = () =>
      stageUnseen(asks) ? [findings.stage ? stageEvidence(field, [asks.rule!], findings.stage) : findings.noStage] : [];
    const because = () => [whyAsked(asks), ...unseen(), ...asks.because, ...left(), ...(byHeat ? [byHeat.event] : []), ...how];
    return { verb: 'scout', due, because, cautions, lead: asks, rule: asks.rule };
  }
  if (byHeat) {
    const due = soonest(byHeat.by, larvae?.by);
    const forecast = due > prepared.on;
    return { verb: 'scout', due, forecast, because: () => [byHeat.event, ...left(), ...how], lead, rule: byHeat.rule };
  }
  if (!larvae || larvae.by === null || !plantsDecide) return null;
  return {
    verb: 'scout',
    due: larvae.by,
    forecast: larvae.by > prepared.on,
    because: () => [larvae.because, ...how],
    lead,
    rule: sampling,
  };
}

/** A sample below its figure answers until it is no longer fresh; a high catch and nothing found asks for one better look. */
function betterLook({ sample }: Findings, asks: DesignFinding, how: readonly Evidence[]): Conclusion | null {
  if (!sample?.clean || sample.cleanSamples > 1 || !asks.reached) return null;
  const due = addDays(sample.sampledOn, ASSUMPTIONS.betterLookDays.value);
  const because = () => [scoutingAsked('sample-clean'), ...asks.because, sample.because, ...how];
  return { verb: 'scout', due, because, lead: asks, rule: asks.rule };
}

type AskedWhy = (Evidence & { kind: 'scouting-asked' })['why'];

const scoutingAsked = (why: AskedWhy, madeFor: readonly string[] = []): Evidence => ({ kind: 'scouting-asked', why, madeFor });

function whyAsked(finding: DesignFinding): Evidence {
  const { reached, near, rising, rule, stage } = finding;
  if (stageUnseen(finding)) return scoutingAsked('stage-unseen', rule?.stages ?? []);
  const why = reached ? 'catch-above' : near ? 'catch-near' : rising ? 'catch-rising' : 'catch-adds-up';
  return scoutingAsked(why, holds(stage) || stage.kind === 'unknown' || stage.kind === 'may-be' ? [] : (rule?.stages ?? []));
}

const asksForScouting = (finding: DesignFinding): boolean =>
  finding.near ||
  finding.accumulating ||
  finding.rising ||
  stageUnseen(finding) ||
  (finding.reached && finding.rule?.may === 'send-scouting');

/** The catch has reached its rule, and nobody knows whether the crop is at the rule's stage: somebody must look. */
const stageUnseen = ({ reached, stage }: DesignFinding): boolean =>
  reached && (stage.kind === 'may-be' || stage.kind === 'unknown');

const soonest = (first: Day, ...others: readonly (Day | null | undefined)[]): Day =>
  others.reduce<Day>((best, day) => (day != null && day < best ? day : best), first);

function blind(findings: Findings): Conclusion | null {
  const because = blindSpots(findings);
  if (because.length === 0) return null;
  const visit = because.some((item) => ['trap-unusable', 'trap-doubt', 'lure-spent'].includes(item.kind));
  const lead = leading(findings.caught);
  return { verb: 'blind', due: visit ? visitDue(findings) : null, because: () => because, lead, rule: lead?.rule ?? null };
}

/** A visit that would restore sight is due today, or since the trap's rhythm asked for it. */
function visitDue({ prepared, caught }: Findings): Day {
  return soonest(prepared.on, nextCheck(prepared, caught.traps));
}

function watch(findings: Findings): Conclusion {
  const { prepared, caught, sample, notTreated } = findings;
  const lead = leading(caught);
  const decided = notTreated?.holding && asking(caught) ? notTreated : null;
  const because = () => {
    const own = [...(decided ? [decided.because] : []), ...(lead?.because ?? []), ...(sample ? [sample.because] : [])];
    return own.length > 0 ? own : findings.heat.because;
  };
  const next = nextCheck(prepared, caught.traps);
  return {
    verb: 'watch',
    due: decided && next !== null ? soonest(decided.holdsUntil, next) : next,
    because,
    lead,
    rule: lead?.rule ?? null,
  };
}

/** A finding counts towards a verb when its rule holds at the crop's stage. */
const speaks = (finding: DesignFinding): boolean => finding.rule !== null && holds(finding.stage);

const holds = ({ kind }: StageFit): boolean => kind === 'any' || kind === 'susceptible';

/**
 * Looking never harms: scouting is called for even where nobody knows whether the crop is at the rule's stage. A rule
 * that only sends people to look does so at any stage at which the plants have a figure of their own to be held against.
 */
const maySendScouting = (finding: DesignFinding, plantsDecide: boolean): boolean =>
  finding.rule !== null &&
  (holds(finding.stage) ||
    finding.stage.kind === 'unknown' ||
    finding.stage.kind === 'may-be' ||
    (plantsDecide && finding.rule.may === 'send-scouting'));

/** Share of the threshold reached: the design nearest to (or furthest above) its own rule leads. */
const severity = (finding: DesignFinding) =>
  finding.thresholdPerNight === null ? -1 : finding.rate.perNight / Math.max(finding.thresholdPerNight, Number.MIN_VALUE);
const bySeverity = (a: DesignFinding, b: DesignFinding) => severity(b) - severity(a);

/** The finding whose rule asks for a decision at the present catch; null while none that may decide does. */
export const asking = (caught: CatchFinding): DesignFinding | null =>
  caught.designs
    .filter((finding) => finding.reached && finding.rule?.may === 'decide' && speaks(finding) && !finding.harvestStop)
    .sort(bySeverity)[0] ?? null;

export const treatmentEvidence = ({ because, missing }: TreatmentFinding): Evidence[] =>
  missing ? [because, missing] : [because];

const leading = (caught: CatchFinding): DesignFinding | null => [...caught.designs].sort(bySeverity)[0] ?? null;

export function stageEvidence(field: FieldRecord, rules: readonly ActionRule[], stage: StageKnown): Evidence {
  const needed = [...new Set(rules.flatMap((rule) => rule.stages ?? []))];
  const fits = rules.map((rule) => stageFit(field, rule.stages, stage));
  const since = fits.flatMap((fit) => (fit.kind === 'may-be' ? [fit.since] : []));
  const name = (place: number) => cropById(field.crop)!.stages[place]!.id;
  return {
    kind: 'stage',
    stage: stage.written,
    observedOn: stage.observedOn,
    ageDays: stage.ageDays,
    needed,
    susceptible: fits.some(holds),
    now: stage.carried && {
      from: name(stage.carried.from),
      to: name(stage.carried.to),
      mayBeSince: since.length === 0 ? null : formatDay(Math.min(...since) as Day),
      heat: stage.carried.heat && carriedByHeat(stage.carried.heat),
    },
  };
}

const carriedByHeat = ({ degreeDays, sums: [fast, slow], ofField, crop }: CarriedByHeat) => ({
  degreeDays,
  fast,
  slow,
  unit: crop.heat.unit,
  ofField,
  source: crop.source,
  standing: crop.standing,
});
