/**
 * Days as sheets write them: `2025-07-12`, `12/07/25`, `7/12`, `12-Jul`, `Sat, July 12`, `12 de julio`, `week ending 7/12`,
 * `7/5–7/12`, `2025-07-12 08:14`. What a cell leaves open (which comes first, the year, the month) is kept open.
 */
import { type DateOrder, formatDay, type IsoDay, parseDay, spreadsheetDay } from '@duskwatch/core';
import type { SheetCell } from '../grid.ts';

/** A day as written. Either the whole day, or parts: `first` and `second` in an order that may be open, or a named month. */
export type WrittenDay =
  | { readonly is: 'day'; readonly day: IsoDay }
  | { readonly is: 'numeric'; readonly first: number; readonly second: number; readonly year: number | null }
  | { readonly is: 'named'; readonly date: number; readonly month: number; readonly year: number | null };

/** What the rest of the sheet says of a day. */
export interface DayStyle {
  readonly order: DateOrder | null;
  /** For days written without a year. */
  readonly year: number | null;
  readonly shift: number;
}

const MONTHS: readonly (readonly string[])[] = [
  ['january', 'jan', 'enero', 'ene'],
  ['february', 'feb', 'febrero'],
  ['march', 'mar', 'marzo'],
  ['april', 'apr', 'abril', 'abr'],
  ['may', 'mayo'],
  ['june', 'jun', 'junio'],
  ['july', 'jul', 'julio'],
  ['august', 'aug', 'agosto', 'ago'],
  ['september', 'sep', 'sept', 'septiembre', 'setiembre', 'set'],
  ['october', 'oct', 'octubre'],
  ['november', 'nov', 'noviembre'],
  ['december', 'dec', 'diciembre', 'dic'],
];
const monthNumbers = new Map(MONTHS.flatMap((names, index) => names.map((name) => [name, index + 1] as const)));

const WEEKDAY =
  /^(mon(day)?|tue(s|sday)?|wed(nesday)?|thu(r|rs|rsday)?|fri(day)?|sat(urday)?|sun(day)?|lunes|martes|mi[eé]rcoles|jueves|viernes|s[aá]bado|domingo|lun|mi[eé]|jue|vie|s[aá]b|dom)\b\.?,?\s+/i;
const WEEK =
  /^(?:(?:week|wk|w)\s*[/.]?\s*(?:end(?:ing|ed)?|e|of|beginning|b|starting|start)?|semana\s+(?:del|que\s+termina(?:\s+el)?))\b[\s.:]*/i;
const WEEK_STARTS = /^(?:week|wk|w)\s*[/.]?\s*(?:of|beginning|b|starting|start)\b|^semana\s+del\b/i;
const TIME = /(?<=\d)[T\s,]+\d{1,2}:\d{2}(:\d{2}(\.\d+)?)?\s*([ap]\.?\s?m\.?)?\s*(z|[+-]\d{2}:?\d{2}|utc|gmt)?$/i;
const RANGE = /^.*\d\s*(?:–|—|\bto\b|\bal?\b| - |(?<=\/\d{1,2})-(?=\d{1,2}\/))\s*(?=\S*\d)/i;
const NUMERIC = /^(\d{1,2})([/.-])(\d{1,2})(?:\2(\d{4}|\d{2}))?\.?$/;
const YEAR_FIRST = /^(\d{4})([/.-])(\d{1,2})\2(\d{1,2})$/;
const COMPACT = /^((?:19|20)\d{2})(0[1-9]|1[0-2])([0-2]\d|3[01])$/;
const DATE_MONTH =
  /^(\d{1,2})(?:st|nd|rd|th)?[\s./-]*(?:de\s+)?(\p{L}{3,10})\.?(?:[\s,./-]*(?:de\s+|del\s+)?'?(\d{4}|\d{2}))?$/iu;
const MONTH_DATE = /^(\p{L}{3,10})\.?[\s./-]*(\d{1,2})(?:st|nd|rd|th)?(?:[\s,/-]+'?(\d{4}|\d{2}))?$/iu;
const MONTH_ALONE = /^(\p{L}{3,10})\.?(?:[\s,./-]*(?:de\s+|del\s+)?'?(\d{4}|\d{2}))?$/iu;

const withCentury = (year: string | undefined): number | null =>
  year === undefined ? null : year.length === 2 ? 2000 + Number(year) : Number(year);

const monthNamed = (name: string): number | null => monthNumbers.get(name.toLowerCase()) ?? null;

const read = new Map<string, WrittenDay | null>();
/** Sheets repeat their days; past this many different texts the file is no sheet of days. */
const MOST_KEPT = 50_000;

/** The day that a cell writes; null where it writes none. A bare number is none. */
export function writtenDay(cell: SheetCell): WrittenDay | null {
  if (cell.day !== null) return { is: 'day', day: cell.day };
  const { text } = cell;
  if (text.length < 3 || text.length > 60 || !/\d/.test(text)) return null;
  const known = read.get(text);
  if (known !== undefined) return known;
  if (read.size > MOST_KEPT) read.clear();
  const day = readDay(text);
  read.set(text, day);
  return day;
}

function readDay(text: string): WrittenDay | null {
  const bare = text.replace(WEEK, '').replace(TIME, '').replace(RANGE, '').replace(WEEKDAY, '').trim();
  const yearFirst = YEAR_FIRST.exec(bare) ?? COMPACT.exec(bare);
  if (yearFirst) {
    const [month, date] = yearFirst.length === 5 ? [yearFirst[3]!, yearFirst[4]!] : [yearFirst[2]!, yearFirst[3]!];
    const day = isoDay(Number(yearFirst[1]), Number(month), Number(date));
    return day === null ? null : { is: 'day', day };
  }
  const numeric = NUMERIC.exec(bare);
  if (numeric) {
    const [first, second, year] = [Number(numeric[1]), Number(numeric[3]), withCentury(numeric[4])];
    // `3.5` and `2-1` are figures before they are days.
    if (year === null && numeric[2] !== '/') return null;
    const exists = ORDERS.some((order) => partsIn(order, first, second, year ?? LEAP_YEAR) !== null);
    return exists ? { is: 'numeric', first, second, year } : null;
  }
  const dateFirst = DATE_MONTH.exec(bare);
  if (dateFirst) return named(dateFirst[1]!, dateFirst[2]!, dateFirst[3]);
  const monthFirst = MONTH_DATE.exec(bare);
  return monthFirst ? named(monthFirst[2]!, monthFirst[1]!, monthFirst[3]) : null;
}

/** So that 29 February without a year is seen as a day. */
const LEAP_YEAR = 2024;
const ORDERS = ['dmy', 'mdy'] as const;

function named(date: string, name: string, written: string | undefined): WrittenDay | null {
  const month = monthNamed(name);
  const year = withCentury(written);
  if (month === null || isoDay(year ?? LEAP_YEAR, month, Number(date)) === null) return null;
  return { is: 'named', date: Number(date), month, year };
}

function isoDay(year: number, month: number, date: number): IsoDay | null {
  const text = `${year}-${String(month).padStart(2, '0')}-${String(date).padStart(2, '0')}`;
  return parseDay(text) === null ? null : text;
}

const partsIn = (order: DateOrder, first: number, second: number, year: number): IsoDay | null =>
  order === 'mdy' ? isoDay(year, first, second) : isoDay(year, second, first);

/** The orders in which a numeric day exists; empty where the order does not matter. */
export function ordersOf(day: WrittenDay): readonly DateOrder[] {
  if (day.is !== 'numeric') return [];
  return ORDERS.filter((order) => partsIn(order, day.first, day.second, day.year ?? LEAP_YEAR) !== null);
}

export const lacksYear = (day: WrittenDay): boolean => day.is !== 'day' && day.year === null;

/** The day meant, in the style of the sheet; null while something of it is open. */
export function dayMeant(day: WrittenDay, style: DayStyle): IsoDay | null {
  const key = `${style.order} ${style.year} ${style.shift}`;
  const known = meant.get(day) ?? new Map<string, IsoDay | null>();
  meant.set(day, known);
  if (!known.has(key)) known.set(key, shiftedDay(day, style));
  return known.get(key) ?? null;
}

/** Days as they are written are the same objects over and over; each is worked out once in a style. */
const meant = new WeakMap<WrittenDay, Map<string, IsoDay | null>>();

function shiftedDay(day: WrittenDay, { order, year, shift }: DayStyle): IsoDay | null {
  const unmoved = unshifted(day, order, year);
  if (unmoved === null || shift === 0) return unmoved;
  const number = parseDay(unmoved)!;
  return formatDay((number + shift) as typeof number);
}

function unshifted(day: WrittenDay, order: DateOrder | null, yearOfSheet: number | null): IsoDay | null {
  if (day.is === 'day') return day.day;
  const year = day.year ?? yearOfSheet;
  if (year === null) return null;
  if (day.is === 'named') return isoDay(year, day.month, day.date);
  const fitting = ordersOf(day);
  if (fitting.length === 1 && order === null) return null;
  return order === null ? null : partsIn(order, day.first, day.second, year);
}

/** A month that heads days of the month: `July`, `julio 2025`, `Jul-25`. */
export function writtenMonth({ text, day }: SheetCell): { readonly month: number; readonly year: number | null } | null {
  if (day !== null) return null;
  const match = MONTH_ALONE.exec(text.trim());
  const month = match === null ? null : monthNamed(match[1]!);
  return month === null ? null : { month, year: withCentury(match![2]) };
}

/** A day of the month alone, to be read with the month above it. */
export const dateAlone = ({ text }: SheetCell): number | null =>
  /^([1-9]|[12]\d|3[01])(st|nd|rd|th)?$/.test(text) ? Number.parseInt(text, 10) : null;

/** The first years and the last that a spreadsheet's day number is taken for: 2000 to 2049. */
const SERIALS = { from: 36_526, to: 54_788 };

/** The day of a spreadsheet's day number, as a cell that lost its format shows it; null for any other figure. */
export function serialDay({ text }: SheetCell): IsoDay | null {
  if (!/^\d{5}(\.\d+)?$/.test(text)) return null;
  const serial = Number(text);
  return serial >= SERIALS.from && serial < SERIALS.to + 1 ? spreadsheetDay(serial) : null;
}

/** Whether a text speaks of a week by its first day or by its last; null where it speaks of no week. */
export function weekIn(text: string): 'starts' | 'ends' | null {
  if (/\b(week|wk)\b|\bw\s*[/.]\s*[eb]\b|\bsemana\b/i.test(text) === false) return null;
  return WEEK_STARTS.test(text.trim()) || /\b(begin|start)/i.test(text) ? 'starts' : 'ends';
}

/** The one year that a text names, or null. */
export function yearIn(text: string): number | null {
  const years = new Set(text.match(/(?<![\d.,/-])(19[5-9]\d|20\d{2})(?![\d.,]|[/-]\d{1,2})/g) ?? []);
  return years.size === 1 ? Number([...years][0]) : null;
}
