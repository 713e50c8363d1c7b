import { addDays, type Day, day, formatDay, type IsoDay } from '@duskwatch/core';
import { words } from '../words/index.ts';

const formatter = (options: Intl.DateTimeFormatOptions) => new Intl.DateTimeFormat(words.locale, { timeZone: 'UTC', ...options });
const SHORT = formatter({ weekday: 'short', day: 'numeric', month: 'short' });
const MIDDLE = formatter({ weekday: 'short', day: 'numeric', month: 'long' });
const LONG = formatter({ weekday: 'long', day: 'numeric', month: 'long', year: 'numeric' });
const MONTH = formatter({ month: 'short' });

// Composed from parts: the order and commas of `format` change between releases of the browser.
function compose(format: Intl.DateTimeFormat, date: IsoDay): string {
  const parts = format.formatToParts(new Date(`${date}T00:00:00Z`));
  const part = (type: Intl.DateTimeFormatPartTypes) => parts.find((each) => each.type === type)?.value;
  return [part('weekday'), part('day'), part('month'), part('year')].filter(Boolean).join(' ');
}

/** `Sun 13 Jul`, for cells and tables. */
export const shortDay = (date: IsoDay) => compose(SHORT, date);
/** `Sun 13 July`, for sentences. */
export const dayText = (date: IsoDay) => compose(MIDDLE, date);
/** As `dayText`, with the year when it is not that of the day the page is read on. */
export const dayTextFrom = (date: IsoDay, on: IsoDay) =>
  date.slice(0, 4) === on.slice(0, 4) ? dayText(date) : `${dayText(date)} ${date.slice(0, 4)}`;
/** `Sunday 13 July 2025`, for headings. */
export const longDay = (date: IsoDay) => compose(LONG, date);
/** `Jul`, for axes. */
export const monthText = (date: IsoDay) => MONTH.format(new Date(`${date}T00:00:00Z`));

/** `Sun 13 – Wed 16 Jul`; one day when both are the same. */
export function daySpan(from: IsoDay, to: IsoDay): string {
  if (from === to) return shortDay(from);
  const start = from.slice(0, 7) === to.slice(0, 7) ? shortDay(from).split(' ').slice(0, 2).join(' ') : shortDay(from);
  return `${start} – ${shortDay(to)}`;
}

export const shiftDay = (date: IsoDay, days: number): IsoDay => formatDay(addDays(day(date), days));
export const isoOf = (value: number): IsoDay => formatDay(value as Day);
