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

export interface ShareOptions {
  readonly level?: number;
  /** How many times wider than under independence the number infested scatters: as if so many times fewer were examined. */
  readonly designEffect?: number;
}

/**
 * Share of units infested, with Jeffreys' interval of equal tails. With none infested the interval begins at 0, with
 * all it ends at 1, and the other limit is one-sided.
 *
 * Source: Brown, Cai & DasGupta 2001, Statistical Science 16:101–133 (from memory).
 */
export function shareInfested(
  infested: number,
  examined: number,
  { level = 0.8, designEffect = 1 }: ShareOptions = {},
): ShareEstimate {
  const counted = { infested, examined, level };
  if (examined === 0) return { ...counted, share: Number.NaN, low: 0, high: 1 };
  const oneSided = infested === 0 || infested === examined;
  const tail = oneSided ? 1 - level : (1 - level) / 2;
  const quantile = (p: number) => betaQuantile(p, infested / designEffect + 0.5, (examined - infested) / designEffect + 0.5);
  return {
    ...counted,
    share: infested / examined,
    low: infested === 0 ? 0 : quantile(tail),
    high: infested === examined ? 1 : quantile(1 - tail),
  };
}
