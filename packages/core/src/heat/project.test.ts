import { describe, expect, it } from 'vitest';
import { addDays, type Day, day, dayOf, formatDay, yearOf } from '../base/day.ts';
import { truncateSeries } from '../weather/series.ts';
import type { DailyExtremes } from '../weather/types.ts';
import { projectEvent } from './project.ts';
import { heatTrack } from './track.ts';
import type { HeatRule, Projection } from './types.ts';

const rule: HeatRule = { method: 'simple-average', cutoff: 'none', lower: 10, upper: null, unit: 'C' };

/** A source whose every day has the heat that `heatOn` says; NaN for a missing day. */
function sourceOf(from: string, to: string, heatOn: (on: Day) => number): DailyExtremes {
  const start = day(from);
  const heats = Array.from({ length: day(to) - start + 1 }, (_, i) => heatOn(addDays(start, i)));
  return {
    sourceId: 'gauge',
    start,
    tminC: Float64Array.from(heats, (heat) => heat + 5),
    tmaxC: Float64Array.from(heats, (heat) => heat + 15),
  };
}
const dates = (projection: Projection | null) =>
  projection && [projection.early, projection.middle, projection.late].map(formatDay);

/** 2015 to 2023: so many °C·d on every day of the year, 2 in 2015 up to 10 in 2023; 1 in 2024. */
const pace = (on: Day) => (yearOf(on) === 2024 ? 1 : yearOf(on) - 2013);
const nineYears = (through: string) => heatTrack(rule, sourceOf('2015-01-01', through, pace));

describe('an event still ahead', () => {
  it('is dated by how long each past year took from the same date on', () => {
    // 90 °C·d at 2, 3 … 10 a day take 45, 30, 23, 18, 15, 13, 12, 10, 9 days. Weibull positions p·10 of nine years:
    // the shortest wait for early, the fifth of nine for the middle, the longest for late: after 9.0 whole days the tenth is
    // the first that one year in ten does not reach.
    const projection = projectEvent(nineYears('2024-05-31'), 90);
    expect(projection).toMatchObject({ method: 'past-years', years: 9, lateOpen: false });
    expect(dates(projection)).toEqual(['2024-06-10', '2024-06-15', '2024-07-15']);
  });

  it('is dated alike whatever the rest of this year came to be', () => {
    const later = sourceOf('2015-01-01', '2024-12-31', (on) => (on > day('2024-05-31') ? 40 : pace(on)));
    const known = heatTrack(rule, truncateSeries(later, day('2024-05-31')));
    expect(projectEvent(known, 90)).toEqual(projectEvent(nineYears('2024-05-31'), 90));
  });

  it('leaves out a past year with a gap before the event, and keeps one whose gap comes after', () => {
    const gapIn = (year: number, month: number) => (on: Day) =>
      on >= dayOf(year, month, 1) && on < dayOf(year, month, 10) ? Number.NaN : pace(on);
    const yearsWith = (heatOn: (on: Day) => number) =>
      projectEvent(heatTrack(rule, sourceOf('2015-01-01', '2024-05-31', heatOn)), 90)?.years;
    expect(yearsWith(gapIn(2016, 6))).toBe(8);
    expect(yearsWith(gapIn(2016, 8))).toBe(9);
  });

  it('has a window wider than the range of three past years, which would hold a fourth only half the time', () => {
    const three = projectEvent(heatTrack(rule, sourceOf('2021-01-01', '2024-05-31', pace)), 90);
    expect(three?.years).toBe(3);
    // After 9, 10 and 11.25 days: mean 10.083, s² = 1.2708, t(2) at 90 % = 1.8856, reach 1.8856·√(1.2708·4/3) = 2.4545, so
    // 7.63 to 12.54: from the ninth day to the thirteenth. Days all alike show no scatter of their own.
    expect(dates(three)).toEqual(['2024-06-09', '2024-06-11', '2024-06-13']);
  });

  it('is never dated before tomorrow', () => {
    const soon = projectEvent(heatTrack(rule, sourceOf('2022-01-01', '2024-05-31', pace)), 5);
    expect(formatDay(soon!.early)).toBe('2024-06-01');
  });

  it('has an open end when a past year never got there, and is not dated when half of them did not', () => {
    const cold = (years: number[]) =>
      projectEvent(
        heatTrack(
          rule,
          sourceOf('2015-01-01', '2024-05-31', (on) => (years.includes(yearOf(on)) ? 0 : pace(on))),
        ),
        90,
      );
    const once = cold([2016]);
    expect(once).toMatchObject({ years: 9, lateOpen: true });
    expect(formatDay(once!.late)).toBe('2024-12-17'); // the horizon: 200 days after 31 May
    expect(cold([2015, 2016, 2017, 2018, 2019, 2020])).toBeNull();
  });

  it('of 29 February starts a past year on 1 March', () => {
    const projection = projectEvent(nineYears('2024-02-28'), 9);
    expect(projection).toMatchObject({ method: 'past-years', years: 9 });
  });
});

describe('without two past years', () => {
  const recent = (heatOn: (on: Day) => number, remaining: number) =>
    projectEvent(heatTrack(rule, sourceOf('2024-04-01', '2024-05-31', heatOn)), remaining);

  it('the pace of the last 14 days is carried on', () => {
    const steady = recent((on) => (on > day('2024-05-17') ? 5 : 50), 100);
    expect(steady).toMatchObject({ method: 'recent-days', years: 0 });
    expect(formatDay(steady!.middle)).toBe('2024-06-20');
  });

  it('the season may warm or cool meanwhile: a little for a near event, without end for a far one', () => {
    // Steady 5 a day leaves the season's part alone, 1.2816·0.15·n²/2 = 0.0961·n².
    // 25 ahead: early 5 (25 + 2.4), by hand 4 gives 20 + 1.5 < 25; late 6 (30 − 3.5 ≥ 25), 5 gives 25 − 2.4 < 25.
    const near = recent(() => 5, 25);
    expect(near!.lateOpen).toBe(false);
    expect(dates(near)).toEqual(['2024-06-05', '2024-06-05', '2024-06-06']);
    // 5n − 0.0961n² never exceeds 25/(4·0.0961) = 65.
    expect(recent(() => 5, 66)!.lateOpen).toBe(true);
  });

  it('uneven days spread the dates', () => {
    // Alternately 2 and 8: mean 5, s² = 14·9/13 = 9.692, times (1 + 0.5)/(1 − 0.5) = 3. With z = 1.2816, 25 ahead:
    // n = 3: 15 + z·√(29.08·(3 + 9/14) + 0.46) = 15 + 13.2 ≥ 25, n = 2: 10 + 10.4 < 25;
    // n = 12: 60 − z·√(29.08·(12 + 144/14) + 116.6) = 60 − 35.4 < 25, n = 13: 65 − 38.2 ≥ 25.
    expect(dates(recent((on) => (on % 2 === 0 ? 2 : 8), 25))).toEqual(['2024-06-03', '2024-06-05', '2024-06-13']);
  });

  it('nothing is dated from days without heat, from fewer than seven known days, or beyond 200 days', () => {
    expect(recent(() => 0, 10)).toBeNull();
    expect(
      recent((on) => (on > day('2024-05-20') && on < day('2024-05-27') ? Number.NaN : on > day('2024-05-11') ? 5 : 0), 10),
    ).not.toBeNull();
    expect(
      projectEvent(
        heatTrack(
          rule,
          sourceOf('2024-05-26', '2024-05-31', () => 5),
        ),
        10,
      ),
    ).toBeNull();
    expect(recent(() => 1, 201)).toBeNull();
    expect(recent(() => 1, 200)).not.toBeNull();
  });

  it('nothing is dated without weather, or when nothing remains', () => {
    expect(
      projectEvent(
        heatTrack(
          rule,
          sourceOf('2024-05-01', '2024-04-30', () => 1),
        ),
        10,
      ),
    ).toBeNull();
    expect(recent(() => 5, 0)).toBeNull();
  });
});
