/**
 * From catch to what is found in the crop: how long before the sample the catch speaks for it, and from which catch on
 * the rule's infestation is to be expected here. The threshold is a suggestion, for a person to take or leave.
 */
import { ASSUMPTIONS } from '../catalogue/assumptions.ts';
import { studentLimit } from '../statistics/index.ts';
import { LESSON_ASSUMPTIONS } from './assumptions.ts';
import {
  betweenLags,
  catchAtLag,
  catchReaching,
  expectedAt,
  type FieldwiseFit,
  fieldwise,
  fitsByLag,
  type InfestationOptions,
  type InfestationPair,
  peakLag,
  withoutEach,
} from './infestation-fit.ts';
import { lagSpread } from './lag-spread.ts';
import { type Estimate, type Learned, type NotKnown, notKnown } from './learned.ts';
import { errorsLeftOut, isReached, type ThresholdErrors } from './threshold-errors.ts';

export interface CatchToInfestation {
  /** The likeliest lag; its interval by weighing the fields anew many times. */
  readonly lag: Estimate & {
    /** The interval ends at the shortest or longest lag tried, and may reach further. */
    readonly openBelow: boolean;
    readonly openAbove: boolean;
  };
  /** Catches within half of this of the lag were averaged. */
  readonly window: number;
  /** ln-likelihood of each lag tried, highest 0, scatter between fields taken into account. */
  readonly profile: readonly { readonly lag: number; readonly logLikelihood: number }[];
  readonly fit: FieldwiseFit;
  readonly suggestion: ThresholdSuggestion;
  /** The fit from no catch to the highest one, with its pointwise interval. */
  readonly curve: readonly CurvePoint[];
  /** The samples it rests on: which of the pairs given, the catch at the lag, and the share or count per unit found. */
  readonly samples: readonly { readonly index: number; readonly perNight: number; readonly level: number }[];
  /** Pairs used; those without a known catch at every lag are left out. */
  readonly pairs: number;
  readonly leftOut: number;
}

export interface CurvePoint {
  readonly perNight: number;
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** Nothing takes this over by itself. Errors are those on samples that had no part in the fit. */
export interface ThresholdSuggestion extends ThresholdErrors {
  readonly status: 'suggestion';
  /** Moths per trap per night. */
  readonly perNight: number;
  /** Samples for which the others gave no threshold. */
  readonly notCalled: number;
}

export type NoThreshold = 'too-few-pairs' | 'too-few-fields' | 'one-sided' | 'no-relation' | 'outside-catches' | 'no-fit';

export function catchToInfestation(
  pairs: readonly InfestationPair[],
  options: InfestationOptions,
): Learned<CatchToInfestation, NoThreshold> {
  const { ruleLevel, lags, window, level = ASSUMPTIONS.intervalLevel.value } = options;
  const usable = pairs.filter((pair) => lags.every((lag) => catchAtLag(pair, lag, window) !== null));
  const tooFew = refusal(usable, ruleLevel);
  if (tooFew) return tooFew;

  const fits = fitsByLag(usable, options);
  const without = withoutEach(usable, options);
  const best = fieldwise(fits, without);
  if (best === null)
    return notKnown('no-fit', 'no lag with a fit', 'catches that differ', 'Add samples after low and high catches.');
  const limit = studentLimit(level, best.freedom);
  if (best.slope - limit * best.slopeStandardError <= 0)
    return notKnown(
      'no-relation',
      `a slope of ${best.slope.toPrecision(2)} ± ${(limit * best.slopeStandardError).toPrecision(2)}`,
      'infestation that rises with catch',
      'Catch does not foretell infestation in these samples: scout by stage and heat instead.',
      { parameter: 'pairs' },
    );
  const perNight = catchReaching(best, ruleLevel, options.response ?? 'share-infested');
  const caught = usable.map((pair) => catchAtLag(pair, best.lag, window)!);
  if (!(perNight > 0 && perNight <= Math.max(...caught)))
    return notKnown(
      'outside-catches',
      perNight > 0 ? 'a threshold above every catch' : 'infestation at the rule without any catch',
      'samples on both sides of the threshold',
      'Add samples: a threshold outside the catches seen would be a guess.',
      { parameter: 'pairs' },
    );
  const profile = fits.map(({ lag, logLikelihood }) => ({
    lag,
    logLikelihood: (logLikelihood - best.logLikelihood) / best.heterogeneity,
  }));
  return {
    known: true,
    window,
    lag: lagInterval(peakLag(fits)!, limit * lagSpread(fits, without, betweenLags(fits)), fits, level),
    profile,
    fit: best,
    suggestion: { status: 'suggestion', perNight, ...errorsLeftOut(usable, without, options, level) },
    curve: curveOf(best, Math.max(...caught), { response: options.response ?? 'share-infested', limit }),
    samples: usable.map(({ examined, found }, index) => ({
      index: pairs.indexOf(usable[index]!),
      perNight: caught[index]!,
      level: found / examined,
    })),
    pairs: usable.length,
    leftOut: pairs.length - usable.length,
  };
}

function refusal(pairs: readonly InfestationPair[], ruleLevel: number): NotKnown<NoThreshold> | null {
  const least = LESSON_ASSUMPTIONS.samplePairs.value;
  if (pairs.length < least)
    return notKnown(
      'too-few-pairs',
      `${pairs.length} samples with the catch before them known`,
      `${least} or more`,
      `Sample fields near traps at least ${least - pairs.length} more times.`,
      { parameter: 'pairs', figures: { have: pairs.length, need: least } },
    );
  const fields = new Set(pairs.map(({ field }) => field)).size;
  const leastFields = LESSON_ASSUMPTIONS.fieldsSampled.value;
  if (fields < leastFields)
    return notKnown(
      'too-few-fields',
      `samples of ${fields} ${fields === 1 ? 'field' : 'fields'}`,
      `${leastFields} or more`,
      'Sample other fields near traps: more samples of the same ones do not show how fields differ.',
      { parameter: 'pairs', figures: { have: fields, need: leastFields } },
    );
  const eachSide = LESSON_ASSUMPTIONS.samplesEachSide.value;
  const reached = pairs.filter((pair) => isReached(pair, ruleLevel)).length;
  if (Math.min(reached, pairs.length - reached) < eachSide)
    return notKnown(
      'one-sided',
      `${reached} of ${pairs.length} samples at or above the rule`,
      `${eachSide} or more on each side`,
      'Sample after low and after high catches alike.',
      { parameter: 'pairs', figures: { have: Math.min(reached, pairs.length - reached), need: eachSide } },
    );
  return null;
}

const CURVE_STEPS = 40;

/** Steps even in ln(1 + moths), in which the fit is straight. */
function curveOf(fit: FieldwiseFit, most: number, options: Parameters<typeof expectedAt>[2]): CurvePoint[] {
  return Array.from({ length: CURVE_STEPS + 1 }, (_, i) => {
    const perNight = Math.expm1((Math.log1p(most) * i) / CURVE_STEPS);
    return { perNight, ...expectedAt(fit, perNight, options) };
  });
}

function lagInterval(
  value: number,
  reach: number,
  fits: readonly { readonly lag: number }[],
  level: number,
): CatchToInfestation['lag'] {
  const tried = fits.map(({ lag }) => lag);
  const [shortest, longest] = [Math.min(...tried), Math.max(...tried)];
  const [low, high] = [value - reach, value + reach];
  return {
    value,
    low: Math.max(shortest, low),
    high: Math.min(longest, high),
    level,
    openBelow: low <= shortest,
    openAbove: high >= longest,
  };
}
