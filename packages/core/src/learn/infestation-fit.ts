/** Infestation of samples against the catch some time before them, for one lag. */
import { logisticRegression, negativeBinomialRegression, type RegressionFit } from '../statistics/index.ts';

/** Intercept, slope and lag. */
export const FITTED = 3;

/** A sample of a field and the catches before it. */
export interface InfestationPair {
  readonly examined: number;
  /** Units infested, or insects counted in all units, by `response`. */
  readonly found: number;
  /** Nightly rates, each with how long before the sample it was: days, or degree-days. */
  readonly catches: readonly { readonly before: number; readonly perNight: number }[];
}

export type Response = 'share-infested' | 'count-per-unit';

export interface FitAtLag {
  readonly lag: number;
  readonly intercept: number;
  readonly slope: number;
  readonly slopeStandardError: number;
  readonly logLikelihood: number;
  /** Scatter between fields beyond chance; 1: none. Widens intervals of the share; the count's fit holds its own k. */
  readonly heterogeneity: number;
}

/** Mean nightly rate about `lag` before the sample; null when no catch is known there. */
export function catchAtLag({ catches }: InfestationPair, lag: number, window: number): number | null {
  const near = catches.filter(({ before }) => Math.abs(before - lag) <= window / 2);
  return near.length === 0 ? null : near.reduce((sum, { perNight }) => sum + perNight, 0) / near.length;
}

/** Log-odds of the share, or logarithm of the count per unit, as a straight line in ln(1 + moths per night); null: no fit. */
export function fitAtLag(
  pairs: readonly InfestationPair[],
  { lag, window, response }: { readonly lag: number; readonly window: number; readonly response: Response },
): FitAtLag | null {
  const x = pairs.map((pair) => Math.log1p(catchAtLag(pair, lag, window) ?? Number.NaN));
  const input = { y: pairs.map(({ found }) => found), X: [x.map(() => 1), x], names: ['intercept', 'catch'] };
  const examined = pairs.map((pair) => pair.examined);
  const fit =
    response === 'share-infested'
      ? logisticRegression({ ...input, trials: examined })
      : negativeBinomialRegression({ ...input, offset: examined.map(Math.log), dispersion: 'adjusted' });
  if (!fit.ok) return null;
  const heterogeneity = response === 'share-infested' ? pearsonOverFreedom(pairs, fit.value) : 1;
  const [intercept, slope] = [fit.value.coefficients[0]!, fit.value.coefficients[1]!];
  return {
    lag,
    intercept: intercept.estimate,
    slope: slope.estimate,
    slopeStandardError: slope.standardError * Math.sqrt(heterogeneity),
    logLikelihood: fit.value.logLikelihood,
    heterogeneity,
  };
}

/**
 * Pearson's X² over its degrees of freedom, at least 1 (McCullagh & Nelder 1989, 4.5; from memory): the rows less
 * intercept, slope and lag.
 */
function pearsonOverFreedom(pairs: readonly InfestationPair[], { fitted }: RegressionFit): number {
  const squares = pairs.reduce((sum, { examined, found }, i) => {
    const share = fitted[i]!;
    return sum + (found - examined * share) ** 2 / (examined * share * (1 - share));
  }, 0);
  return Math.max(1, squares / (pairs.length - FITTED));
}

/** Moths per night at which the fitted share, or count per unit, reaches `level`. */
export function catchReaching({ intercept, slope }: FitAtLag, level: number, response: Response): number {
  const target = response === 'share-infested' ? Math.log(level / (1 - level)) : Math.log(level);
  return Math.expm1((target - intercept) / slope);
}
