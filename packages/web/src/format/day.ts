import { addDays, type Day, day, dayInWords, formatDay, type IsoDay } from '@duskwatch/core';
import { dayOrder, language, locale } from '../text/language.ts';

const formatter = (options: Intl.DateTimeFormatOptions) => new Intl.DateTimeFormat(locale, { timeZone: 'UTC', ...options });
const SHORT = formatter({ weekday: 'short', day: 'numeric', month: 'short' });
const LONG = formatter({ weekday: 'long', day: 'numeric', month: 'long', year: 'numeric' });
const MONTH = formatter({ month: 'short' });

type Parts = Readonly<Record<'weekday' | 'day' | 'month' | 'year', string>>;

// Composed from parts: the order and commas of `format` change between releases of the browser.
const partsOf = (format: Intl.DateTimeFormat, date: IsoDay) =>
  Object.fromEntries(format.formatToParts(new Date(`${date}T00:00:00Z`)).map(({ type, value }) => [type, value])) as Parts;

/** `Sun 13 Jul`, `Sun Jul 13` or `dom 13 jul`, for cells and tables. */
export function shortDay(date: IsoDay): string {
  const { weekday, day, month } = partsOf(SHORT, date);
  return dayOrder === 'month-day' ? `${weekday} ${month} ${day}` : `${weekday} ${day} ${month}`;
}

/** `Sun`, `dom`: where the day is near enough to need no more. */
export const weekdayOf = (date: IsoDay): string => partsOf(SHORT, date).weekday;

/** `13 Jul` or `Jul 13`, where the weekday would be another year's. */
export function shortDate(date: IsoDay): string {
  const { day, month } = partsOf(SHORT, date);
  return dayOrder === 'month-day' ? `${month} ${day}` : `${day} ${month}`;
}

/** `Sun 13 July`, `Sun July 13` or `dom 13 de julio`, for sentences; the core's own. */
export const dayText = dayInWords(language, dayOrder);
/** As `dayText`, with the year when it is not that of the day the page is read on. */
export const dayTextFrom = (date: IsoDay, on: IsoDay) =>
  date.slice(0, 4) === on.slice(0, 4) ? dayText(date) : `${dayText(date)}${OF_YEAR}${date.slice(0, 4)}`;

const OF_YEAR = language === 'es' ? ' de ' : ' ';

/** `Sunday 13 July 2025`, `Sunday, July 13, 2025` or `domingo 13 de julio de 2025`, for headings. */
export function longDay(date: IsoDay): string {
  const { weekday, day, month, year } = partsOf(LONG, date);
  if (language === 'es') return `${weekday} ${day} de ${month} de ${year}`;
  return dayOrder === 'month-day' ? `${weekday}, ${month} ${day}, ${year}` : `${weekday} ${day} ${month} ${year}`;
}

/** `Jul`, for axes. */
export const monthText = (date: IsoDay) => MONTH.format(new Date(`${date}T00:00:00Z`));

/** `Sun 13 – Wed 16 Jul`, or `Sun Jul 13 – Wed 16`; one day when both are the same. */
export function daySpan(from: IsoDay, to: IsoDay): string {
  if (from === to) return shortDay(from);
  if (from.slice(0, 7) !== to.slice(0, 7)) return `${shortDay(from)} – ${shortDay(to)}`;
  const inMonth = (date: IsoDay) => `${partsOf(SHORT, date).weekday} ${partsOf(SHORT, date).day}`;
  return dayOrder === 'month-day' ? `${shortDay(from)} – ${inMonth(to)}` : `${inMonth(from)} – ${shortDay(to)}`;
}

export const shiftDay = (date: IsoDay, days: number): IsoDay => formatDay(addDays(day(date), days));
export const isoOf = (value: number): IsoDay => formatDay(value as Day);
