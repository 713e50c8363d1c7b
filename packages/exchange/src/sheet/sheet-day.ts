/** Days as sheets head their columns: `2025-07-12`, `12/07/2025`, `7/12`, `12-Jul`, `July 12, 2025`. */
import { type DateOrder, dayReadings, type IsoDay, parseDay } from '@duskwatch/core';
import type { SheetCell } from './grid.ts';

export interface DayStyle {
  readonly order: DateOrder | null;
  /** For days written without a year. */
  readonly year: number | null;
}

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
const NO_YEAR = /^(\d{1,2})([/-])(\d{1,2})$/;
const DATE_MONTH = /^(\d{1,2})[\s.-]*([a-z]{3,9})\.?[\s,.-]*(\d{4}|\d{2})?$/i;
const MONTH_DATE = /^([a-z]{3,9})\.?[\s-]*(\d{1,2})(?:[\s,]+(\d{4}))?$/i;

/** Which years and orders would have to be known to read the cell; null when it is no day at all. */
export interface DayForm {
  readonly orders: readonly DateOrder[];
  readonly needsYear: boolean;
}

/** A leap year, so that 29 February without a year is seen as a day. */
const ANY_YEAR = 2024;

export function dayForm(cell: SheetCell): DayForm | null {
  if (cell.day !== null) return { orders: [], needsYear: false };
  if (parseDay(cell.text) !== null) return { orders: [], needsYear: false };
  const named = monthName(cell.text, ANY_YEAR);
  if (named !== null) return { orders: [], needsYear: named.usedYear };
  const needsYear = NO_YEAR.test(cell.text);
  const readings = dayReadings(needsYear ? `${cell.text}${cell.text.includes('/') ? '/' : '-'}${ANY_YEAR}` : cell.text);
  const orders = Object.keys(readings) as DateOrder[];
  return orders.length === 0 ? null : { orders, needsYear };
}

/** The day a cell names in the given style, or null. */
export function sheetDay(cell: SheetCell, style: DayStyle): IsoDay | null {
  if (cell.day !== null) return cell.day;
  if (parseDay(cell.text) !== null) return cell.text;
  const named = monthName(cell.text, style.year);
  if (named !== null) return named.day;
  const shortForm = NO_YEAR.exec(cell.text);
  if (shortForm && style.year === null) return null;
  const readings = dayReadings(shortForm ? `${cell.text}${shortForm[2]}${style.year}` : cell.text);
  return readings.ymd ?? (style.order === null ? null : (readings[style.order] ?? null));
}

function monthName(text: string, year: number | null): { day: IsoDay | null; usedYear: boolean } | null {
  const dateFirst = DATE_MONTH.exec(text);
  const monthFirst = dateFirst === null ? MONTH_DATE.exec(text) : null;
  const [date, name, written] = dateFirst
    ? [dateFirst[1]!, dateFirst[2]!, dateFirst[3]]
    : monthFirst
      ? [monthFirst[2]!, monthFirst[1]!, monthFirst[3]]
      : [];
  const month = MONTHS.indexOf(name?.slice(0, 3).toLowerCase() ?? '');
  if (date === undefined || month === -1) return null;
  const fullYear = written?.length === 2 ? `20${written}` : (written ?? year);
  const iso = `${fullYear}-${String(month + 1).padStart(2, '0')}-${date.padStart(2, '0')}`;
  return { day: parseDay(iso) === null ? null : iso, usedYear: written === undefined };
}
