import { ok, type Problem, type Result, refuse } from '../base/problem.ts';
import type { ActionRule, Assumption, InfestationRule, Standing } from '../catalogue/types.ts';
import { PLAN_ASSUMPTIONS, type PlanAssumptionId } from './assumptions.ts';
import { type Clumping, clumpingOf } from './clumping.ts';
import { type CountDistribution, designEffect } from './distribution.ts';
import { exactCharacteristic } from './exact.ts';
import type { SequentialPlan } from './plan.ts';
import { type SequentialTest, sequentialTest, waldCharacteristic, withDesignEffect } from './wald.ts';

/** How the units are spread over the field: `perPlace` units at each of `places` on a lap, new places on the next one. */
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
  /** How alike neighbours are taken to be, and by how many own samples; null: set by hand. */
  readonly clumping: Clumping | null;
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
  /** ρ, correlation of two units at one place. */
  readonly correlation?: number | undefined;
  /** ρ as own samples have it; left out: assumed. */
  readonly clumping?: Clumping | undefined;
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
  const clumping = options.correlation === undefined ? (options.clumping ?? clumpingOf([])) : null;
  if (clumping) assume(clumping.samples === 0 ? 'placeCorrelation' : 'assumedPlaces');
  const correlation = options.correlation ?? clumping!.correlation;
  if (!(correlation >= 0 && correlation < 1)) return refuse(noCorrelation(correlation));
  const independent = sequentialTest({ distribution, m0, m1, alpha, beta, designEffect: 1 });
  if (!independent.ok) return independent;

  const places = rule.examine.places ?? assume('placesWalked');
  const average = waldCharacteristic(independent.value, independent.value.slope).averageSamples;
  const enough = (perPlace: number) =>
    options.maxSamples ??
    Math.max(
      rule.examine.unitsHigh ?? rule.examine.units,
      assume('limitOverAverage') * average * designEffect(perPlace, correlation),
    );
  const perPlace =
    options.minSamples === undefined
      ? unitsAtOnePlace(assume('unitsAtOnce'), assume('unitsAtMost'), places * assume('lapsAtMost'), enough)
      : Math.ceil(options.minSamples / places);
  const lap = places * perPlace;
  const laps = Math.min(Math.ceil(enough(perPlace) / lap), PLAN_ASSUMPTIONS.lapsAtMost.value);
  const maxSamples = options.maxSamples ?? laps * lap;
  const walked = { perPlace, correlation, minSamples: Math.min(options.minSamples ?? lap, maxSamples), maxSamples };
  return ok({
    ...keepingRisks(independent.value, walked),
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
    clumping,
    assumed,
  });
}

/** The fewest at each place with which so many places are enough; the most allowed where they never are. */
function unitsAtOnePlace(fewest: number, most: number, places: number, enough: (perPlace: number) => number): number {
  let perPlace = fewest;
  while (perPlace < most && perPlace * places < enough(perPlace)) perPlace++;
  return perPlace;
}

/**
 * The closest lines at which the plan, as it is walked, keeps the risks accepted: found with the exact characteristic,
 * for lines moved out by the whole design effect keep more than that. Never closer than Wald's own.
 */
function keepingRisks(independent: SequentialTest, walked: Omit<SequentialPlan, 'test'>): SequentialPlan {
  const { alpha, beta, m0, m1 } = independent;
  const at = (effect: number): SequentialPlan => ({ ...walked, test: withDesignEffect(independent, effect) });
  const keeps = (plan: SequentialPlan) =>
    exactCharacteristic(plan, m0).above <= alpha && exactCharacteristic(plan, m1).below <= beta;
  let kept = at(1);
  for (let effect = 1; !keeps(kept) && effect < MOST_WIDENING; effect *= WIDEN) kept = at(effect * WIDEN);
  return kept;
}

/** Steps in which lines move out until they keep the risks; beyond the last no plan of this length decides anything. */
const WIDEN = 1.03;
const MOST_WIDENING = 40;

/** Whether the insects in a unit are counted, and not only whether it has any. */
export const countsInsects = ({ sign }: Pick<InfestationRule, 'sign'>): boolean => sign === 'egg-masses';

function distributionOf(rule: InfestationRule, k: number): CountDistribution {
  if (!countsInsects(rule)) return { kind: 'binomial' };
  return k === Infinity ? { kind: 'poisson' } : { kind: 'negative-binomial', k };
}

const noCorrelation = (got: number): Problem => ({
  where: { parameter: 'correlation' },
  got: String(got),
  expected: '0 or more, below 1',
  fix: '0 is for infested units that stand anywhere; 0.15 is assumed where nothing is known.',
});

const ABOUT = { 'catch-threshold': 'moths in traps', 'catch-table': 'moths in traps', 'heat-scout': 'when to look' } as const;

const noFigure = ({ id, kind }: Exclude<ActionRule, InfestationRule>): Problem => ({
  where: { parameter: 'rule' },
  got: `${id}, a rule about ${ABOUT[kind]}`,
  expected: 'a rule with a figure for infested plants, ears or fruit',
  fix: 'Take such a rule of the same insect and crop; where none is published, count a fixed sample and judge it yourself.',
});
