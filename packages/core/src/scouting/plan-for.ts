import { ok, type Problem, type Result, refuse } from '../base/problem.ts';
import type { ActionRule, Assumption, InfestationRule, Standing } from '../catalogue/types.ts';
import { PLAN_ASSUMPTIONS, type PlanAssumptionId } from './assumptions.ts';
import type { CountDistribution } from './distribution.ts';
import type { SequentialPlan } from './plan.ts';
import { type SequentialTest, sequentialTest, waldCharacteristic } from './wald.ts';

/** How the units are spread over the field: at each of `places` in turn `perPlace` units, then round again. */
export interface WalkedPlaces {
  readonly places: number;
  readonly perPlace: number;
}

/** A sequential plan for one published rule. */
export interface ScoutingPlan extends SequentialPlan {
  readonly ruleId: string;
  readonly insect: string;
  readonly unit: InfestationRule['unit'];
  readonly sign: InfestationRule['sign'];
  /** The rule's figure: share of units, or egg masses per unit. */
  readonly threshold: number;
  /** The upper end, when the source gives a range. */
  readonly thresholdHigh: number | null;
  /** Stages of the crop at which the rule holds; null: any. */
  readonly stages: readonly string[] | null;
  readonly combinedWith: InfestationRule['combinedWith'];
  readonly region: string;
  readonly source: string;
  readonly standing: Standing;
  readonly walk: WalkedPlaces;
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
 * counted. Refused for rules about moths in traps or about heat, which no sample of plants can reach, and when m₀, m₁
 * or the risks given make no test.
 */
export function planFor(rule: ActionRule, options: PlanOptions = {}): Result<ScoutingPlan> {
  if (rule.kind !== 'infestation') return refuse(noFigure(rule));
  const assumed: Assumption[] = [];
  const assume = (id: PlanAssumptionId): number => {
    assumed.push(PLAN_ASSUMPTIONS[id]);
    return PLAN_ASSUMPTIONS[id].value;
  };
  const m0 = options.m0 ?? assume('belowShare') * rule.share;
  const m1 = options.m1 ?? assume('aboveShare') * rule.share;
  const alpha = options.alpha ?? assume('riskAbove');
  const beta = options.beta ?? assume('riskBelow');
  const distribution = distributionOf(rule, options.k ?? (countsInsects(rule) ? assume('clumpingK') : 1));
  const test = sequentialTest({ distribution, m0, m1, alpha, beta });
  if (!test.ok) return test;

  const places = rule.examine.places ?? assume('placesWalked');
  const average = waldCharacteristic(test.value, test.value.slope).averageSamples;
  const enough =
    options.maxSamples ?? Math.max(rule.examine.unitsHigh ?? rule.examine.units, assume('limitOverAverage') * average);
  const perPlace =
    options.minSamples === undefined
      ? Math.max(assume('unitsAtOnce'), Math.ceil(enough / (places * assume('lapsAtMost'))))
      : Math.ceil(options.minSamples / places);
  const lap = places * perPlace;
  const agreeing = Math.max(1, Math.floor(agreesUpTo(test.value, rule.share) / lap));
  const maxSamples = options.maxSamples ?? Math.min(Math.ceil(enough / lap), agreeing) * lap;
  return ok({
    test: test.value,
    minSamples: Math.min(options.minSamples ?? lap, maxSamples),
    maxSamples,
    ruleId: rule.id,
    insect: rule.insect,
    unit: rule.unit,
    sign: rule.sign,
    threshold: rule.share,
    thresholdHigh: rule.shareHigh,
    stages: rule.stages,
    combinedWith: rule.combinedWith,
    region: rule.region,
    source: rule.source,
    standing: rule.standing,
    walk: { places, perPlace },
    assumed,
  });
}

/**
 * The largest sample at which an answer cannot contradict the rule, which holds the same sample's share against its
 * figure: the lines close in on s, and s is not quite the figure.
 */
function agreesUpTo({ slope, lowerIntercept, upperIntercept }: SequentialTest, figure: number): number {
  return slope < figure ? upperIntercept / (figure - slope) : -lowerIntercept / (slope - figure);
}

/** Whether the insects in a unit are counted, and not only whether it has any. */
export const countsInsects = ({ sign }: Pick<InfestationRule, 'sign'>): boolean => sign === 'egg-masses';

function distributionOf(rule: InfestationRule, k: number): CountDistribution {
  if (!countsInsects(rule)) return { kind: 'binomial' };
  return k === Infinity ? { kind: 'poisson' } : { kind: 'negative-binomial', k };
}

const ABOUT = { 'catch-threshold': 'moths in traps', 'catch-table': 'moths in traps', 'heat-scout': 'when to look' } as const;

const noFigure = ({ id, kind }: Exclude<ActionRule, InfestationRule>): Problem => ({
  where: { parameter: 'rule' },
  got: `${id}, a rule about ${ABOUT[kind]}`,
  expected: 'a rule with a figure for infested plants, ears or fruit',
  fix: 'Take such a rule of the same insect and crop; where none is published, count a fixed sample and judge it yourself.',
});
