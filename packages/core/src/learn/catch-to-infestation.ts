/**
 * From catch to what is found in the crop: how long before the sample the catch speaks for it, and from which catch on
 * the rule's infestation is to be expected here. The threshold is a suggestion, for a person to take or leave.
 */
import { ASSUMPTIONS } from '../catalogue/assumptions.ts';
import { type ShareEstimate, shareInfested } from '../scouting/presence.ts';
import { studentLimit } from '../statistics/index.ts';
import { LEARN_ASSUMPTIONS } from './assumptions.ts';
import {
  catchAtLag,
  catchReaching,
  FITTED,
  type FitAtLag,
  fitAtLag,
  type InfestationPair,
  type Response,
} from './infestation-fit.ts';
import { type Estimate, type Learned, type NotKnown, notKnown } from './learned.ts';

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

export interface CatchToInfestation {
  /** The likeliest lag; its interval by profile likelihood. */
  readonly lag: Estimate & {
    /** The interval ends at the shortest or longest lag tried, and may reach further. */
    readonly openBelow: boolean;
    readonly openAbove: boolean;
  };
  /** ln-likelihood of each lag tried, highest 0, scatter between fields taken into account. */
  readonly profile: readonly { readonly lag: number; readonly logLikelihood: number }[];
  readonly fit: FitAtLag;
  readonly suggestion: ThresholdSuggestion;
  /** Pairs used; those without a known catch at every lag are left out. */
  readonly pairs: number;
  readonly leftOut: number;
}

/** Nothing takes this over by itself. */
export interface ThresholdSuggestion {
  readonly status: 'suggestion';
  /** Moths per trap per night. */
  readonly perNight: number;
  /** Among samples below the rule, those that the catch would have called; each left out of its own fit. */
  readonly falseAlarms: ShareEstimate;
  /** Among samples at or above the rule, those that the catch would have missed. */
  readonly misses: ShareEstimate;
  /** Samples for which the others gave no threshold. */
  readonly notCalled: number;
}

export type NoThreshold = 'too-few-pairs' | 'one-sided' | 'no-relation' | 'outside-catches' | 'no-fit';

export function catchToInfestation(
  pairs: readonly InfestationPair[],
  options: InfestationOptions,
): Learned<CatchToInfestation, NoThreshold> {
  const { ruleLevel, lags, window, level = ASSUMPTIONS.intervalLevel.value } = options;
  const usable = pairs.filter((pair) => lags.every((lag) => catchAtLag(pair, lag, window) !== null));
  const tooFew = refusal(usable, ruleLevel);
  if (tooFew) return tooFew;

  const fits = fitsByLag(usable, options);
  const best = likeliest(fits);
  if (best === null)
    return notKnown('no-fit', 'no lag with a fit', 'catches that differ', 'Add samples after low and high catches.');
  const limit = studentLimit(level, usable.length - FITTED);
  if (best.slope - limit * best.slopeStandardError <= 0)
    return notKnown(
      'no-relation',
      `a slope of ${best.slope.toPrecision(2)} ± ${(limit * best.slopeStandardError).toPrecision(2)}`,
      'infestation that rises with catch',
      'Catch does not foretell infestation in these samples: scout by stage and heat instead.',
      'pairs',
    );
  const perNight = catchReaching(best, ruleLevel, options.response ?? 'share-infested');
  const caught = usable.map((pair) => catchAtLag(pair, best.lag, window)!);
  if (!(perNight > 0 && perNight <= Math.max(...caught)))
    return notKnown(
      'outside-catches',
      perNight > 0 ? 'a threshold above every catch' : 'infestation at the rule without any catch',
      'samples on both sides of the threshold',
      'Add samples: a threshold outside the catches seen would be a guess.',
      'pairs',
    );
  const profile = fits.map(({ lag, logLikelihood }) => ({
    lag,
    logLikelihood: (logLikelihood - best.logLikelihood) / best.heterogeneity,
  }));
  return {
    known: true,
    lag: lagInterval(profile, best.lag, limit, level),
    profile,
    fit: best,
    suggestion: { status: 'suggestion', perNight, ...errorRates(usable, options, level) },
    pairs: usable.length,
    leftOut: pairs.length - usable.length,
  };
}

function refusal(pairs: readonly InfestationPair[], ruleLevel: number): NotKnown<NoThreshold> | null {
  const least = LEARN_ASSUMPTIONS.samplePairs.value;
  if (pairs.length < least)
    return notKnown(
      'too-few-pairs',
      `${pairs.length} samples with the catch before them known`,
      `${least} or more`,
      `Sample fields near traps at least ${least - pairs.length} more times.`,
      'pairs',
    );
  const eachSide = LEARN_ASSUMPTIONS.samplesEachSide.value;
  const reached = pairs.filter((pair) => isReached(pair, ruleLevel)).length;
  if (Math.min(reached, pairs.length - reached) < eachSide)
    return notKnown(
      'one-sided',
      `${reached} of ${pairs.length} samples at or above the rule`,
      `${eachSide} or more on each side`,
      'Sample after low and after high catches alike.',
      'pairs',
    );
  return null;
}

const isReached = ({ found, examined }: InfestationPair, ruleLevel: number) => found / examined >= ruleLevel;

function fitsByLag(
  pairs: readonly InfestationPair[],
  { lags, window, response = 'share-infested' }: InfestationOptions,
): FitAtLag[] {
  return lags.flatMap((lag) => fitAtLag(pairs, { lag, window, response }) ?? []);
}

function likeliest(fits: readonly FitAtLag[]): FitAtLag | null {
  return fits.reduce<FitAtLag | null>(
    (best, fit) => (best === null || fit.logLikelihood > best.logLikelihood ? fit : best),
    null,
  );
}

/**
 * From the last lag too unlikely before to the first too unlikely after those that are not: likelihood crosses its limit
 * somewhere between lags tried, so the interval takes in the whole step.
 */
function lagInterval(
  profile: CatchToInfestation['profile'],
  best: number,
  limit: number,
  level: number,
): CatchToInfestation['lag'] {
  const inOrder = profile.toSorted((a, b) => a.lag - b.lag);
  const held = ({ logLikelihood }: { readonly logLikelihood: number }) => -2 * logLikelihood <= limit ** 2;
  const [first, last] = [inOrder.findIndex(held), inOrder.findLastIndex(held)];
  return {
    value: best,
    low: inOrder[Math.max(0, first - 1)]!.lag,
    high: inOrder[Math.min(inOrder.length - 1, last + 1)]!.lag,
    level,
    openBelow: first === 0,
    openAbove: last === inOrder.length - 1,
  };
}

/** Each sample judged by lag and threshold from the others alone. */
function errorRates(pairs: readonly InfestationPair[], options: InfestationOptions, level: number) {
  const { ruleLevel, window, response = 'share-infested' } = options;
  const tally = { below: 0, falseAlarms: 0, reached: 0, misses: 0, notCalled: 0 };
  for (const [i, pair] of pairs.entries()) {
    const fit = likeliest(fitsByLag(pairs.toSpliced(i, 1), options));
    if (fit === null || fit.slope <= 0) {
      tally.notCalled++;
      continue;
    }
    const called = catchAtLag(pair, fit.lag, window)! >= catchReaching(fit, ruleLevel, response);
    if (isReached(pair, ruleLevel)) {
      tally.reached++;
      if (!called) tally.misses++;
    } else {
      tally.below++;
      if (called) tally.falseAlarms++;
    }
  }
  return {
    falseAlarms: shareInfested(tally.falseAlarms, tally.below, level),
    misses: shareInfested(tally.misses, tally.reached, level),
    notCalled: tally.notCalled,
  };
}
