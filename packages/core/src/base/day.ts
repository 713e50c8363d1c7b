/**
 * Calendar days as whole numbers.
 *
 * A trap is checked on a day in the field's own zone, never at an instant, so the core counts days since
 * 1970-01-01 and leaves clocks to the edges. Records keep ISO 8601 text; sums and loops use the number.
 */
declare const dayBrand: unique symbol;

/** Days since 1970-01-01, proleptic Gregorian. */
export type Day = number & { readonly [dayBrand]: 'Day' };

/** `YYYY-MM-DD`. */
export type IsoDay = string;

const MS_PER_DAY = 86_400_000;
const ISO_DAY = /^(\d{4})-(\d{2})-(\d{2})$/;

/** Both ways between a day and its text, once each: a program asks for the same few thousand days again and again. */
const daysByText = new Map<IsoDay, Day>();
const textsByDay = new Map<Day, IsoDay>();

/** The day an ISO text names, or null when it is not `YYYY-MM-DD` or no such day exists (2025-02-29). */
export function parseDay(text: string): Day | null {
  const known = daysByText.get(text);
  if (known !== undefined) return known;
  const match = ISO_DAY.exec(text);
  if (!match) return null;
  const parsed = dayOf(Number(match[1]), Number(match[2]), Number(match[3]));
  if (formatDay(parsed) !== text) return null;
  daysByText.set(text, parsed);
  return parsed;
}

/** As `parseDay`, for text already validated; throws on anything else, because that is a bug. */
export function day(text: IsoDay): Day {
  const parsed = parseDay(text);
  if (parsed === null) throw new Error(`not a calendar day: ${text}`);
  return parsed;
}

/** The day for a year, a month from 1 and a date from 1. */
export function dayOf(year: number, month: number, date: number): Day {
  return (Date.UTC(year, month - 1, date) / MS_PER_DAY) as Day;
}

export function formatDay(value: Day): IsoDay {
  const known = textsByDay.get(value);
  if (known !== undefined) return known;
  const text = new Date(value * MS_PER_DAY).toISOString().slice(0, 10);
  textsByDay.set(value, text);
  return text;
}

export function addDays(value: Day, days: number): Day {
  return (value + days) as Day;
}

/** Nights (or days) from one day to another: negative when `to` comes first. */
export function daysBetween(from: Day, to: Day): number {
  return to - from;
}

export function yearOf(value: Day): number {
  return partsOf(value).year;
}

/** Month from 1, date from 1. */
export function partsOf(value: Day): { readonly year: number; readonly month: number; readonly date: number } {
  const instant = new Date(value * MS_PER_DAY);
  return { year: instant.getUTCFullYear(), month: instant.getUTCMonth() + 1, date: instant.getUTCDate() };
}

/** 1 January of the year that holds `value`. */
export function startOfYear(value: Day): Day {
  return dayOf(yearOf(value), 1, 1);
}
