/**
 * Counts whose logarithm of the mean is a linear combination of columns, with a common dispersion k (`theta` in R).
 *
 * Coefficients for fixed k and k for fixed means in turn, as in Venables & Ripley 2002, Modern Applied Statistics with
 * S, 7.4. Standard errors of the coefficients take k as known, that of k takes the means as known; the two are
 * asymptotically independent.
 */
import { ok, type Result, refuse } from '../base/problem.ts';
import { type Family, fitLinear, type LinearFit, type Unsettled } from './generalised-linear.ts';
import { goldenSection } from './golden-section.ts';
import { invertCholesky } from './linear-algebra.ts';
import { type CountTable, countTable, describeK, logLikelihood, maximiseK, notCounts } from './negative-binomial.ts';
import {
  type Coefficient,
  checkDesign,
  type Design,
  isProblem,
  problem,
  type RegressionFit,
  type RegressionInput,
  refuseFit,
} from './regression.ts';

export interface NegativeBinomialRegression extends RegressionFit {
  /** ∞ when the counts scatter no more about their means than chance alone: the fit is a Poisson regression. */
  readonly k: number;
  readonly kStandardError: number | null;
  readonly overdispersed: boolean;
}

export interface NegativeBinomialInput extends RegressionInput {
  /**
   * `likelihood` (default): the k of greatest likelihood, as R's glm.nb. `adjusted`: of greatest likelihood adjusted for
   * the coefficients that were fitted with it; where these are many for the rows, as with an effect for each night, plain
   * likelihood takes some of the scatter for effects, and its intervals are too short.
   * Source: Cox & Reid 1987, J. R. Statist. Soc. B 49:1–39 (from memory).
   */
  readonly dispersion?: 'likelihood' | 'adjusted' | undefined;
}

const MAX_ROUNDS = 100;

/** Refused, with the column named, when columns depend on one another, a group never catches, or nothing settles. */
export function negativeBinomialRegression(input: NegativeBinomialInput): Result<NegativeBinomialRegression> {
  const design = checkDesign(input);
  if (isProblem(design)) return refuse(design);
  const table = countTable(input.y);
  if (table === null) return refuse(notCounts());
  if (table.total === 0)
    return refuse(problem('y', 'only zeros', 'at least one count above zero', 'Wait for a catch: rates are unknown.'));

  const fit = alternate(design, table);
  if ('reason' in fit) return refuseFit(fit.reason, fit.moving);
  const settled = input.dispersion === 'adjusted' ? adjustK(design, table, fit) : fit;
  return ok(describe(design.names, table, settled));
}

interface Settled extends LinearFit {
  readonly k: number;
}

/** Coefficients and k of greatest likelihood. */
function alternate(design: Design, table: CountTable): Settled | Unsettled {
  let k = Infinity;
  let iterations = 0;
  let beta: Float64Array | undefined;
  for (let round = 0; round < MAX_ROUNDS; round++) {
    const fit = fitLinear(design, logLinear(table, k), beta);
    if ('reason' in fit) return fit;
    iterations += fit.iterations;
    beta = fit.beta;
    const next = maximiseK(table, fit.eta.map(Math.exp), k === Infinity ? undefined : k);
    if (next === k || Math.abs(Math.log(next / k)) < 1e-9) return { ...fit, k, iterations };
    k = next;
  }
  return { reason: 'no-convergence', moving: ['k'] };
}

/** Golden-section search on ln k for the greatest adjusted likelihood l(k) − ½·ln|information(k)|. */
function adjustK(design: Design, table: CountTable, likeliest: Settled): Settled {
  let best: { readonly settled: Settled; readonly height: number } = { settled: likeliest, height: -Infinity };
  const height = (logK: number): number => {
    const k = logK >= K_SEARCH.mostLogK ? Infinity : Math.exp(logK);
    const fit = fitLinear(design, logLinear(table, k), best.settled.beta);
    if ('reason' in fit) return -Infinity;
    const size = fit.beta.length;
    let halfLogDeterminant = 0;
    for (let j = 0; j < size; j++) halfLogDeterminant += Math.log(fit.information[j * size + j]!);
    const adjusted = logLikelihood(table, fit.eta.map(Math.exp), k) - halfLogDeterminant;
    if (adjusted > best.height) best = { settled: { ...fit, k }, height: adjusted };
    return adjusted;
  };
  goldenSection(height, K_SEARCH.leastLogK, K_SEARCH.mostLogK, K_SEARCH.within);
  return best.settled;
}

/** Where the adjusted k is looked for, on its logarithm; from the upper end on, counts are taken for Poisson. */
export const K_SEARCH = { leastLogK: Math.log(0.01), mostLogK: Math.log(1e4), within: 1e-4 } as const;

function describe(
  names: readonly string[],
  table: CountTable,
  { beta, eta, information, k, iterations }: Settled,
): NegativeBinomialRegression {
  const fitted = eta.map(Math.exp);
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
        curvature[i] = (mean * (1 + y / k)) / (spread * spread);
        likelihood += y * eta[i]! - (k === Infinity ? mean : (k + y) * Math.log1p(mean / k));
      }
      return likelihood;
    },
    expectedCurvature: (eta) => eta.map((value) => 1 / (Math.exp(-value) + 1 / k)),
  };
}
