/**
 * Real weather: daily extremes of Seattle 2012–2015, NOAA, as carried by the package vega-datasets (BSD-3-Clause).
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { day, formatDay } from '../base/day.ts';
import { degreeDaysC } from '../base/temperature.ts';
import { catalogue } from '../catalogue/index.ts';
import type { WeatherRecord } from '../records/schema.ts';
import { seriesFromRecords } from '../weather/series.ts';
import { dailyDegreeDays } from './daily.ts';
import { degreeDaysByQuadrature } from './quadrature.ts';
import { sumHeat } from './sum.ts';
import { heatTrack } from './track.ts';
import { HEAT_CUTOFFS, type HeatRule } from './types.ts';

const file = new URL('../../../../node_modules/vega-datasets/data/seattle-weather.csv', import.meta.url);
const [header, ...lines] = readFileSync(file, 'utf8').trim().split('\n');
const columns = header!.split(',');
const records: WeatherRecord[] = lines.map((line) => {
  const cells = line.split(',');
  const cell = (column: string): string => cells[columns.indexOf(column)]!;
  return {
    sourceId: 'seattle',
    date: cell('date'),
    tminC: Number(cell('temp_min')),
    tmaxC: Number(cell('temp_max')),
    precipitationMm: Number(cell('precipitation')),
  };
});
const seattle = seriesFromRecords(records).get('seattle')!;

/** The modified average is no curve: its own definition, said a second way, as the middle of three values. */
function byDefinition(rule: HeatRule, tmin: number, tmax: number, next: number): number {
  if (rule.method.endsWith('sine') || rule.method.endsWith('triangle')) return degreeDaysByQuadrature(rule, tmin, tmax, next);
  const [lower, upper] = [rule.lower, rule.upper ?? Number.POSITIVE_INFINITY].map((t) =>
    rule.unit === 'F' ? (t - 32) / 1.8 : t,
  );
  const held = (t: number): number => [t, lower!, upper!].sort((a, b) => a - b)[1]!;
  if (rule.method === 'modified-average') return (held(tmin) + held(tmax)) / 2 - lower!;
  const mean = (tmin + tmax) / 2;
  return rule.cutoff === 'none' ? Math.max(0, mean - lower!) : held(mean) - lower!;
}

function largestError(rule: HeatRule): { error: number; warmDays: number; days: number } {
  const heat = dailyDegreeDays(rule, seattle);
  let [error, warmDays, days] = [0, 0, 0];
  for (let i = 0; i + 1 < heat.length; i++) {
    const expected = byDefinition(rule, seattle.tminC[i]!, seattle.tmaxC[i]!, seattle.tminC[i + 1]!);
    error = Math.max(error, Math.abs(heat[i]! - expected));
    if (heat[i]! > 0) warmDays++;
    days++;
  }
  return { error, warmDays, days };
}

describe('Seattle 2012–2015', () => {
  it('is read whole: 1,461 days, 0.0 to 12.8 °C and the like, none missing', () => {
    expect(records).toHaveLength(1461);
    expect(formatDay(seattle.start)).toBe('2012-01-01');
    expect([seattle.tminC[0], seattle.tmaxC[0]]).toEqual([5, 12.8]);
    expect(heatTrack(catalogue.models[0]!.heat, seattle).missingDays).toBe(0);
  });

  it.each(catalogue.models.map((model) => [model.id, model.heat] as const))(
    'agrees with the integral of the temperature curve to 1e-6 on every day: %s',
    (_, rule) => {
      const { error, warmDays, days } = largestError(rule);
      expect(days).toBe(1460);
      expect(warmDays).toBeGreaterThan(300);
      expect(error).toBeLessThan(1e-6);
    },
  );

  it('agrees for every curve and cutoff too, at thresholds low enough to be crossed on summer days', () => {
    for (const method of ['single-sine', 'double-sine', 'single-triangle', 'double-triangle'] as const)
      for (const cutoff of HEAT_CUTOFFS) {
        const { error, warmDays } = largestError({ method, cutoff, lower: 50, upper: 75, unit: 'F' });
        expect(warmDays).toBeGreaterThan(700);
        expect(error).toBeLessThan(1e-6);
      }
  });

  it('sums the same season row by row and by subtraction, and reaches a target on the day the rows do', () => {
    const rule: HeatRule = { method: 'single-sine', cutoff: 'horizontal', lower: 50, upper: 88, unit: 'F' };
    const [from, to] = [day('2014-03-01'), day('2014-08-31')];
    const sum = sumHeat(rule, seattle, from, to);
    if (!sum.ok) throw new Error(sum.problems[0]?.got);
    const { rows, total } = sum.value;
    expect(rows).toHaveLength(184);
    expect(rows.at(-1)?.total).toBe(total);

    const track = heatTrack(rule, seattle);
    const span = track.total(from, to);
    expect(span.ok && span.degreeDays).toBeCloseTo(total, 9);
    const reached = rows.find((row) => row.total >= 1000)!;
    expect(formatDay(track.dayReaching(from, 1000)!)).toBe(reached.date);

    let byCurve = 0;
    for (let on = from; on <= to; on++) {
      const i = on - seattle.start;
      byCurve += degreeDaysByQuadrature(rule, seattle.tminC[i]!, seattle.tmaxC[i]!, Number.NaN);
    }
    expect(degreeDaysC(total, 'F')).toBeCloseTo(byCurve, 6);
  });
});
