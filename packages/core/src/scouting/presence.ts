/** Presence–absence sampling: how many units hold any insect, not how many insects they hold. */
import { betaQuantile } from '../statistics/incomplete-beta.ts';

export interface ShareEstimate {
  readonly infested: number;
  readonly examined: number;
  /** NaN when nothing was examined. */
  readonly share: number;
  readonly low: number;
  readonly high: number;
  readonly level: number;
}

/**
 * Share of units infested, with Jeffreys' interval of equal tails. With none infested the interval begins at 0, with
 * all it ends at 1, and the other limit is one-sided.
 *
 * Source: Brown, Cai & DasGupta 2001, Statistical Science 16:101–133 (from memory).
 */
export function shareInfested(infested: number, examined: number, level = 0.8): ShareEstimate {
  const counted = { infested, examined, level };
  if (examined === 0) return { ...counted, share: Number.NaN, low: 0, high: 1 };
  const oneSided = infested === 0 || infested === examined;
  const tail = oneSided ? 1 - level : (1 - level) / 2;
  const quantile = (p: number) => betaQuantile(p, infested + 0.5, examined - infested + 0.5);
  return {
    ...counted,
    share: infested / examined,
    low: infested === 0 ? 0 : quantile(tail),
    high: infested === examined ? 1 : quantile(1 - tail),
  };
}

/** Units for a share known to precision D (standard error over share): n = (1 − p)/(p·D²). Not rounded. */
export function shareSampleSize(share: number, precision: number): number {
  return (1 - share) / (share * precision ** 2);
}

/** Mean insects per unit behind a share of infested units, when counts are NB with dispersion k: k·((1 − p)^(−1/k) − 1). */
export function meanFromShare(share: number, k: number): number {
  return k === Infinity ? -Math.log1p(-share) : k * Math.expm1(-Math.log1p(-share) / k);
}

/** Share of units with any insect at a mean per unit: 1 − (1 + m/k)^(−k). */
export function shareFromMean(mean: number, k: number): number {
  return k === Infinity ? -Math.expm1(-mean) : -Math.expm1(-k * Math.log1p(mean / k));
}
