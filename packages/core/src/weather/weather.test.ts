import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, day, formatDay } from '../base/day.ts';
import type { WeatherRecord } from '../records/schema.ts';
import { bridgeGaps, findGaps } from './gaps.ts';
import { seriesFromRecords, truncateSeries } from './series.ts';
import type { DailyExtremes } from './types.ts';

const record = (date: string, tminC: number | null, tmaxC: number | null, sourceId = 'gauge'): WeatherRecord => ({
  sourceId,
  date,
  tminC,
  tmaxC,
  precipitationMm: null,
});
const start = day('2024-02-27');
const seriesOf = (tmin: number[]): DailyExtremes => ({
  sourceId: 'gauge',
  start,
  tminC: Float64Array.from(tmin),
  tmaxC: Float64Array.from(tmin, (t) => t + 10),
});
const iso = (gaps: readonly { from: number; to: number }[]) =>
  gaps.map(({ from, to }) => [formatDay(from as typeof start), formatDay(to as typeof start)]);
const _ = Number.NaN;

describe('a series from records', () => {
  it('puts days in order and sources apart, and leaves a day without a record missing', () => {
    const all = seriesFromRecords([
      record('2024-03-01', 4, 12),
      record('2024-02-28', 2, 10),
      record('2024-02-28', 5, 9, 'ridge'),
    ]);
    expect([...all.keys()]).toEqual(['gauge', 'ridge']);
    const gauge = all.get('gauge')!;
    expect(formatDay(gauge.start)).toBe('2024-02-28');
    expect([...gauge.tminC]).toEqual([2, _, 4]); // 29 February 2024 is in between
    expect([...all.get('ridge')!.tmaxC]).toEqual([9]);
  });

  it('holds a half-told day, and one with its minimum above its maximum, for missing', () => {
    const gauge = seriesFromRecords([
      record('2024-03-01', 4, null),
      record('2024-03-02', null, 12),
      record('2024-03-03', 12, 4),
      record('2024-03-04', 4, 4),
    ]).get('gauge')!;
    expect([...gauge.tminC]).toEqual([_, _, _, 4]);
    expect([...gauge.tmaxC]).toEqual([_, _, _, 4]);
  });

  it('is nothing from no records', () => {
    expect(seriesFromRecords([]).size).toBe(0);
  });
});

describe('what was known on a day', () => {
  it('is the series through that day', () => {
    const series = seriesOf([1, 2, 3]);
    expect([...truncateSeries(series, addDays(start, 1)).tminC]).toEqual([1, 2]);
    expect([...truncateSeries(series, addDays(start, 30)).tmaxC]).toEqual([11, 12, 13]);
    expect(truncateSeries(series, addDays(start, -1)).tminC).toHaveLength(0);
  });
});

describe('gaps', () => {
  it('are runs of missing days, and all days outside the data', () => {
    const gaps = findGaps(seriesOf([1, _, _, 4, _, 6]), addDays(start, -2), addDays(start, 7));
    expect(iso(gaps)).toEqual([
      ['2024-02-25', '2024-02-26'],
      ['2024-02-28', '2024-02-29'],
      ['2024-03-02', '2024-03-02'],
      ['2024-03-04', '2024-03-05'],
    ]);
  });

  it('are bridged by straight lines for minimum and maximum apart, when short enough', () => {
    const series: DailyExtremes = { ...seriesOf([1, _, _, 4]), tmaxC: Float64Array.of(20, _, _, 11) };
    const { series: whole, bridged } = bridgeGaps(series, 2);
    expect([...whole.tminC]).toEqual([1, 2, 3, 4]);
    expect([...whole.tmaxC]).toEqual([20, 17, 14, 11]);
    expect(bridged.map(formatDay)).toEqual(['2024-02-28', '2024-02-29']);
    expect([...series.tminC]).toEqual([1, _, _, 4]);
    expect(bridgeGaps(series, 1)).toEqual({ series, bridged: [] });
  });

  it('at either end of the data are never bridged: there is no day beyond to aim at', () => {
    const series = seriesOf([_, 2, 3, _]);
    expect(bridgeGaps(series, 3)).toEqual({ series, bridged: [] });
    expect(bridgeGaps(seriesOf([_, _]), 3).bridged).toEqual([]);
    expect(bridgeGaps(seriesOf([]), 3).bridged).toEqual([]);
  });

  it('are either bridged whole or left whole, and known days never change', () => {
    const days = fc.array(fc.option(fc.integer({ min: -20, max: 30 }), { nil: _ }), { minLength: 1, maxLength: 40 });
    fc.assert(
      fc.property(days, fc.integer({ min: 0, max: 5 }), (tmin, maxDays) => {
        const series = seriesOf(tmin);
        const end = addDays(start, tmin.length - 1);
        const { series: after, bridged } = bridgeGaps(series, maxDays);
        const left = findGaps(after, start, end);
        const short = findGaps(series, start, end).filter(
          (gap) => gap.from > start && gap.to < end && gap.to - gap.from < maxDays,
        );
        expect(bridged).toEqual(short.flatMap((gap) => Array.from({ length: gap.to - gap.from + 1 }, (__, i) => gap.from + i)));
        expect(left.length + short.length).toBe(findGaps(series, start, end).length);
        tmin.forEach((t, i) => {
          if (!Number.isNaN(t)) expect(after.tminC[i]).toBe(t);
        });
      }),
    );
  });
});
