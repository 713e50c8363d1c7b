import type { IsoDay, SkipReason } from '@duskwatch/core';
import { shortDay } from '../../format/day.ts';
import { skippedWords as w } from '../../text/skipped.ts';

/** Why a trap was last passed by: `skipped Jul 12: gate locked`. */
export const skippedText = ({ on, reason }: { readonly on: IsoDay; readonly reason: SkipReason }): string =>
  w.said(shortDay(on), w.reasons[reason]);
