import type { IsoDay } from '../base/day.ts';
import type { SkipRecord } from '../records/schema.ts';

/** What a skip still says after the last visit to its trap; null once somebody was there, also on the same day. */
export const standingSkip = (skip: SkipRecord | undefined, lastVisitOn: IsoDay | null) =>
  skip && (lastVisitOn === null || skip.skippedOn > lastVisitOn) ? { on: skip.skippedOn, reason: skip.reason } : null;
