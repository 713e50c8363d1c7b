/**
 * How many units to examine for a mean known to a fixed precision, and how scatter grows with the mean.
 *
 * Precision D is the standard error of the mean as a share of it: 0.25 is common for action, 0.1 for study (common
 * practice, no source).
 */

import { ok, type Problem, type Result, refuse } from '../base/problem.ts';
import { fitLine } from '../statistics/straight-line.ts';

/** Sample mean and variance of the counts per unit in one field on one day. */
export interface FieldMoments {
  readonly mean: number;
  readonly variance: number;
}

/** Taylor's power law s² = a·m^b. Source: Taylor 1961, Nature 189:732–735. */
export interface PowerLaw {
  readonly a: number;
  readonly b: number;
}

export interface FittedPowerLaw extends PowerLaw {
  readonly logAStandardError: number;
  readonly bStandardError: number;
  readonly rSquared: number;
  /** Fields used: those with some insects and some variance. */
  readonly fields: number;
}

/** a and b by least squares on the logarithms, as Taylor did; refused with fewer than three usable fields. */
export function fitPowerLaw(fields: readonly FieldMoments[]): Result<FittedPowerLaw> {
  const usable = fields.filter(({ mean, variance }) => mean > 0 && variance > 0);
  const line = fitLine(
    usable.map(({ mean }) => Math.log(mean)),
    usable.map(({ variance }) => Math.log(variance)),
  );
  if (!line.ok) return line;
  const { intercept, slope, interceptStandardError, slopeStandardError, rSquared } = line.value;
  return ok({
    a: Math.exp(intercept),
    b: slope,
    logAStandardError: interceptStandardError,
    bStandardError: slopeStandardError,
    rSquared,
    fields: usable.length,
  });
}

/** Units for precision D at mean m: n = a·m^(b − 2)/D². Not rounded. */
export function taylorSampleSize({ a, b }: PowerLaw, mean: number, precision: number): number {
  return (a * mean ** (b - 2)) / precision ** 2;
}

/**
 * Green's stop line: the total at which n units give precision D, so that sampling stops at this total or more;
 * T = n·(n·D²/a)^(1/(b − 2)). For b = 2 no line exists, n = a/D² whatever the total: NaN.
 * Source: Green 1970, Researches on Population Ecology 12:249–251 (citation from memory), from Taylor's n with m = T/n.
 */
export function greenStopTotal({ a, b }: PowerLaw, samples: number, precision: number): number {
  return b === 2 ? Number.NaN : samples * ((samples * precision ** 2) / a) ** (1 / (b - 2));
}

/** Iwao's regression of mean crowding on the mean, m* = α + β·m. */
export interface Patchiness {
  readonly alpha: number;
  readonly beta: number;
}

export interface FittedPatchiness extends Patchiness {
  readonly alphaStandardError: number;
  readonly betaStandardError: number;
  readonly rSquared: number;
  readonly fields: number;
}

/** Lloyd's mean crowding: other insects in the unit of an average insect, m + s²/m − 1. */
export function meanCrowding({ mean, variance }: FieldMoments): number {
  return mean + variance / mean - 1;
}

/**
 * α and β by least squares: a second opinion on how counts clump.
 * Source: Iwao 1968, Researches on Population Ecology 10:1–20 (citation from memory).
 */
export function fitPatchiness(fields: readonly FieldMoments[]): Result<FittedPatchiness> {
  const usable = fields.filter(({ mean }) => mean > 0);
  const line = fitLine(
    usable.map(({ mean }) => mean),
    usable.map(meanCrowding),
  );
  if (!line.ok) return line;
  const { intercept, slope, interceptStandardError, slopeStandardError, rSquared } = line.value;
  return ok({
    alpha: intercept,
    beta: slope,
    alphaStandardError: interceptStandardError,
    betaStandardError: slopeStandardError,
    rSquared,
    fields: usable.length,
  });
}

/** Units for precision D at mean m: n = ((α + 1)/m + β − 1)/D², from s² = (α + 1)·m + (β − 1)·m². */
export function iwaoSampleSize({ alpha, beta }: Patchiness, mean: number, precision: number): number {
  return ((alpha + 1) / mean + beta - 1) / precision ** 2;
}

/**
 * Kuno's stop line, to Iwao's regression what Green's is to Taylor's law: the total at which n units give precision D,
 * T = (α + 1)/(D² − (β − 1)/n). Infinite up to n = (β − 1)/D², where no total is enough.
 * Source: Kuno 1969, Researches on Population Ecology 11:127–136 (citation from memory), from Iwao's n with m = T/n.
 */
export function kunoStopTotal({ alpha, beta }: Patchiness, samples: number, precision: number): number {
  const left = precision ** 2 - (beta - 1) / samples;
  return left > 0 ? (alpha + 1) / left : Infinity;
}

/** Mean and variance (n − 1) of the counts of one field; refused with fewer than two units. */
export function fieldMoments(counts: readonly number[]): Result<FieldMoments> {
  const n = counts.length;
  if (n < 2) return refuse(tooFew(n));
  const mean = counts.reduce((sum, count) => sum + count, 0) / n;
  const variance = counts.reduce((sum, count) => sum + (count - mean) ** 2, 0) / (n - 1);
  return ok({ mean, variance });
}

const tooFew = (n: number): Problem => ({
  where: { parameter: 'counts' },
  got: `${n} units`,
  expected: 'two or more',
  fix: 'Examine more units: one alone shows no scatter.',
});
