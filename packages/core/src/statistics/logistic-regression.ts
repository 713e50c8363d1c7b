/**
 * Shares whose log-odds are a linear combination of columns: binomial counts out of `trials`, one per row by default.
 *
 * Source: McCullagh & Nelder 1989, Generalized Linear Models, ch. 4 (from memory); checked against R.
 */
import { ok, type Result, refuse } from '../base/problem.ts';
import { logGamma } from './gamma-function.ts';
import { type Family, fitLinear } from './generalised-linear.ts';
import { invertCholesky } from './linear-algebra.ts';
import { coefficientsOf } from './negative-binomial-regression.ts';
import { checkDesign, isProblem, problem, type RegressionFit, type RegressionInput, refuseFit } from './regression.ts';

export interface LogisticInput extends RegressionInput {
  /** Units examined in each row; `y` counts those that were infested. */
  readonly trials?: ArrayLike<number> | undefined;
}

/** `fitted` holds shares. Refused when a column separates the outcomes, so that its estimate has no limit. */
export function logisticRegression(input: LogisticInput): Result<RegressionFit> {
  const design = checkDesign(input);
  if (isProblem(design)) return refuse(design);
  const y = Float64Array.from(input.y);
  const trials = input.trials === undefined ? new Float64Array(y.length).fill(1) : Float64Array.from(input.trials);
  if (trials.length !== y.length)
    return refuse(
      problem('trials', `${trials.length} values`, `${y.length}, one per row`, 'Say how many units each row examined.'),
    );
  if (!trials.every((n, i) => Number.isInteger(n) && Number.isInteger(y[i]) && y[i]! >= 0 && y[i]! <= n && n > 0))
    return refuse(
      problem('y', 'a value that is no count out of its trials', 'whole numbers from 0 to trials', 'Correct the row.'),
    );

  const fit = fitLinear(design, logit(y, trials));
  if ('reason' in fit) return refuseFit(fit.reason, fit.moving);
  const covariance = invertCholesky(fit.information, fit.beta.length);
  const fitted = fit.eta.map((eta) => 1 / (1 + Math.exp(-eta)));
  let logLikelihood = 0;
  for (let i = 0; i < y.length; i++) {
    const [n, hits, eta] = [trials[i]!, y[i]!, fit.eta[i]!];
    const ways = logGamma(n + 1) - logGamma(hits + 1) - logGamma(n - hits + 1);
    logLikelihood += ways + hits * eta - n * logOnePlusExp(eta);
  }
  return ok({
    coefficients: coefficientsOf(design.names, fit.beta, covariance),
    covariance,
    fitted,
    logLikelihood,
    iterations: fit.iterations,
  });
}

function logit(y: Float64Array, trials: Float64Array): Family {
  return {
    start: y.map((hits, i) => Math.log((hits + 0.5) / (trials[i]! - hits + 0.5))),
    evaluate(eta, slope, curvature) {
      let likelihood = 0;
      for (let i = 0; i < eta.length; i++) {
        const [n, hits] = [trials[i]!, y[i]!];
        const share = 1 / (1 + Math.exp(-eta[i]!));
        slope[i] = hits - n * share;
        curvature[i] = n * share * (1 - share);
        likelihood += hits * eta[i]! - n * logOnePlusExp(eta[i]!);
      }
      return likelihood;
    },
    expectedCurvature: (eta) =>
      eta.map((value, i) => {
        const share = 1 / (1 + Math.exp(-value));
        return trials[i]! * share * (1 - share);
      }),
  };
}

/** ln(1 + e^η), without overflow. */
function logOnePlusExp(eta: number): number {
  return eta > 0 ? eta + Math.log1p(Math.exp(-eta)) : Math.log1p(Math.exp(eta));
}
