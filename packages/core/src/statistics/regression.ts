/** What every regression takes, refuses and gives. */
import { type Problem, refuse } from '../base/problem.ts';
import { dependentColumn } from './linear-algebra.ts';

export interface RegressionInput {
  /** The response, one number per row. */
  readonly y: ArrayLike<number>;
  /** The design matrix by columns, each as long as `y`; an intercept is a column of ones. */
  readonly X: readonly ArrayLike<number>[];
  /** The name of each column. */
  readonly names: readonly string[];
  /** Added to the linear predictor with coefficient 1: for a rate per night, the logarithm of the nights. */
  readonly offset?: ArrayLike<number> | undefined;
}

export interface Coefficient {
  readonly name: string;
  readonly estimate: number;
  readonly standardError: number;
}

export interface RegressionFit {
  readonly coefficients: readonly Coefficient[];
  /** Covariance of the estimates, row by row, in the order of the coefficients. */
  readonly covariance: Float64Array;
  /** Fitted means, one per row. */
  readonly fitted: Float64Array;
  readonly logLikelihood: number;
  /** Scoring steps until neither the likelihood nor any fitted value moved. */
  readonly iterations: number;
}

export interface Design {
  readonly columns: readonly Float64Array[];
  readonly offset: Float64Array;
  readonly names: readonly string[];
}

/** The design as typed columns, or what is wrong with it: shapes, missing numbers, too few rows, dependent columns. */
export function checkDesign({ y, X, names, offset }: RegressionInput): Design | Problem {
  const rows = y.length;
  if (names.length !== X.length)
    return problem('names', `${names.length} names`, `${X.length}, one for each column of X`, 'Name every column once.');
  if (offset !== undefined && offset.length !== rows)
    return problem('offset', `${offset.length} values`, `${rows}, one per row`, 'Give each row its offset, or none.');
  const columns = X.map((column) => Float64Array.from(column));
  for (const [j, column] of columns.entries()) {
    const name = names[j]!;
    if (column.length !== rows)
      return problem('X', `${column.length} values`, `${rows}, one per row`, 'Give each row a value.', name);
    if (!column.every(Number.isFinite))
      return problem('X', 'a missing or infinite value', 'a number in each row', 'Leave rows with missing values out.', name);
  }
  const offsets = offset === undefined ? new Float64Array(rows) : Float64Array.from(offset);
  if (!offsets.every(Number.isFinite))
    return problem('offset', 'a missing or infinite value', 'a number in each row', 'Leave rows with missing values out.');
  if (rows <= X.length)
    return problem('y', `${rows} rows`, `more than the ${X.length} columns`, 'Collect more observations or drop columns.');
  const dependent = dependentColumn(columns);
  if (dependent !== null) {
    const others = dependent.of.map((j) => names[j]!);
    return problem(
      'X',
      others.length === 0 ? 'a column of zeros' : `a column fixed by ${others.join(', ')}`,
      'columns that vary independently',
      'Leave this column out: the data cannot tell its effect from the others.',
      names[dependent.column]!,
    );
  }
  return { columns, offset: offsets, names };
}

export const isProblem = (value: object): value is Problem => 'fix' in value;

/** The problem as a refusal, for a separated or unsettled fit. */
export function refuseFit(reason: 'separation' | 'no-convergence', moving: readonly string[]) {
  const column = moving.join(', ');
  return reason === 'separation'
    ? refuse(
        problem(
          'X',
          'an estimate that grows without limit',
          'both outcomes, or some catch, among the rows that this column marks',
          'Merge it with another group or leave its rows out: they alone give no finite estimate.',
          column,
        ),
      )
    : refuse(problem('X', 'no convergence', 'a settled fit', 'Use fewer columns or more observations.', column));
}

export function problem(parameter: string, got: string, expected: string, fix: string, column?: string): Problem {
  return { where: column === undefined ? { parameter } : { parameter, column }, got, expected, fix };
}
