/** How often a threshold of catch calls in vain, and how often it misses, by samples of the crop. */
import { type ShareEstimate, shareInfested } from '../scouting/presence.ts';
import {
  catchAtLag,
  catchReaching,
  type InfestationOptions,
  type InfestationPair,
  likeliest,
  type WithoutField,
} from './infestation-fit.ts';

export interface ThresholdErrors {
  /** Among samples below the rule, those that the catch would have called. */
  readonly falseAlarms: ShareEstimate;
  /** Among samples at or above the rule, those that the catch would have missed. */
  readonly misses: ShareEstimate;
}

export const isReached = ({ found, examined }: InfestationPair, ruleLevel: number): boolean => found / examined >= ruleLevel;

/** Of a threshold that owes nothing to these samples, such as a published one, read at the lag they show. */
export function errorsOfThreshold(
  pairs: readonly InfestationPair[],
  perNight: number,
  { ruleLevel, lag, window, level }: { ruleLevel: number; lag: number; window: number; level: number },
): ThresholdErrors {
  return errorsOf(
    pairs.flatMap((pair) => {
      const caught = catchAtLag(pair, lag, window);
      return caught === null ? [] : [{ reached: isReached(pair, ruleLevel), called: caught >= perNight }];
    }),
    level,
  );
}

/** Of a fitted threshold: the samples of each field judged by lag and threshold from the other fields alone. */
export function errorsLeftOut(
  pairs: readonly InfestationPair[],
  without: readonly WithoutField[],
  { ruleLevel, window, response = 'share-infested' }: InfestationOptions,
  level: number,
): ThresholdErrors & { readonly notCalled: number } {
  const judged = without.flatMap(({ field, fits }) => {
    const fit = likeliest(fits);
    if (fit === null || fit.slope <= 0) return [];
    const threshold = catchReaching(fit, ruleLevel, response);
    return pairs
      .filter((pair) => pair.field === field)
      .map((pair) => ({ reached: isReached(pair, ruleLevel), called: catchAtLag(pair, fit.lag, window)! >= threshold }));
  });
  return { ...errorsOf(judged, level), notCalled: pairs.length - judged.length };
}

function errorsOf(judged: readonly { readonly reached: boolean; readonly called: boolean }[], level: number): ThresholdErrors {
  const [below, reached] = [judged.filter((one) => !one.reached), judged.filter((one) => one.reached)];
  return {
    falseAlarms: shareInfested(below.filter(({ called }) => called).length, below.length, { level }),
    misses: shareInfested(reached.filter(({ called }) => !called).length, reached.length, { level }),
  };
}
