/** Whether a sample is big enough to say that a field is below or above the figure of a rule. */
import type { InfestationRule } from '../catalogue/types.ts';
import { betaQuantile } from '../statistics/incomplete-beta.ts';
import { gammaQuantile } from '../statistics/incomplete-gamma.ts';
import { PLAN_ASSUMPTIONS } from './assumptions.ts';
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
}

/**
 * A sample speaks when its limits exclude the rule's figure, when it lies on or past a line of the rule's sequential
 * plan, or when it is as large as the rule asks for: then the share found is held against the figure, as the source does.
 *
 * Limits are Jeffreys': of a beta distribution for infested units, of a gamma distribution for masses counted. The risk
 * at each side is the plan's, so that a walk and a fixed sample are equally sure.
 *
 * Source: Brown, Cai & DasGupta 2001, Statistical Science 16:101–133 (from memory).
 *
 * @param found infested units, or masses counted
 * @param figure share of units, or masses per unit, that the sample is held against; the rule's own where left out
 */
export function sampleVerdict(rule: InfestationRule, examined: number, found: number, figure = rule.share): SampleVerdict {
  const { low, high } = limitsOf(rule, examined, found);
  const settled = (verdict: 'below' | 'above', by: SampleVerdict['by']): SampleVerdict => ({
    verdict,
    by,
    low,
    high,
    more: null,
  });
  const plan = figure === rule.share ? planOf(rule) : null;
  const line = plan && examined <= plan.maxSamples ? stopLine(plan, examined) : null;
  if (line?.below != null && found <= line.below) return settled('below', 'plan');
  if (line?.above != null && found >= line.above) return settled('above', 'plan');
  if (high < figure) return settled('below', 'limits');
  if (low > figure) return settled('above', 'limits');
  if (examined >= rule.examine.units) return settled(found / examined >= figure ? 'above' : 'below', 'full-sample');
  return { verdict: 'not-yet', by: null, low, high, more: unitsMore(rule, examined, found, figure) };
}

function limitsOf(rule: InfestationRule, examined: number, found: number): { readonly low: number; readonly high: number } {
  const { riskAbove, riskBelow } = PLAN_ASSUMPTIONS;
  const quantile = countsInsects(rule)
    ? (p: number) => gammaQuantile(p, found + 0.5) / examined
    : (p: number) => betaQuantile(p, Math.min(found, examined) + 0.5, Math.max(0, examined - found) + 0.5);
  return {
    low: found === 0 ? 0 : quantile(riskAbove.value),
    high: found >= examined && !countsInsects(rule) ? 1 : quantile(1 - riskBelow.value),
  };
}

/** The fewest further units that settle it while the share stays what it is. */
function unitsMore(rule: InfestationRule, examined: number, found: number, figure: number): number {
  const most = rule.examine.units - examined;
  const share = found / examined;
  for (let more = 1; more < most; more++) {
    const { low, high } = limitsOf(rule, examined + more, found + share * more);
    if (high < figure || low > figure) return more;
  }
  return most;
}

const plans = new WeakMap<InfestationRule, ScoutingPlan | null>();

function planOf(rule: InfestationRule): ScoutingPlan | null {
  const known = plans.get(rule);
  if (known !== undefined) return known;
  const plan = planFor(rule);
  plans.set(rule, plan.ok ? plan.value : null);
  return plan.ok ? plan.value : null;
}
