import { dayOf, formatDay, type IsoDay } from '@duskwatch/core';

/** The calendar day of an instant where the reader is. */
export function localDay(instant: string): IsoDay {
  const at = new Date(instant);
  return formatDay(dayOf(at.getFullYear(), at.getMonth() + 1, at.getDate()));
}
