/**
 * Counts whose logarithm of the mean is a linear combination of columns, with a common dispersion k (`theta` in R).
 *
 * Coefficients for fixed k and k for fixed means in turn, as in Venables & Ripley 2002, Modern Applied Statistics with
 * S, 7.4. Standard errors of the coefficients take k as known, that of k takes the means as known; the two are
 * asymptotically independent.
 */
import { ok, type Result, refuse } from '../units/problem.ts';
import { invertCholesky } from './linear-algebra.ts';
import { type CountTable, countTable, describeK, logLikelihood, maximiseK, notCounts } from './negative-binomial.ts';
import {
  type Coefficient,
  checkDesign,
  isProblem,
  problem,
  type RegressionFit,
  type RegressionInput,
  refuseFit,
} from './regression.ts';
import { type Family, fisherScoring, type Scored } from './scoring.ts';

export interface NegativeBinomialRegression extends RegressionFit {
  /** ∞ when the counts scatter no more about their means than chance alone: the fit is a Poisson regression. */
  readonly k: number;
  readonly kStandardError: number | null;
  readonly overdispersed: boolean;
}

const MAX_ROUNDS = 100;

/** Refused, with the column named, when columns depend on one another, a group never catches, or nothing settles. */
export function negativeBinomialRegression(input: RegressionInput): Result<NegativeBinomialRegression> {
  const design = checkDesign(input);
  if (isProblem(design)) return refuse(design);
  const table = countTable(input.y);
  if (table === null) return refuse(notCounts());
  if (table.total === 0)
    return refuse(problem('y', 'only zeros', 'at least one count above zero', 'Wait for a catch: rates are unknown.'));

  let k = Infinity;
  let iterations = 0;
  let beta: Float64Array | undefined;
  for (let round = 0; round < MAX_ROUNDS; round++) {
    const scored = fisherScoring(design, logLinear(table, k), beta);
    if ('reason' in scored) return refuseFit(scored.reason, scored.moving);
    iterations += scored.iterations;
    beta = scored.beta;
    const mean = scored.eta.map(Math.exp);
    const next = maximiseK(table, mean, k === Infinity ? undefined : k);
    if (next === k || Math.abs(Math.log(next / k)) < 1e-9) return ok(describe(design.names, table, scored, mean, k, iterations));
    k = next;
  }
  return refuseFit('no-convergence', ['k']);
}

function describe(
  names: readonly string[],
  table: CountTable,
  { beta, information }: Scored,
  fitted: Float64Array,
  k: number,
  iterations: number,
): NegativeBinomialRegression {
  const covariance = invertCholesky(information, beta.length);
  return {
    coefficients: coefficientsOf(names, beta, covariance),
    covariance,
    fitted,
    ...describeK(table, fitted, k),
    logLikelihood: logLikelihood(table, fitted, k),
    iterations,
  };
}

export function coefficientsOf(names: readonly string[], beta: Float64Array, covariance: Float64Array): Coefficient[] {
  return names.map((name, j) => ({
    name,
    estimate: beta[j]!,
    standardError: Math.sqrt(covariance[j * names.length + j]!),
  }));
}

/** Negative binomial with given k (∞: Poisson) and logarithmic link. */
function logLinear({ counts }: CountTable, k: number): Family {
  return {
    start: counts.map((y) => Math.log(y + 0.1)),
    evaluate(eta, slope, curvature) {
      let likelihood = 0;
      for (let i = 0; i < eta.length; i++) {
        const y = counts[i]!;
        const mean = Math.exp(eta[i]!);
        const spread = 1 + mean / k;
        slope[i] = (y - mean) / spread;
        curvature[i] = mean / spread;
        likelihood += y * eta[i]! - (k === Infinity ? mean : (k + y) * Math.log1p(mean / k));
      }
      return likelihood;
    },
  };
}
