/** Days in sentences; apart from the sentences, so that a phone loads no more than these. */
import type { Advice } from '../advice/types.ts';
import { day, daysBetween, type IsoDay } from '../base/day.ts';
import type { Language } from '../people/person.ts';
import type { DayOrder } from './types.ts';

/** How a day is written in a sentence. */
export type Dates = (day: IsoDay) => string;

function datesIn(weekdays: string, days: string): Dates {
  const weekday = new Intl.DateTimeFormat(weekdays, { weekday: 'short', timeZone: 'UTC' });
  const dayMonth = new Intl.DateTimeFormat(days, { day: 'numeric', month: 'long', timeZone: 'UTC' });
  return (text) => `${weekday.format(day(text) * 86_400_000)} ${dayMonth.format(day(text) * 86_400_000)}`;
}

/** `Sun 13 July`. */
export const dayFirst = datesIn('en-GB', 'en-GB');
/** `Sun July 13`. */
export const monthFirst = datesIn('en-GB', 'en-US');
/** `dom 13 de julio`. */
export const spanishDay = datesIn('es', 'es');

/** Spanish knows one order. */
export const dayInWords = (language: Language, order: DayOrder): Dates =>
  language === 'es' ? spanishDay : order === 'month-day' ? monthFirst : dayFirst;

/** Days by which the date of a verb has passed; 0 while it has not. */
export const daysLate = ({ by, dueSince }: Pick<Advice, 'by' | 'dueSince'>): number =>
  by === null || dueSince === null ? 0 : daysBetween(day(dueSince), day(by));
