import { type IsoDay, type SkipReason, skipReasonWords } from '@duskwatch/core';
import { shortDay } from '../../format/day.ts';
import { language } from '../../text/language.ts';
import { thisWeekWords } from '../../text/this-week.ts';

/** Why a trap was last passed by: `skipped Jul 12: gate locked`. */
export const skippedText = ({ on, reason }: { readonly on: IsoDay; readonly reason: SkipReason }): string =>
  thisWeekWords.skipped(shortDay(on), skipReasonWords[language][reason]);
