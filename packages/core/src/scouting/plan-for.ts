import type { Assumption, InfestationRule } from '../catalogue/types.ts';
import { ok, type Result } from '../units/problem.ts';
import { PLAN_ASSUMPTIONS, type PlanAssumptionId } from './assumptions.ts';
import type { CountDistribution } from './distribution.ts';
import type { SequentialPlan } from './plan.ts';
import { sequentialTest, waldCharacteristic } from './wald.ts';

/** A sequential plan for one published rule. */
export interface ScoutingPlan extends SequentialPlan {
  readonly ruleId: string;
  readonly unit: InfestationRule['unit'];
  readonly sign: InfestationRule['sign'];
  /** The rule's figure: share of units, or egg masses per unit. */
  readonly threshold: number;
  readonly source: string;
  /** Every figure the plan rests on that neither the rule's source nor the user gave. */
  readonly assumed: readonly Assumption[];
}

/** What the user knows better than the assumptions. */
export interface PlanOptions {
  readonly m0?: number | undefined;
  readonly m1?: number | undefined;
  readonly alpha?: number | undefined;
  readonly beta?: number | undefined;
  /** Dispersion of counts per unit, where insects or egg masses are counted; ∞: none. */
  readonly k?: number | undefined;
  readonly minSamples?: number | undefined;
  readonly maxSamples?: number | undefined;
}

/**
 * The plan that a rule calls for: binomial where units are infested or not, negative binomial where egg masses are
 * counted. Refused when m₀, m₁ or the risks given make no test.
 */
export function planFor(rule: InfestationRule, options: PlanOptions = {}): Result<ScoutingPlan> {
  const assumed: Assumption[] = [];
  const assume = (id: PlanAssumptionId): number => {
    assumed.push(PLAN_ASSUMPTIONS[id]);
    return PLAN_ASSUMPTIONS[id].value;
  };
  const m0 = options.m0 ?? assume('belowShare') * rule.share;
  const m1 = options.m1 ?? assume('aboveShare') * rule.share;
  const alpha = options.alpha ?? assume('riskAbove');
  const beta = options.beta ?? assume('riskBelow');
  const distribution = distributionOf(rule, options.k ?? (counted(rule) ? assume('clumpingK') : 1));
  const test = sequentialTest({ distribution, m0, m1, alpha, beta });
  if (!test.ok) return test;

  const minSamples = options.minSamples ?? assume('smallestSample');
  const average = waldCharacteristic(test.value, test.value.slope).averageSamples;
  const maxSamples =
    options.maxSamples ??
    wholePlaces(rule, Math.max(rule.examine.unitsHigh ?? rule.examine.units, assume('limitOverAverage') * average));
  return ok({
    test: test.value,
    minSamples: Math.min(minSamples, maxSamples),
    maxSamples,
    ruleId: rule.id,
    unit: rule.unit,
    sign: rule.sign,
    threshold: rule.share,
    source: rule.source,
    assumed,
  });
}

const counted = (rule: InfestationRule) => rule.sign === 'egg-masses';

function distributionOf(rule: InfestationRule, k: number): CountDistribution {
  if (!counted(rule)) return { kind: 'binomial' };
  return k === Infinity ? { kind: 'poisson' } : { kind: 'negative-binomial', k };
}

/** Rounded up to full places, where the rule examines so many units in each. */
function wholePlaces({ examine }: InfestationRule, units: number): number {
  const perPlace = examine.unitsPerPlace ?? 1;
  return Math.ceil(units / perPlace) * perPlace;
}
