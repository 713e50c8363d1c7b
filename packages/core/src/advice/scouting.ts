/** What samples say under the published figures for infested plants, ears or fruit. */

import { type Day, day, daysBetween } from '../base/day.ts';
import { ASSUMPTIONS } from '../catalogue/index.ts';
import type { InfestationRule } from '../catalogue/types.ts';
import type { FieldRecord, SampleRecord } from '../records/schema.ts';
import { type Clumping, clumpingFound, placeCounts } from '../scouting/clumping.ts';
import { type SampleVerdict, sampleVerdict } from '../scouting/sample-verdict.ts';
import { stageFit, stageOf } from './crop-stage.ts';
import { cellKey, type Prepared } from './prepare.ts';
import type { Evidence } from './types.ts';

export interface SampleFinding {
  readonly sampledOn: Day;
  readonly rule: InfestationRule | null;
  /** Null when no rule fits what was looked at, or nobody wrote how many were infested. */
  readonly verdict: SampleVerdict['verdict'] | null;
  /** Nothing at all was found. */
  readonly clean: boolean;
  /** Fresh samples of the field in which nothing was found, this one among them. */
  readonly cleanSamples: number;
  readonly because: Evidence & { readonly kind: 'sample' };
}

/** The newest sample still fresh enough to speak for the field; null when there is none. */
export function sampleFinding(
  prepared: Prepared,
  field: FieldRecord,
  insect: string,
  rules: readonly InfestationRule[],
): SampleFinding | null {
  const fresh = freshSamples(prepared, field.fieldId, insect);
  const findings = fresh.map((sample) => judge(prepared, field, sample, rules));
  const speaking =
    findings.find(({ verdict }) => verdict === 'above') ?? findings.find(({ verdict }) => verdict === 'below') ?? findings[0];
  return speaking ? { ...speaking, cleanSamples: findings.filter(({ clean }) => clean).length } : null;
}

/** The rule that says what to look at now, at the crop's present stage. */
export function samplingRule(prepared: Prepared, field: FieldRecord, rules: readonly InfestationRule[]): InfestationRule | null {
  const stage = stageOf(prepared, field);
  const fits = (kinds: readonly string[]) => rules.find((rule) => kinds.includes(stageFit(field, rule.stages, stage).kind));
  return fits(['susceptible']) ?? fits(['any']) ?? fits(['may-be', 'unknown']) ?? null;
}

export function samplingEvidence(rule: InfestationRule): Evidence {
  const { units, places } = rule.examine;
  return {
    kind: 'sampling',
    ruleId: rule.id,
    unit: rule.unit,
    sign: rule.sign,
    units,
    places,
    share: rule.share,
    source: rule.source,
  };
}

/** Fresh samples, newest first. */
function freshSamples(prepared: Prepared, fieldId: string, insect: string): SampleRecord[] {
  const all = prepared.samplesByCell.get(cellKey(fieldId, insect)) ?? [];
  const isFresh = (age: number) => age >= 0 && age <= ASSUMPTIONS.sampleFreshDays.value;
  return all.filter((sample) => isFresh(daysBetween(day(sample.sampledOn), prepared.on))).reverse();
}

const URGENCY = { below: 0, 'not-yet': 1, above: 2 } as const;

function judge(
  prepared: Prepared,
  field: FieldRecord,
  sample: SampleRecord,
  rules: readonly InfestationRule[],
): Omit<SampleFinding, 'cleanSamples'> {
  const stage = stageOf(prepared, field);
  const rule =
    rules.find((r) => speaksOf(r, sample) && ['susceptible', 'any'].includes(stageFit(field, r.stages, stage).kind)) ?? null;
  const infested = infestedUnits(sample, rule);
  const share = infested === null ? null : infested / sample.unitsExamined;
  const clumping = clumpingBefore(prepared, sample);
  const places = placeCounts(sample.byPlace ?? []);
  const alone =
    rule === null || infested === null ? null : sampleVerdict(rule, sample.unitsExamined, infested, { clumping, places });
  const together =
    rule === null || infested === null || alone?.verdict === 'above'
      ? null
      : combined(prepared, sample, infested, rule, clumping);
  const judged = together && alone && URGENCY[together.verdict] > URGENCY[alone.verdict] ? together : alone;
  const evidence = {
    kind: 'sample' as const,
    sampledOn: sample.sampledOn,
    what: sample.kind,
    examined: sample.unitsExamined,
    infested,
    share: judged === together && together ? together.share : share,
    ruleId: rule?.id ?? null,
    sign: rule?.sign ?? null,
    ruleShare: judged === together && together ? rule!.combinedWith!.share : (rule?.share ?? null),
    verdict: judged?.verdict ?? null,
    settledBy: judged?.by ?? null,
    low: judged?.low ?? null,
    high: judged?.high ?? null,
    more: judged?.more ?? null,
    clumped: judged?.widened ? { correlation: clumping.correlation, samples: clumping.samples } : null,
    withInsect: judged === together && together ? rule!.combinedWith!.insect : null,
  };
  return { sampledOn: day(sample.sampledOn), rule, verdict: evidence.verdict, clean: infested === 0, because: evidence };
}

/** As samples before this one have it: it is read as the walk was planned, and cannot widen its own limits. */
const clumpingBefore = ({ program }: Prepared, { insect, sampledOn }: SampleRecord): Clumping =>
  clumpingFound(
    program.samples.filter((other) => other.sampledOn < sampledOn),
    insect,
  );

/** Two insects in the same plants can together reach a figure that neither reaches alone. */
function combined(prepared: Prepared, sample: SampleRecord, infested: number, rule: InfestationRule, clumping: Clumping) {
  if (!rule.combinedWith) return null;
  const partner = freshSamples(prepared, sample.fieldId, rule.combinedWith.insect).find(
    (other) => other.sampledOn === sample.sampledOn && other.kind === sample.kind && other.unitsInfested !== null,
  );
  if (!partner) return null;
  // As if all were looked for on the plants of the one sample.
  const share = infested / sample.unitsExamined + partner.unitsInfested! / partner.unitsExamined;
  const found = Math.min(sample.unitsExamined, share * sample.unitsExamined);
  const held = { figure: rule.combinedWith.share, clumping, places: placeCounts(sample.byPlace ?? []) };
  return { share, ...sampleVerdict(rule, sample.unitsExamined, found, held) };
}

const word = (text: string) =>
  text
    .trim()
    .toLowerCase()
    .replace(/[\s_]+/g, '-')
    .replace(/s$/, '');

function speaksOf(rule: InfestationRule, sample: SampleRecord): boolean {
  const kind = word(sample.kind);
  return [rule.unit, rule.sign, `${word(rule.unit)}-${rule.sign}`].some((name) => word(name) === kind);
}

function infestedUnits(sample: SampleRecord, rule: InfestationRule | null): number | null {
  return rule?.sign === 'egg-masses' ? (sample.totalCount ?? sample.unitsInfested) : sample.unitsInfested;
}
