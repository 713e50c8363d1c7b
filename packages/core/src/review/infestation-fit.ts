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

export interface InfestationOptions {
  /** Share of units infested, or insects per unit, from which the rule is reached. */
  readonly ruleLevel: number;
  readonly response?: Response | undefined;
  /** Lags tried, in the unit of the catches' `before`. */
  readonly lags: readonly number[];
  /** Catches within half of this of the lag are averaged. */
  readonly window: number;
  readonly level?: number | undefined;
}

export interface FitAtLag {
  readonly lag: number;
  readonly intercept: number;
  readonly slope: number;
  readonly slopeStandardError: number;
  /** Variance of the intercept, covariance, variance of the slope; scatter between fields taken into account. */
  readonly covariance: readonly [number, number, number];
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
    covariance: [
      heterogeneity * fit.value.covariance[0]!,
      heterogeneity * fit.value.covariance[1]!,
      heterogeneity * fit.value.covariance[3]!,
    ],
    logLikelihood: fit.value.logLikelihood,
    heterogeneity,
  };
}

/** The fit at each lag that gives one. */
export function fitsByLag(
  pairs: readonly InfestationPair[],
  { lags, window, response = 'share-infested' }: InfestationOptions,
): FitAtLag[] {
  return lags.flatMap((lag) => fitAtLag(pairs, { lag, window, response }) ?? []);
}

/** Null without a fit. */
export function likeliest(fits: readonly FitAtLag[]): FitAtLag | null {
  return fits.reduce<FitAtLag | null>(
    (best, fit) => (best === null || fit.logLikelihood > best.logLikelihood ? fit : best),
    null,
  );
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

/**
 * The fitted share, or count per unit, at a catch, with its pointwise interval: `limit` standard errors each way on the
 * scale of the fit, where it is symmetric.
 */
export function expectedAt(
  { intercept, slope, covariance: [a, ab, b] }: FitAtLag,
  perNight: number,
  { response, limit }: { readonly response: Response; readonly limit: number },
): { readonly value: number; readonly low: number; readonly high: number } {
  const x = Math.log1p(perNight);
  const eta = intercept + slope * x;
  const margin = limit * Math.sqrt(a + 2 * ab * x + b * x ** 2);
  const back = (value: number) => (response === 'share-infested' ? 1 / (1 + Math.exp(-value)) : Math.exp(value));
  return { value: back(eta), low: back(eta - margin), high: back(eta + margin) };
}

/** Moths per night at which the fitted share, or count per unit, reaches `level`. */
export function catchReaching({ intercept, slope }: FitAtLag, level: number, response: Response): number {
  const target = response === 'share-infested' ? Math.log(level / (1 - level)) : Math.log(level);
  return Math.expm1((target - intercept) / slope);
}
