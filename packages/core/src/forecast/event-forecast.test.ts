import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, type Day, day, dayOf, formatDay, yearOf } from '../base/day.ts';
import { heatTrack } from '../heat/track.ts';
import type { HeatRule } from '../heat/types.ts';
import { truncateSeries } from '../weather/series.ts';
import type { DailyExtremes } from '../weather/types.ts';
import { chanceBy, forecastEvent } from './event-forecast.ts';
import { withForecast } from './own-forecast.ts';

const rule: HeatRule = { method: 'simple-average', cutoff: 'none', lower: 10, upper: null, unit: 'C' };

function sourceOf(from: Day, to: Day, heatOn: (on: Day) => number): DailyExtremes {
  const heats = Array.from({ length: to - from + 1 }, (_, i) => heatOn(addDays(from, i)));
  return {
    sourceId: 'gauge',
    start: from,
    tminC: Float64Array.from(heats, (heat) => heat + 5),
    tmaxC: Float64Array.from(heats, (heat) => heat + 15),
  };
}
/** Each year warm at its own steady pace; the last one is this year. */
const yearsAt = (paces: readonly number[]) => {
  const first = 2025 - paces.length;
  return sourceOf(dayOf(first, 1, 1), dayOf(2024, 12, 31), (on) => paces[yearOf(on) - first]!);
};
const START = day('2024-05-01');
const through = (series: DailyExtremes, on: Day) => heatTrack(rule, truncateSeries(series, on));

describe('the date of an event', () => {
  it('is a fact once the heat has come', () => {
    const track = through(yearsAt([4, 6, 5]), day('2024-05-31'));
    expect(forecastEvent(track, START, 50)).toEqual({ status: 'came', on: day('2024-05-10') });
  });

  it('rests on past years, each an equally likely case', () => {
    const track = through(yearsAt([4, 6, 5]), day('2024-05-10')); // 50 so far
    const forecast = forecastEvent(track, START, 110);
    expect(forecast).toMatchObject({ status: 'ahead', remaining: 60, window: { method: 'past-years', years: 2 } });
    expect(forecast.status === 'ahead' && forecast.cases.map((on) => on && formatDay(on))).toEqual(['2024-05-20', '2024-05-25']);
  });

  it('is not given over a gap in the weather or before the sum has begun', () => {
    const gap = sourceOf(dayOf(2022, 1, 1), day('2024-05-31'), (on) =>
      on > day('2024-05-10') && on < day('2024-05-20') ? Number.NaN : 5,
    );
    expect(forecastEvent(heatTrack(rule, gap), START, 300)).toMatchObject({
      status: 'gap',
      gap: { from: day('2024-05-11'), to: day('2024-05-19') },
    });
    expect(forecastEvent(through(yearsAt([4, 6, 5]), day('2024-04-20')), START, 10)).toEqual({ status: 'not-dated' });
  });

  it('narrows as days pass, whatever the years are like', () => {
    const paces = fc.array(fc.integer({ min: 2, max: 12 }), { minLength: 3, maxLength: 12 });
    fc.assert(
      fc.property(paces, fc.integer({ min: 100, max: 500 }), (written, target) => {
        const series = yearsAt(written);
        let before = Number.POSITIVE_INFINITY;
        for (const on of [5, 10, 20, 40].map((days) => addDays(START, days))) {
          const forecast = forecastEvent(through(series, on), START, target);
          if (forecast.status !== 'ahead' || forecast.window.lateOpen) continue;
          const width = forecast.window.late - forecast.window.early;
          // Whole days: a window may round up by one at each end.
          expect(width).toBeLessThanOrEqual(before + 2);
          before = width;
        }
      }),
      { numRuns: 60 },
    );
  });

  it('is certain from its day on where all past years were alike to the hour', () => {
    const forecast = forecastEvent(through(yearsAt([2, 2, 10]), day('2024-05-31')), START, 700);
    if (forecast.status !== 'ahead') throw new Error(forecast.status);
    const { middle } = forecast.window;
    expect([addDays(middle, -1), middle, addDays(middle, 1)].map((on) => chanceBy(forecast, on))).toEqual([0, 1, 1]);
  });

  it('is 10, 50 and 90 % likely to have come by the dates of its window, and never less likely a day later', () => {
    const paces = fc.array(fc.integer({ min: 2, max: 12 }), { minLength: 3, maxLength: 15 });
    fc.assert(
      fc.property(paces, (written) => {
        const forecast = forecastEvent(through(yearsAt(written), day('2024-05-31')), START, 700);
        if (forecast.status !== 'ahead') return;
        const { early, middle, late } = forecast.window;
        let before = 0;
        for (let on = forecast.from; on <= addDays(forecast.from, 200); on = addDays(on, 1)) {
          const chance = chanceBy(forecast, on)!;
          expect(chance).toBeGreaterThanOrEqual(before);
          before = chance;
        }
        expect(chanceBy(forecast, forecast.from)).toBe(0);
        expect(chanceBy(forecast, addDays(early, -2))!).toBeLessThanOrEqual(0.1 + 1 / written.length);
        expect(chanceBy(forecast, middle)!).toBeGreaterThan(0.3);
        if (!forecast.window.lateOpen) expect(chanceBy(forecast, addDays(late, 1))!).toBeGreaterThanOrEqual(0.85);
      }),
      { numRuns: 60 },
    );
  });
});

describe("the user's own forecast", () => {
  const measured = truncateSeries(yearsAt([5, 5, 5]), day('2024-05-10'));
  const hotWeek = (from: string) => sourceOf(day(from), addDays(day(from), 6), () => 20);

  it('comes after the measured days and before past years', () => {
    const { series, measuredThrough } = withForecast(measured, hotWeek('2024-05-11'));
    expect(measuredThrough).toBe(day('2024-05-10'));
    const track = heatTrack(rule, series);
    // 50 measured and 7 · 20 forecast.
    expect(forecastEvent(track, START, 100, { measuredThrough })).toEqual({ status: 'in-own-forecast', on: day('2024-05-13') });
    expect(forecastEvent(track, START, 200, { measuredThrough })).toMatchObject({
      status: 'ahead',
      from: day('2024-05-17'),
      remaining: 10,
      window: { middle: day('2024-05-19') },
    });
  });

  it('never stands for a measured day', () => {
    const { series } = withForecast(measured, hotWeek('2024-05-08'));
    expect(heatTrack(rule, series).total(START, day('2024-05-10'))).toMatchObject({ degreeDays: 50 });
    expect(heatTrack(rule, series).total(START, day('2024-05-14'))).toMatchObject({ degreeDays: 130 });
  });

  it('that is all past changes nothing', () => {
    expect(withForecast(measured, hotWeek('2024-05-01')).series).toBe(measured);
    expect(withForecast(measured, null).series).toBe(measured);
  });
});
