/** Long means of the months at a weather source, as its service publishes them, and the season that they draw. */
import { addDays, type Day, dayOf, partsOf, yearOf } from '../base/day.ts';
import type { NormalRecord } from '../records/schema.ts';
import { isKnown } from './series.ts';
import type { DailyExtremes } from './types.ts';

/** Mean daily extremes of each month, January first, in °C. */
export interface MonthlyNormals {
  readonly tminC: readonly number[];
  readonly tmaxC: readonly number[];
}

const MONTHS = 12;

/** The usual extremes of a day: straight lines from the middle of one month to that of the next. */
export function normalsOn(normals: MonthlyNormals, on: Day): { readonly tminC: number; readonly tmaxC: number } {
  const { month, date } = partsOf(on);
  const year = yearOf(on);
  const days = (m: number) => dayOf(m === MONTHS ? year + 1 : year, (m % MONTHS) + 1, 1) - dayOf(year, m, 1);
  const place = (date - 0.5) / days(month) - 0.5;
  const [from, to] = place < 0 ? [month - 2, month - 1] : [month - 1, month];
  const share = place < 0 ? place + 1 : place;
  const between = (means: readonly number[]) => means[(from + MONTHS) % MONTHS]! * (1 - share) + means[to % MONTHS]! * share;
  return { tminC: between(normals.tminC), tmaxC: between(normals.tmaxC) };
}

/** Means of the months of some years of a series; null where a month has no known day in them. */
export function monthlyMeans(series: DailyExtremes, ofYear: (year: number) => boolean): MonthlyNormals | null {
  const sums = Array.from({ length: MONTHS }, () => ({ days: 0, tminC: 0, tmaxC: 0 }));
  for (let i = 0; i < series.tminC.length; i++) {
    const { year, month } = partsOf(addDays(series.start, i));
    if (!ofYear(year) || !isKnown(series, i)) continue;
    const sum = sums[month - 1]!;
    sum.days++;
    sum.tminC += series.tminC[i]!;
    sum.tmaxC += series.tmaxC[i]!;
  }
  if (sums.some(({ days }) => days === 0)) return null;
  return { tminC: sums.map(({ days, tminC }) => tminC / days), tmaxC: sums.map(({ days, tmaxC }) => tmaxC / days) };
}

/** The normals of each source that has all twelve months; where one is missing, none are used. */
export function normalsFromRecords(records: readonly NormalRecord[]): Map<string, MonthlyNormals> {
  const bySource = new Map<string, NormalRecord[]>();
  for (const record of records) {
    const own = bySource.get(record.sourceId) ?? bySource.set(record.sourceId, new Array(MONTHS)).get(record.sourceId)!;
    own[record.month - 1] = record;
  }
  const whole = [...bySource].flatMap(([source, months]) => {
    const known = Array.from(months, (month) => month).filter((month) => month !== undefined && month.tminC <= month.tmaxC);
    const normals = { tminC: known.map(({ tminC }) => tminC), tmaxC: known.map(({ tmaxC }) => tmaxC) };
    return known.length === MONTHS ? [[source, normals] as const] : [];
  });
  return new Map(whole);
}
