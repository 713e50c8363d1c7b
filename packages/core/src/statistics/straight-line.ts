import { ok, type Result, refuse } from '../base/problem.ts';
import { problem } from './regression.ts';

export interface StraightLine {
  readonly n: number;
  readonly intercept: number;
  readonly slope: number;
  readonly interceptStandardError: number;
  readonly slopeStandardError: number;
  /** Share of the variance of y that the line accounts for. */
  readonly rSquared: number;
}

/**
 * y = intercept + slope·x by ordinary least squares; standard errors with n − 2 degrees of freedom.
 * Refused with fewer than three points, or all at one x.
 */
export function fitLine(x: readonly number[], y: readonly number[]): Result<StraightLine> {
  const n = x.length;
  if (n < 3 || y.length !== n)
    return refuse(problem('x', `${n} points`, 'three or more, each with its y', 'Collect more points.'));
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / n;
  const [xMean, yMean] = [mean(x), mean(y)];
  let [sxx, sxy, syy] = [0, 0, 0];
  for (let i = 0; i < n; i++) {
    const [dx, dy] = [x[i]! - xMean, y[i]! - yMean];
    sxx += dx * dx;
    sxy += dx * dy;
    syy += dy * dy;
  }
  if (!(sxx > 1e-14 * n * xMean ** 2))
    return refuse(problem('x', `all points at ${xMean}`, 'points apart from one another', 'Add points at other values.'));
  const slope = sxy / sxx;
  const residual = Math.max(0, syy - slope * sxy) / (n - 2);
  return ok({
    n,
    intercept: yMean - slope * xMean,
    slope,
    interceptStandardError: Math.sqrt(residual * (1 / n + xMean ** 2 / sxx)),
    slopeStandardError: Math.sqrt(residual / sxx),
    rSquared: syy === 0 ? 1 : (slope * sxy) / syy,
  });
}
