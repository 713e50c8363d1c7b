/** Real weather: Seattle and New York 2012–2015, NOAA, as carried by the package vega-datasets (BSD-3-Clause). */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { catalogue } from '../catalogue/catalogue.ts';
import { orderedWindow, waitWindow } from '../heat/wait-window.ts';
import { randomFrom } from '../statistics/random.testing.ts';
import { seriesFromRecords } from '../weather/series.ts';
import { hindcast, skillOf } from './hindcast.ts';

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
  it('held the true date in about eight of ten cases or more, from one to six weeks ahead', () => {
    for (const one of [...of('earlier-years'), ...of('other-years')]) {
      expect(one.cases).toBeGreaterThan(200);
      expect(one.calibrated.coverage).toBeGreaterThanOrEqual(0.75);
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

describe('the window from a few years', () => {
  it.each([2, 3, 4, 6, 8, 12, 30])('holds one more of %i alike years in eight cases of ten', (years) => {
    const random = randomFrom(years);
    const wait = () => Math.max(1, Math.round(30 + 6 * random.normal()));
    const TRIALS = 4000;
    let [held, heldByOrder] = [0, 0];
    for (let i = 0; i < TRIALS; i++) {
      const sorted = Array.from({ length: years }, wait).sort((a, b) => a - b);
      const next = wait();
      const [window, ordered] = [waitWindow(sorted), orderedWindow(sorted)];
      if (window.early <= next && next <= window.late) held++;
      if (ordered.early <= next && next <= ordered.late) heldByOrder++;
    }
    expect(held / TRIALS).toBeGreaterThan(0.77);
    expect(held / TRIALS).toBeLessThan(0.88);
    // Range of n: (n − 1)/(n + 1), and a little for whole days.
    if (years <= 3) expect(heldByOrder / TRIALS).toBeLessThan(0.62);
  });
});
