import { type Day, day } from '../base/day.ts';
import type { WeatherRecord } from '../records/schema.ts';
import type { DailyExtremes } from './types.ts';

/**
 * One series of daily extremes per weather source, from records in any order.
 *
 * A day without a record is missing. So is a half-told day (only one extreme) and a day whose minimum lies above its
 * maximum: neither says what the temperature did between. A day that somebody forecast was not measured, and is left out.
 */
export function seriesFromRecords(records: readonly WeatherRecord[]): Map<string, DailyExtremes> {
  return bySource(records.filter((record) => !isForecast(record)));
}

/** The same of the days that somebody forecast by `on`: the weather to come as it was thought to be on that day. */
export function forecastsFromRecords(records: readonly WeatherRecord[], on: Day): Map<string, DailyExtremes> {
  return bySource(records.filter((record) => isForecast(record) && day(record.forecastMadeOn!) <= on));
}

/** True for a day whose extremes were forecast and have not been replaced by measured ones. */
export const isForecast = (record: WeatherRecord): boolean => (record.forecastMadeOn ?? null) !== null;

function bySource(records: readonly WeatherRecord[]): Map<string, DailyExtremes> {
  const lists = new Map<string, { day: Day; record: WeatherRecord }[]>();
  for (const record of records) {
    const told = { day: day(record.date), record };
    const list = lists.get(record.sourceId);
    if (list) list.push(told);
    else lists.set(record.sourceId, [told]);
  }
  return new Map([...lists].map(([sourceId, list]) => [sourceId, seriesOf(sourceId, list)]));
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
  const { tminC, tmaxC, filled } = series;
  return {
    ...series,
    tminC: tminC.subarray(0, days),
    tmaxC: tmaxC.subarray(0, days),
    ...(filled && { filled: filled.subarray(0, days) }),
  };
}

/** Whether both extremes of the day at `index` are known and in order; false outside the series. */
export function isKnown(series: DailyExtremes, index: number): boolean {
  return series.tminC[index]! <= series.tmaxC[index]!;
}
