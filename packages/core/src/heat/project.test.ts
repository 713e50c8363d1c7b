import { describe, expect, it } from 'vitest';
import { addDays, type Day, day, dayOf, formatDay, yearOf } from '../units/day.ts';
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
    // the shortest wait for early, the fifth of nine for the middle, the longest for late.
    const projection = projectEvent(nineYears('2024-05-31'), 90);
    expect(projection).toMatchObject({ method: 'past-years', years: 9, lateOpen: false });
    expect(dates(projection)).toEqual(['2024-06-09', '2024-06-15', '2024-07-15']);
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

  it('lies between two past years when only two are known', () => {
    const two = projectEvent(heatTrack(rule, sourceOf('2022-01-01', '2024-05-31', pace)), 90);
    expect(two?.years).toBe(2);
    expect(dates(two)).toEqual(['2024-06-09', '2024-06-10', '2024-06-10']); // after 9 and 10 days
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
    expect(steady).toMatchObject({ method: 'recent-days', years: 0, lateOpen: false });
    expect(dates(steady)).toEqual(['2024-06-20', '2024-06-20', '2024-06-20']);
  });

  it('uneven days spread the dates', () => {
    // Alternately 2 and 8: mean 5, s = √(14·9/13) = 3.113. Early: first n with 5n + 1.2816·s·√(n + n²/14) ≥ 100,
    // by hand 15 (75 + 22.2 < 100) and 16 (80 + 23.4 ≥ 100); late: 26 (130 − 34.4 < 100) and 27 (135 − 35.5 < 100), 28.
    const uneven = recent((on) => (on % 2 === 0 ? 2 : 8), 100);
    expect(dates(uneven)).toEqual(['2024-06-16', '2024-06-20', '2024-06-28']);
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
