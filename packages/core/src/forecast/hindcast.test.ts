/** Real weather: Seattle and New York 2012–2015, NOAA, as carried by the package vega-datasets (BSD-3-Clause). */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { catalogue } from '../catalogue/catalogue.ts';
import { orderedWindow, waitWindow } from '../heat/wait-window.ts';
import { randomFrom } from '../statistics/random.testing.ts';
import { seriesFromRecords } from '../weather/series.ts';
import { windowCoverage } from './coverage.testing.ts';
import { hindcast, skillOf } from './hindcast.ts';
import { CLIMATES } from './simulated-weather.testing.ts';

const file = new URL('../../../../node_modules/vega-datasets/data/weather.csv', import.meta.url);
const records = readFileSync(file, 'utf8')
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => line.split(','))
  .map(([sourceId, date, precipitation, tmax, tmin]) => ({
    sourceId: sourceId!,
    date: date!,
    tminC: Number(tmin),
    tmaxC: Number(tmax),
    precipitationMm: Number(precipitation),
  }));
const cases = [...seriesFromRecords(records).values()].flatMap((series) => hindcast(series, catalogue.models));
const skill = skillOf(cases);
const of = (set: string) => skill.filter((one) => one.set === set);

describe('forecasts of four past seasons in Seattle and New York', () => {
  it('held the true date in about eight of ten cases, from one to six weeks ahead', () => {
    for (const one of [...of('earlier-years'), ...of('other-years')]) {
      expect(one.cases).toBeGreaterThan(200);
      // Eight seasons: a share of eight in ten is known to about one in ten.
      expect(one.calibrated.coverage).toBeGreaterThan(0.73);
      expect(one.calibrated.coverage).toBeLessThan(0.87);
    }
  });

  it('would have held it far less often by the range of the past years alone', () => {
    for (const one of of('earlier-years')) expect(one.ordered!.coverage).toBeLessThan(0.7);
  });

  it('were two days off or less up to 20 days ahead (median), and nearer the nearer the date', () => {
    const errors = of('other-years').map(({ medianErrorDays }) => medianErrorDays);
    expect(errors.slice(0, 3).every((error) => error <= 2)).toBe(true);
    expect(errors).toEqual([...errors].sort((a, b) => a - b));
    const widths = of('other-years').map(({ calibrated }) => calibrated.widthDays);
    expect(widths).toEqual([...widths].sort((a, b) => a - b));
  });

  it('by the pace of the last days alone are worth little beyond ten days, and say so by an open end', () => {
    const far = of('recent-days').at(-1)!;
    expect(far.medianErrorDays).toBeGreaterThan(10);
    expect(far.calibrated.widthDays).toBe(Number.POSITIVE_INFINITY);
  });
});

describe('the window in simulated weather of a known climate', () => {
  it.each([2, 3, 5, 10, 25])('after %i past years holds the true date in about eight cases of ten, at every lead', (years) => {
    const cells = [CLIMATES.lasting, CLIMATES.short, CLIMATES.cool].flatMap((climate) => windowCoverage(80, years, climate));
    for (const leadDays of [5, 10, 20, 40]) {
      const own = cells.filter((cell) => cell.leadDays === leadDays);
      const cases = own.reduce((sum, cell) => sum + cell.cases, 0);
      const held = own.reduce((sum, cell) => sum + cell.held * cell.cases, 0) / cases;
      expect(cases).toBeGreaterThan(80);
      // 77 to 85 %, and three standard errors of so many cases; docs/forecast-skill.md has more of them.
      const threeErrors = 3 * Math.sqrt(0.16 / cases);
      expect(held, `${leadDays} days`).toBeGreaterThan(0.77 - threeErrors);
      expect(held, `${leadDays} days`).toBeLessThan(0.85 + threeErrors);
    }
  });
});

describe('the window from a few years', () => {
  it.each([2, 3, 4, 6, 8, 12, 30])('holds one more of %i alike years in eight cases of ten', (years) => {
    const random = randomFrom(years);
    const wait = () => Math.max(0.1, 30 + 6 * random.normal());
    const TRIALS = 4000;
    let [held, heldByOrder] = [0, 0];
    for (let i = 0; i < TRIALS; i++) {
      const sorted = Array.from({ length: years }, wait).sort((a, b) => a - b);
      const next = Math.ceil(wait());
      // The heat of the source is off by a half of the variance, one way or the other.
      const variance = i % 3 === 0 ? null : 36 * (i % 3 === 1 ? 0.67 : 1.5);
      const [window, ordered] = [waitWindow({ sorted, variance }), orderedWindow(sorted)];
      if (window.early <= next && next <= window.late) held++;
      if (ordered.early <= next && next <= ordered.late) heldByOrder++;
    }
    expect(held / TRIALS).toBeGreaterThan(0.77);
    expect(held / TRIALS).toBeLessThan(0.83);
    // Range of n: (n − 1)/(n + 1), and a little for whole days.
    if (years <= 3) expect(heldByOrder / TRIALS).toBeLessThan(0.62);
  });
});
