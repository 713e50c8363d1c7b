/** Figures of several sites or years brought together when they differ by more than their own uncertainty. */
import { studentLimit } from '../statistics/student.ts';

export interface Measured {
  readonly value: number;
  /** Of the value, from its own counts alone. */
  readonly variance: number;
}

export interface Combined {
  readonly value: number;
  readonly standardError: number;
  /** Limits of t that belong to the standard error; ∞: normal. */
  readonly df: number;
  /** Variance of the true values about one another. */
  readonly between: number;
}

/**
 * Their mean, and how far it may be off by the scatter that the values themselves show: weights of a random-effects mean,
 * with the standard error and n − 1 degrees of freedom of Hartung & Knapp, which keep their level with few values.
 *
 * Source: Hartung & Knapp 2001, Statistics in Medicine 20:3875–3889; between-variance by Paule & Mandel 1982, Journal of
 * Research of the NBS 87:377–385 (both from memory).
 */
export function combineSeen(measured: readonly Measured[]): Combined {
  const between = betweenOf(measured, measured.length - 1, (weights) => {
    const mean = weightedMean(measured, weights);
    return () => mean;
  });
  const weights = measured.map(({ variance }) => 1 / (variance + between));
  const value = weightedMean(measured, weights);
  const total = sum(weights);
  const squares = sum(measured.map((one, i) => weights[i]! * (one.value - value) ** 2));
  return { value, standardError: Math.sqrt(squares / ((measured.length - 1) * total)), df: measured.length - 1, between };
}

/** The same with an assumed scatter, where too few values stand to show their own. */
export function combineAssumed(measured: readonly Measured[], between: number): Combined {
  const weights = measured.map(({ variance }) => 1 / (variance + between));
  return { value: weightedMean(measured, weights), standardError: Math.sqrt(1 / sum(weights)), df: Infinity, between };
}

export interface Line {
  readonly at: (x: number) => number;
  readonly slope: Combined;
}

/** A straight line through values that differ about it, with Hartung & Knapp's standard error of its slope; n − 2 degrees of freedom. */
export function combineAlong(measured: readonly (Measured & { readonly x: number })[]): Line {
  const lineFor = (weights: readonly number[]) => {
    const total = sum(weights);
    const meanX = sum(measured.map(({ x }, i) => weights[i]! * x)) / total;
    const mean = weightedMean(measured, weights);
    const spread = sum(measured.map(({ x }, i) => weights[i]! * (x - meanX) ** 2));
    const slope = sum(measured.map(({ x, value }, i) => weights[i]! * (x - meanX) * (value - mean))) / spread;
    return { slope, spread, at: (x: number) => mean + slope * (x - meanX) };
  };
  const df = measured.length - 2;
  const between = betweenOf(measured, df, (weights) => {
    const { at } = lineFor(weights);
    return ({ x }) => at(x);
  });
  const weights = measured.map(({ variance }) => 1 / (variance + between));
  const { slope, spread, at } = lineFor(weights);
  const squares = sum(measured.map(({ x, value }, i) => weights[i]! * (value - at(x)) ** 2));
  return { at, slope: { value: slope, standardError: Math.sqrt(squares / (df * spread)), df, between } };
}

/** The interval of `level` about a combined value. */
export function limitsOf({ value, standardError, df }: Combined, level: number): { readonly low: number; readonly high: number } {
  const reach = studentLimit(level, df) * standardError;
  return { low: value - reach, high: value + reach };
}

/** The between-variance at which the weighted squares about the fit are what they are expected to be; 0 when they are less without any. */
function betweenOf<M extends Measured>(
  measured: readonly M[],
  df: number,
  fit: (weights: readonly number[]) => (one: M) => number,
): number {
  const excess = (between: number): number => {
    const weights = measured.map(({ variance }) => 1 / (variance + between));
    const fitted = fit(weights);
    return sum(measured.map((one, i) => weights[i]! * (one.value - fitted(one)) ** 2)) - df;
  };
  if (excess(0) <= 0) return 0;
  let [low, high] = [0, 1];
  while (excess(high) > 0) high *= 2;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (excess(middle) > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

const weightedMean = (measured: readonly Measured[], weights: readonly number[]): number =>
  sum(measured.map(({ value }, i) => weights[i]! * value)) / sum(weights);

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
