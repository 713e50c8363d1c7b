/**
 * Maximum likelihood of a generalised linear model by Newton's method. The links used here make the likelihood concave
 * in the linear predictor, so every step climbs.
 *
 * Source: McCullagh & Nelder 1989, Generalized Linear Models, 2.5 (from memory); checked against R.
 */
import { cholesky, dot, linearPredictor, solveCholesky, transposeTimes, weightedGram } from './linear-algebra.ts';
import type { Design } from './regression.ts';

/** A distribution with its link, as functions of the linear predictor η of all rows. */
export interface Family {
  /** η near which to begin. */
  readonly start: Float64Array;
  /** Log-likelihood, up to a constant; fills in, per row, its first derivative by η and its second with sign changed. */
  readonly evaluate: (eta: Float64Array, slope: Float64Array, curvature: Float64Array) => number;
  /** The expectation of that curvature, per row. */
  readonly expectedCurvature: (eta: Float64Array) => Float64Array;
}

export interface LinearFit {
  readonly beta: Float64Array;
  readonly eta: Float64Array;
  /** Cholesky factor of the expected information. */
  readonly information: Float64Array;
  readonly iterations: number;
}

/** `moving`: the columns whose estimates had not settled. */
export interface Unsettled {
  readonly reason: 'separation' | 'no-convergence';
  readonly moving: readonly string[];
}

const MAX_ITERATIONS = 200;
/** In units of standard errors, squared. */
const SETTLED = 1e-18;
/** Of the likelihood, relative: a smaller loss is noise. */
const ROUNDING = 1e-11;
/** Of the linear predictor: a step this long that gains no likelihood leads to infinity. */
const STILL_MOVING = 1e-3;

/** The maximum, from `beta` if given; or why there is none. */
export function fitLinear(design: Design, family: Family, from?: Float64Array): LinearFit | Unsettled {
  const { columns, offset, names } = design;
  const rows = offset.length;
  const [slope, curvature, eta, nextEta] = Array.from({ length: 4 }, () => new Float64Array(rows)) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  const beta = from?.slice() ?? leastSquaresStart(design, family);
  if (beta === null) return { reason: 'no-convergence', moving: names };
  linearPredictor(columns, beta, offset, eta);
  let likelihood = family.evaluate(eta, slope, curvature);
  let moving: readonly string[] = names;

  for (let iterations = 1; iterations <= MAX_ITERATIONS; iterations++) {
    const hessian = cholesky(weightedGram(columns, curvature), columns.length);
    if (hessian === null) return { reason: 'separation', moving };
    const score = transposeTimes(columns, slope);
    const step = solveCholesky(hessian, score);
    const settled = dot(step, score) < SETTLED;

    const before = likelihood;
    for (let length = 1; ; length /= 2) {
      const next = beta.map((value, j) => value + length * step[j]!);
      linearPredictor(columns, next, offset, nextEta);
      likelihood = family.evaluate(nextEta, slope, curvature);
      if (likelihood >= before - ROUNDING * Math.abs(before) || settled || length < 1e-3) {
        beta.set(next);
        break;
      }
    }
    let moved = 0;
    for (let i = 0; i < rows; i++) moved = Math.max(moved, Math.abs(nextEta[i]! - eta[i]!));
    eta.set(nextEta);
    moving = names.filter((_, j) => Math.abs(step[j]!) > STILL_MOVING);
    if (settled && moved > STILL_MOVING) return { reason: 'separation', moving };
    if (settled) {
      const information = cholesky(weightedGram(columns, family.expectedCurvature(eta)), columns.length);
      return information === null ? { reason: 'separation', moving } : { beta, eta, information, iterations };
    }
  }
  return { reason: 'no-convergence', moving };
}

/** One weighted least-squares fit to the working response at the family's start. */
function leastSquaresStart({ columns, offset }: Design, { start, evaluate }: Family): Float64Array | null {
  const [slope, curvature] = [new Float64Array(start.length), new Float64Array(start.length)];
  evaluate(start, slope, curvature);
  const response = slope.map((value, i) => value + curvature[i]! * (start[i]! - offset[i]!));
  const information = cholesky(weightedGram(columns, curvature), columns.length);
  return information && solveCholesky(information, transposeTimes(columns, response));
}
