/** Days as people write them: what a text could mean, and what to say when it is not `YYYY-MM-DD`. */
import { dayOf, formatDay, type IsoDay, parseDay } from '../base/day.ts';

export const DATE_ORDERS = ['ymd', 'dmy', 'mdy'] as const;
export type DateOrder = (typeof DATE_ORDERS)[number];

const NUMERIC = /^(\d{1,4})([/.-])(\d{1,2})\2(\d{1,4})\.?$/;
const SPREADSHEET_DAY = /^[34]\d{4}$/;

/** Days that a numeric date such as `7/12/2025` may stand for, by the order of its parts. Two-digit years are 20xx. */
export function dayReadings(written: string): Partial<Record<DateOrder, IsoDay>> {
  const match = NUMERIC.exec(written.trim());
  if (!match) return {};
  const [first, middle, last] = [match[1]!, match[3]!, match[4]!];
  if (first.length === 4) return keep({ ymd: isoOf(first, middle, last) });
  if (first.length > 2 || last.length === 1 || last.length === 3) return {};
  return keep({ dmy: isoOf(last, middle, first), mdy: isoOf(last, first, middle) });
}

function isoOf(year: string, month: string, date: string): IsoDay | null {
  const text = `${year.length === 2 ? `20${year}` : year}-${month.padStart(2, '0')}-${date.padStart(2, '0')}`;
  return parseDay(text) === null ? null : text;
}

function keep(readings: Partial<Record<DateOrder, IsoDay | null>>): Partial<Record<DateOrder, IsoDay>> {
  return Object.fromEntries(Object.entries(readings).filter(([, day]) => day !== null));
}

/** What a cell that should hold `YYYY-MM-DD` and does not should hold instead; `meant` is null for a day that does not exist. */
export function explainDay(written: string): { expected: string; fix: string; meant: readonly string[] | null } {
  const expected = 'a calendar day as YYYY-MM-DD';
  const text = written.trim();
  const iso = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (iso) return { expected: `a day that exists; ${monthLength(iso[1]!, iso[2]!)}`, fix: 'Correct the day.', meant: null };
  const readings = dayReadings(text);
  const days = [...new Set(Object.values(readings))];
  if (days.length === 1) return { expected, fix: `Write ${days[0]}.`, meant: days };
  if (days.length === 2) {
    const fix = `Write ${readings.dmy} if the day comes first, or ${readings.mdy} if the month comes first.`;
    return { expected, fix, meant: days };
  }
  const withTime = /^(\d{4}-\d{2}-\d{2})[T ]/.exec(text);
  if (withTime && parseDay(withTime[1]!) !== null)
    return { expected, fix: `Leave the time out: write ${withTime[1]}.`, meant: [withTime[1]!] };
  if (SPREADSHEET_DAY.test(text)) {
    const day = spreadsheetDay(Number(text));
    return { expected, fix: `This looks like a spreadsheet's day number: write ${day}.`, meant: [day] };
  }
  return { expected, fix: 'Write the year, month and day in figures, for example 2025-07-12.', meant: ['2025-07-12'] };
}

function monthLength(year: string, month: string): string {
  const [y, m] = [Number(year), Number(month)];
  if (m < 1 || m > 12) return 'months run from 01 to 12';
  return `${year}-${month} has ${dayOf(y, m + 1, 1) - dayOf(y, m, 1)} days`;
}

/** Spreadsheets number days from 1899-12-30 (ECMA-376 part 1, 18.17.4.1, in the 1900 date system past February 1900). */
export function spreadsheetDay(serial: number): IsoDay {
  const epoch = dayOf(1899, 12, 30);
  return formatDay((epoch + Math.floor(serial)) as typeof epoch);
}
