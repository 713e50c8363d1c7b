/** Whether a sample is big enough to say that a field is below or above the figure of a rule. */
import type { InfestationRule } from '../catalogue/types.ts';
import { betaQuantile } from '../statistics/incomplete-beta.ts';
import { gammaQuantile } from '../statistics/incomplete-gamma.ts';
import { PLAN_ASSUMPTIONS } from './assumptions.ts';
import { type Clumping, clumpingOf, type PlaceCounts } from './clumping.ts';
import { designEffect } from './distribution.ts';
import { stopLine } from './plan.ts';
import { countsInsects, planFor, type ScoutingPlan } from './plan-for.ts';

export interface SampleVerdict {
  readonly verdict: 'below' | 'above' | 'not-yet';
  /** What settled it: a line of the sequential plan, the limits, or a sample as large as the rule asks for. */
  readonly by: 'plan' | 'limits' | 'full-sample' | null;
  /** Jeffreys' limits of the share of units, or of egg masses per unit; each is passed with the plan's accepted risk. */
  readonly low: number;
  readonly high: number;
  /** Units still to look at, if they are like those seen; never more than the rule's own sample needs. Null once it is settled. */
  readonly more: number | null;
  /** Other than with independent units: neighbours are so alike that the same sample speaks less surely. */
  readonly widened: boolean;
}

export interface SampleOptions {
  /** Share of units, or masses per unit, that the sample is held against; the rule's own where left out. */
  readonly figure?: number | undefined;
  /** How alike neighbours are; left out: assumed. */
  readonly clumping?: Clumping | undefined;
  /** What each place held, where it was written down; else units are taken to stand as the rule's plan is walked. */
  readonly places?: readonly PlaceCounts[] | undefined;
}

/**
 * A sample speaks when its limits exclude the rule's figure, when it lies on or past a line of the rule's sequential
 * plan, or when it is as large as the rule asks for: then the share found is held against the figure, as the source does.
 *
 * Limits are Jeffreys': of a beta distribution for infested units, of a gamma distribution for masses counted, both as if
 * so many times fewer had been examined as neighbours are alike (`designEffect`). The risk at each side is the plan's, so
 * that a walk and a fixed sample are equally sure. A plan's lines hold for places no larger than its own.
 *
 * Source: Brown, Cai & DasGupta 2001, Statistical Science 16:101–133 (from memory).
 *
 * @param found infested units, or masses counted
 */
export function sampleVerdict(
  rule: InfestationRule,
  examined: number,
  found: number,
  { figure = rule.share, clumping = clumpingOf([]), places = [] }: SampleOptions = {},
): SampleVerdict {
  const plan = planOf(rule, clumping);
  const perPlace = places.length > 0 ? neighboursOf(places) : (plan?.walk.perPlace ?? PLAN_ASSUMPTIONS.unitsAtOnce.value);
  const lined = plan !== null && figure === rule.share && perPlace <= plan.walk.perPlace ? plan : null;
  const sample = { rule, examined, found, figure, plan: lined };
  const verdict = verdictOf(sample, (units) => designEffect(Math.min(units, perPlace), clumping.correlation));
  return { ...verdict, widened: verdict.verdict !== verdictOf(sample, () => 1).verdict };
}

interface HeldSample {
  readonly rule: InfestationRule;
  readonly examined: number;
  readonly found: number;
  readonly figure: number;
  readonly plan: ScoutingPlan | null;
}

/** By how many times a share of so many units scatters more than independent ones. */
type EffectAt = (units: number) => number;

function verdictOf(sample: HeldSample, effectAt: EffectAt): Omit<SampleVerdict, 'widened'> {
  const { rule, examined, found, figure } = sample;
  const { low, high, ...settled } = settle(sample, effectAt);
  if (settled.verdict !== null) return { ...settled, low, high, more: null };
  const most = rule.examine.units - examined;
  if (most <= 0) return { verdict: found / examined >= figure ? 'above' : 'below', by: 'full-sample', low, high, more: null };
  // The fewest further units that settle it while the share stays what it is.
  const grown = (more: number) => ({ ...sample, examined: examined + more, found: found + (found / examined) * more });
  let more = 1;
  while (more < most && settle(grown(more), effectAt).verdict === null) more++;
  return { verdict: 'not-yet', by: null, low, high, more };
}

function settle({ rule, examined, found, figure, plan }: HeldSample, effectAt: EffectAt) {
  const { low, high } = limitsOf(rule, examined, found, effectAt(examined));
  const settled = (verdict: 'below' | 'above', by: SampleVerdict['by']) => ({ verdict, by, low, high });
  const line = plan && examined <= plan.maxSamples ? stopLine(plan, examined) : null;
  if (line?.below != null && found <= line.below) return settled('below', 'plan');
  if (line?.above != null && found >= line.above) return settled('above', 'plan');
  if (high < figure) return settled('below', 'limits');
  if (low > figure) return settled('above', 'limits');
  return { verdict: null, by: null, low, high };
}

function limitsOf(rule: InfestationRule, examined: number, found: number, effect: number) {
  const { riskAbove, riskBelow } = PLAN_ASSUMPTIONS;
  const quantile = countsInsects(rule)
    ? (p: number) => (gammaQuantile(p, found / effect + 0.5) * effect) / examined
    : (p: number) => betaQuantile(p, Math.min(found, examined) / effect + 0.5, Math.max(0, examined - found) / effect + 0.5);
  return {
    low: found === 0 ? 0 : quantile(riskAbove.value),
    high: found >= examined && !countsInsects(rule) ? 1 : quantile(1 - riskBelow.value),
  };
}

/** Units at the place of a unit, on average over the units. */
const neighboursOf = (places: readonly PlaceCounts[]): number =>
  places.reduce((sum, { examined }) => sum + examined ** 2, 0) / places.reduce((sum, { examined }) => sum + examined, 0);

/** By rule, then by how alike neighbours are. */
const plans = new WeakMap<InfestationRule, Map<number, ScoutingPlan | null>>();

function planOf(rule: InfestationRule, clumping: Clumping): ScoutingPlan | null {
  const known = plans.get(rule) ?? new Map<number, ScoutingPlan | null>();
  plans.set(rule, known);
  const before = known.get(clumping.correlation);
  if (before !== undefined) return before;
  const found = planFor(rule, { clumping });
  const plan = found.ok ? found.value : null;
  known.set(clumping.correlation, plan);
  return plan;
}
