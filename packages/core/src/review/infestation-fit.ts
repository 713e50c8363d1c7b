/** Infestation of samples against the catch some time before them, for one lag. */
import { logisticRegression, negativeBinomialRegression } from '../statistics/index.ts';

/** A sample of a field and the catches before it. */
export interface InfestationPair {
  /** Samples of one field are alike in all that the catch does not tell. */
  readonly field: string;
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
  /** Variance of the intercept, covariance, variance of the slope, as chance alone would have them. */
  readonly covariance: Covariance;
  readonly logLikelihood: number;
}

export type Covariance = readonly [number, number, number];

/** A fit with the scatter that its fields show. */
export interface FieldwiseFit extends FitAtLag {
  /** Degrees of freedom: fields less one. */
  readonly freedom: number;
  /** How many times more than chance the fit varies from field to field; 1: no more. */
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
  const [intercept, slope] = [fit.value.coefficients[0]!, fit.value.coefficients[1]!];
  const { covariance, logLikelihood } = fit.value;
  return {
    lag,
    intercept: intercept.estimate,
    slope: slope.estimate,
    slopeStandardError: slope.standardError,
    covariance: [covariance[0]!, covariance[1]!, covariance[3]!],
    logLikelihood,
  };
}

/** What is fitted without one field, lag by lag. */
export interface WithoutField {
  readonly field: string;
  readonly fits: readonly FitAtLag[];
}

/** Fits of all fields but one, for each. */
export const withoutEach = (pairs: readonly InfestationPair[], options: InfestationOptions): WithoutField[] =>
  [...new Set(pairs.map(({ field }) => field))].map((field) => ({
    field,
    fits: fitsByLag(
      pairs.filter((pair) => pair.field !== field),
      options,
    ),
  }));

/**
 * The likeliest fit with a covariance by leaving out one field after the other: what the fields have of their
 * own is in it, and so is what the samples of one field share. Null without a fit, or when some field alone holds it up.
 *
 * Source: jackknife of clusters, (G − 1)/G times the squares about the mean, with t of G − 1 degrees of freedom; MacKinnon,
 * Nielsen & Webb 2023, Journal of Econometrics 232:272–299 (from memory).
 */
export function fieldwise(fits: readonly FitAtLag[], without: readonly WithoutField[]): FieldwiseFit | null {
  const best = likeliest(fits);
  if (best === null) return null;
  const freedom = without.length - 1;
  const left: FitAtLag[] = [];
  for (const one of without) {
    const same = one.fits.find(({ lag }) => lag === best.lag);
    if (same === undefined) return null;
    left.push(same);
  }
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const about = (a: readonly number[], b: readonly number[]) =>
    freedom * mean(a.map((value, i) => (value - mean(a)) * (b[i]! - mean(b))));
  const [intercepts, slopes] = [left.map(({ intercept }) => intercept), left.map(({ slope }) => slope)];
  const seen: Covariance = [about(intercepts, intercepts), about(intercepts, slopes), about(slopes, slopes)];
  const wider = timesWider(seen, best.covariance);
  // Never less than chance alone: fields can look more alike than their counts let them.
  const covariance = wider < 1 ? best.covariance : seen;
  return {
    ...best,
    covariance,
    slopeStandardError: Math.sqrt(covariance[2]),
    freedom,
    heterogeneity: Math.max(1, wider),
  };
}

/** How far apart the lags tried are, in their mean. */
export function betweenLags(fits: readonly FitAtLag[]): number {
  const lags = fits.map(({ lag }) => lag).sort((a, b) => a - b);
  return (lags.at(-1)! - lags[0]!) / Math.max(1, lags.length - 1);
}

/** Where likelihood is highest between the lags tried: the top of the parabola through the likeliest and its neighbours. */
export function peakLag(fits: readonly FitAtLag[]): number | null {
  const best = likeliest(fits);
  if (best === null) return null;
  const inOrder = fits.toSorted((a, b) => a.lag - b.lag);
  const at = inOrder.findIndex(({ lag }) => lag === best.lag);
  const [before, after] = [inOrder[at - 1], inOrder[at + 1]];
  if (!before || !after) return best.lag;
  const [down, up] = [best.logLikelihood - before.logLikelihood, best.logLikelihood - after.logLikelihood];
  const [left, right] = [best.lag - before.lag, after.lag - best.lag];
  const top = (right ** 2 * down - left ** 2 * up) / (2 * (right * down + left * up));
  return Number.isFinite(top) ? best.lag + top : best.lag;
}

/** Half the trace of A·B⁻¹: the mean factor by which A is wider than B. */
function timesWider([a, ab, b]: Covariance, [c, cd, d]: Covariance): number {
  return (a * d - 2 * ab * cd + b * c) / (2 * (c * d - cd ** 2));
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
