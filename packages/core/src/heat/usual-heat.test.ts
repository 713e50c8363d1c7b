import { describe, expect, it } from 'vitest';
import { addDays, day, dayOf } from '../base/day.ts';
import { CLIMATES, simulatedWeather } from '../forecast/simulated-weather.testing.ts';
import { randomFrom } from '../statistics/random.testing.ts';
import { monthlyMeans } from '../weather/normals.ts';
import { truncateSeries } from '../weather/series.ts';
import type { DailyExtremes } from '../weather/types.ts';
import { degreeDays } from './daily.ts';
import { projectEvent } from './project.ts';
import { heatTrack } from './track.ts';
import type { HeatRule } from './types.ts';
import { usualHeat, usualWaits } from './usual-heat.ts';

const rule: HeatRule = { method: 'single-sine', cutoff: 'horizontal', lower: 10, upper: 30, unit: 'C' };
const flat = (tminC: number, tmaxC: number) => ({ tminC: Array(12).fill(tminC), tmaxC: Array(12).fill(tmaxC) });
const steady = (tminC: number, tmaxC: number, days: number, start = dayOf(2025, 4, 1)): DailyExtremes => ({
  sourceId: 'new station',
  start,
  tminC: new Float64Array(days).fill(tminC),
  tmaxC: new Float64Array(days).fill(tmaxC),
});

describe('the usual heat of a day by monthly normals', () => {
  it('is the mean over days that are warmer and colder, so that days about the threshold have heat', () => {
    const { normal } = randomFrom(7);
    const draws = 40_000;
    let sum = 0;
    for (let i = 0; i < draws; i++) {
      const shift = Math.hypot(3.1, 1.3) * normal();
      sum += degreeDays(rule, 4 + shift, 14 + shift);
    }
    const { heat, slope } = usualHeat(rule, flat(4, 14))(day('2025-05-10'));
    // Three points stand for the whole distribution.
    expect(Math.abs(heat - sum / draws)).toBeLessThan(0.1);
    expect(heat).toBeGreaterThan(degreeDays(rule, 4, 14));
    expect(slope).toBeGreaterThan(0.2);
    expect(slope).toBeLessThan(0.6);
  });
});

describe('a window by monthly normals', () => {
  const track = (series: DailyExtremes, normals = flat(12, 24)) => heatTrack(rule, series, { normals });
  const perDay = usualHeat(rule, flat(12, 24))(day('2025-06-01')).heat;

  it('is about the usual pace where the season runs as usual, and widens with the days', () => {
    const now = track(steady(12, 24, 60));
    const [near, far] = [
      usualWaits(now, now.end!, 10 * perDay, now.normals!),
      usualWaits(now, now.end!, 40 * perDay, now.normals!),
    ];
    expect(Math.abs(near.middle - 10)).toBeLessThanOrEqual(1);
    expect(Math.abs(far.middle - 40)).toBeLessThanOrEqual(2);
    expect(far.late - far.early).toBeGreaterThan(near.late - near.early);
    expect(near.early).toBeLessThan(near.middle);
    expect(near.late).toBeGreaterThan(near.middle);
  });

  it('comes sooner in a season that has run warm, and later in one that has run cold', () => {
    const middle = (tminC: number, tmaxC: number) => {
      const now = track(steady(tminC, tmaxC, 60));
      return usualWaits(now, now.end!, 30 * perDay, now.normals!).middle;
    };
    expect(middle(15, 27)).toBeLessThan(middle(12, 24));
    expect(middle(9, 21)).toBeGreaterThan(middle(12, 24));
  });

  it('is used with fewer than two past years, and says so; a source without normals goes by its last days', () => {
    const series = steady(12, 24, 60);
    expect(projectEvent(track(series), 10 * perDay)).toMatchObject({ method: 'normals', years: 0, lateOpen: false });
    expect(projectEvent(heatTrack(rule, series), 10 * perDay)).toMatchObject({ method: 'recent-days' });
    const withYears = simulatedWeather(3, 4, CLIMATES.short);
    const normals = monthlyMeans(withYears, () => true);
    const cut = { ...withYears, tminC: withYears.tminC.subarray(0, 1250), tmaxC: withYears.tmaxC.subarray(0, 1250) };
    expect(projectEvent(heatTrack(rule, cut, { normals }), 100)?.method).toBe('past-years');
  });

  it('has no date where the usual year never brings the heat', () => {
    const now = track(steady(2, 6, 60), flat(-8, -2));
    expect(projectEvent(now, 500)).toBeNull();
  });

  it('can be given from the first day of a source on', () => {
    const now = track(steady(12, 24, 1));
    expect(projectEvent(now, 10 * perDay)?.method).toBe('normals');
  });

  it('holds the truth in about four of five cases of climates that are known', () => {
    let [held, cases] = [0, 0];
    for (const climate of Object.values(CLIMATES))
      for (let seed = 1; seed <= 120; seed++) {
        const normals = monthlyMeans(simulatedWeather(5000 + seed, 30, climate), () => true)!;
        const series = simulatedWeather(seed, 1, climate);
        const asOf = addDays(series.start, 130 + (seed % 5) * 12);
        const lead = [10, 20, 40][seed % 3]!;
        const truth = heatTrack(rule, series).total(addDays(asOf, 1), addDays(asOf, lead));
        if (!truth.ok || truth.degreeDays <= 0) continue;
        const { early, late } = usualWaits(heatTrack(rule, truncateSeries(series, asOf)), asOf, truth.degreeDays, normals);
        cases++;
        if (early <= lead && lead <= late) held++;
      }
    expect(cases).toBeGreaterThan(300);
    expect(held / cases).toBeGreaterThan(0.74);
    expect(held / cases).toBeLessThan(0.88);
  });
});
