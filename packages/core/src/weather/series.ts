import type { WeatherRecord } from '../records/schema.ts';
import { type Day, day } from '../units/day.ts';
import type { DailyExtremes } from './types.ts';

/**
 * One series of daily extremes per weather source, from records in any order.
 *
 * A day without a record is missing. So is a half-told day (only one extreme) and a day whose minimum lies above its
 * maximum: neither says what the temperature did between.
 */
export function seriesFromRecords(records: readonly WeatherRecord[]): Map<string, DailyExtremes> {
  const bySource = new Map<string, { day: Day; record: WeatherRecord }[]>();
  for (const record of records) {
    const told = { day: day(record.date), record };
    const list = bySource.get(record.sourceId);
    if (list) list.push(told);
    else bySource.set(record.sourceId, [told]);
  }
  return new Map([...bySource].map(([sourceId, list]) => [sourceId, seriesOf(sourceId, list)]));
}

function seriesOf(sourceId: string, list: readonly { day: Day; record: WeatherRecord }[]): DailyExtremes {
  let start = list[0]!.day;
  let end = start;
  for (const told of list) {
    if (told.day < start) start = told.day;
    if (told.day > end) end = told.day;
  }
  const tminC = new Float64Array(end - start + 1).fill(Number.NaN);
  const tmaxC = new Float64Array(end - start + 1).fill(Number.NaN);
  for (const { day: on, record } of list) {
    if (record.tminC === null || record.tmaxC === null || record.tminC > record.tmaxC) continue;
    tminC[on - start] = record.tminC;
    tmaxC[on - start] = record.tmaxC;
  }
  return { sourceId, start, tminC, tmaxC };
}

/** The series as it was known at the end of `through`: later days are cut off. Shares memory with `series`. */
export function truncateSeries(series: DailyExtremes, through: Day): DailyExtremes {
  const days = Math.max(0, through - series.start + 1);
  return { ...series, tminC: series.tminC.subarray(0, days), tmaxC: series.tmaxC.subarray(0, days) };
}

/** Whether both extremes of the day at `index` are known and in order; false outside the series. */
export function isKnown(series: DailyExtremes, index: number): boolean {
  return series.tminC[index]! <= series.tmaxC[index]!;
}
