/**
 * Wald's sequential probability ratio test of a mean at most m₀ against one at least m₁.
 *
 * After n units with T insects in all, sampling stops at T ≤ s·n + h₁ (below) or T ≥ s·n + h₂ (above), where a unit
 * with y insects adds g·(y − s) to the logarithm of the likelihood ratio.
 *
 * Source: Wald 1947, Sequential Analysis; for the negative binomial Boivin & Vincent 1983, Agriculture Canada
 * Contribution 1983-14E, and Krebs, Ecological Methodology, ch. 9.
 */
import { ok, type Problem, type Result, refuse } from '../base/problem.ts';
import { type CountDistribution, varianceOf } from './distribution.ts';

export interface Hypotheses {
  readonly distribution: CountDistribution;
  /** Insects per unit, or share of units infested, at which the field is surely below. */
  readonly m0: number;
  /** At which it is surely above; m₀ < m₁. */
  readonly m1: number;
  /** Accepted risk of saying "above" at m₀. */
  readonly alpha: number;
  /** Accepted risk of saying "below" at m₁. */
  readonly beta: number;
  /**
   * How many times wider totals scatter than under independence. The logarithm of the likelihood ratio is divided by
   * it, as in quasi-likelihood, which sets both lines so many times further from the middle.
   */
  readonly designEffect: number;
}

export interface SequentialTest extends Hypotheses {
  /** s, insects per unit. */
  readonly slope: number;
  /** h₁ < 0. */
  readonly lowerIntercept: number;
  /** h₂ > 0. */
  readonly upperIntercept: number;
  /** g, the weight of one insect in the log-likelihood ratio. */
  readonly weight: number;
}

export function sequentialTest(hypotheses: Hypotheses): Result<SequentialTest> {
  const problems = problemsOf(hypotheses);
  if (problems.length > 0) return refuse(...problems);
  const { alpha, beta } = hypotheses;
  const { weight: independent, perUnit } = logRatio(hypotheses);
  const weight = independent / hypotheses.designEffect;
  return ok({
    ...hypotheses,
    slope: perUnit / independent,
    lowerIntercept: Math.log(beta / (1 - alpha)) / weight,
    upperIntercept: Math.log((1 - beta) / alpha) / weight,
    weight,
  });
}

/** The same test with lines for totals that scatter so many times wider than under independence. */
export function withDesignEffect(test: SequentialTest, designEffect: number): SequentialTest {
  const times = designEffect / test.designEffect;
  return {
    ...test,
    designEffect,
    lowerIntercept: test.lowerIntercept * times,
    upperIntercept: test.upperIntercept * times,
    weight: test.weight / times,
  };
}

/** One unit with y insects adds weight·y − perUnit to the log-likelihood ratio of m₁ to m₀. */
function logRatio({ distribution, m0, m1 }: Hypotheses): { weight: number; perUnit: number } {
  switch (distribution.kind) {
    case 'poisson':
      return { weight: Math.log(m1 / m0), perUnit: m1 - m0 };
    case 'binomial':
      return { weight: Math.log((m1 * (1 - m0)) / (m0 * (1 - m1))), perUnit: Math.log((1 - m0) / (1 - m1)) };
    case 'negative-binomial': {
      const { k } = distribution;
      return { weight: Math.log((m1 * (m0 + k)) / (m0 * (m1 + k))), perUnit: k * Math.log((m1 + k) / (m0 + k)) };
    }
  }
}

function problemsOf({ distribution, m0, m1, alpha, beta }: Hypotheses): Problem[] {
  const problem = (parameter: string, got: number, expected: string, fix: string) => ({
    where: { parameter },
    got: String(got),
    expected,
    fix,
  });
  const problems: Problem[] = [];
  const most = distribution.kind === 'binomial' ? 1 : Infinity;
  if (!(m0 > 0 && m0 < m1)) problems.push(problem('m0', m0, `above 0 and below m1, ${m1}`, 'Set m0 lower than m1.'));
  if (!(m1 < most)) problems.push(problem('m1', m1, `below ${most}`, 'Give a share below 1, or a finite mean.'));
  if (distribution.kind === 'negative-binomial' && !(distribution.k > 0))
    problems.push(problem('k', distribution.k, 'above 0', 'Fit k to counts from such fields, or take a published one.'));
  for (const [parameter, risk] of [
    ['alpha', alpha],
    ['beta', beta],
  ] as const) {
    if (!(risk > 0 && risk < 0.5)) problems.push(problem(parameter, risk, 'above 0 and below 0.5', 'A usual risk is 0.1.'));
  }
  return problems;
}

/** What a test does in a field of some true mean. */
export interface Characteristic {
  readonly mean: number;
  /** Probability that it ends in "below". */
  readonly below: number;
  /** Units examined on average. */
  readonly averageSamples: number;
}

/**
 * Wald's approximation for a test without a largest sample: it takes every path to end on a line, not past it, so
 * true risks are somewhat smaller and samples somewhat larger.
 */
export function waldCharacteristic(test: SequentialTest, mean: number): Characteristic {
  const { alpha, beta, weight, slope, distribution } = test;
  const [a, b] = [Math.log((1 - beta) / alpha), Math.log(beta / (1 - alpha))];
  const h = exponentOf(test, mean);
  const below = Math.abs(h) < 1e-6 ? a / (a - b) : Math.expm1(-h * a) / Math.expm1(h * (b - a));
  const averageSamples =
    Math.abs(h) < 1e-6
      ? (-a * b) / (weight ** 2 * test.designEffect * varianceOf(distribution, mean))
      : (below * b + (1 - below) * a) / (weight * (mean - slope));
  return { mean, below, averageSamples };
}

/**
 * Wald's h: the exponent other than 0 at which the likelihood ratio raised to it has expectation 1; 1 at m₀, −1 at m₁.
 * `meanAt` falls with h, so bisection finds it.
 */
function exponentOf(test: SequentialTest, mean: number): number {
  let [low, high] = [-1, 1];
  while (meanAt(test, low) < mean && low > -MOST_EXTREME) low *= 2;
  while (meanAt(test, high) > mean && high < MOST_EXTREME) high *= 2;
  for (let i = 0; i < 80; i++) {
    const middle = (low + high) / 2;
    if (meanAt(test, middle) > mean) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Beyond this exponent one answer is certain. */
const MOST_EXTREME = 64;

/** The mean at which h has a given value. */
function meanAt({ distribution, weight, slope }: SequentialTest, h: number): number {
  if (Math.abs(h) < 1e-9) return slope;
  const growth = Math.expm1(h * weight);
  const c = h * weight * slope;
  if (distribution.kind === 'poisson') return c / growth;
  if (distribution.kind === 'binomial') return Math.expm1(c) / growth;
  return (-distribution.k * Math.expm1(-c / distribution.k)) / growth;
}
