import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { day } from '../base/day.ts';
import { celsius, degreeDaysIn } from '../base/temperature.ts';
import type { DailyExtremes } from '../weather/types.ts';
import { modifiedAverage } from './average.ts';
import { dailyDegreeDays, degreeDays } from './daily.ts';
import { checkHeatRule } from './rule.ts';
import { HEAT_CUTOFFS, HEAT_METHODS, type HeatCutoff, type HeatMethod, type HeatRule } from './types.ts';

const ruleC = (method: HeatMethod, cutoff: HeatCutoff = 'none', lower = 10, upper: number | null = 30): HeatRule => ({
  method,
  cutoff,
  lower,
  upper,
  unit: 'C',
});
const seriesOf = (tmin: number[], tmax: number[]): DailyExtremes => ({
  sourceId: 'gauge',
  start: day('2024-05-01'),
  tminC: Float64Array.from(tmin),
  tmaxC: Float64Array.from(tmax),
});

const temperature = fc.double({ min: -30, max: 50, noNaN: true });
const range = fc.oneof(fc.constant(0), fc.double({ min: 0, max: 30, noNaN: true }));
const anyMethod = fc.constantFrom(...HEAT_METHODS);
const anyCutoff = fc.constantFrom(...HEAT_CUTOFFS);
const anyDay = fc.record({ tmin: temperature, range, next: temperature });

describe('the averages', () => {
  it('simple: the mean above the lower threshold, and nothing on a day whose mean is below it', () => {
    expect(degreeDays(ruleC('simple-average'), 8, 20)).toBe(4);
    expect(degreeDays(ruleC('simple-average'), -5, 20)).toBe(0);
  });

  it('simple with an upper threshold: the cutoff acts on the mean', () => {
    const hotDay = (cutoff: HeatCutoff) => degreeDays(ruleC('simple-average', cutoff), 28, 40);
    expect([hotDay('none'), hotDay('horizontal'), hotDay('intermediate'), hotDay('vertical')]).toEqual([24, 20, 16, 0]);
  });

  it('modified: 40–90 °F at 50/86 °F is (50 + 86)/2 − 50 = 18 °F·d, whichever cutoff is named', () => {
    expect(modifiedAverage(50, 86, 40, 90)).toBe(18);
    for (const cutoff of HEAT_CUTOFFS) {
      const rule: HeatRule = { method: 'modified-average', cutoff, lower: 50, upper: 86, unit: 'F' };
      expect(degreeDaysIn(degreeDays(rule, celsius(40, 'F'), celsius(90, 'F')), 'F')).toBeCloseTo(18, 12);
    }
  });

  it('modified without an upper threshold only lifts the minimum', () => {
    expect(degreeDays(ruleC('modified-average', 'none', 10, null), 4, 40)).toBe(15);
  });
});

describe('what is not known', () => {
  it.each(HEAT_METHODS)('a missing extreme is a missing day, and a minimum above the maximum is a mistake (%s)', (method) => {
    const rule = ruleC(method, 'horizontal');
    expect(degreeDays(rule, Number.NaN, 20, 9)).toBeNaN();
    expect(degreeDays(rule, 9, Number.NaN, 9)).toBeNaN();
    expect(degreeDays(rule, 21, 20, 9)).toBeNaN();
    expect(degreeDays(rule, 9, 20, 9)).toBeGreaterThan(0);
  });

  it('double methods know a day only with the next day’s minimum', () => {
    const series = seriesOf([8, 9, Number.NaN, 9, 10], [20, 21, Number.NaN, 22, 23]);
    for (const method of ['double-sine', 'double-triangle'] as const) {
      const heat = dailyDegreeDays(ruleC(method), series);
      expect([...heat].map(Number.isNaN)).toEqual([false, true, true, false, true]);
      expect(degreeDays(ruleC(method), 8, 20)).toBeNaN();
    }
  });

  it('single methods do not ask for the next day', () => {
    const heat = dailyDegreeDays(ruleC('single-sine'), seriesOf([8, Number.NaN], [20, 21]));
    expect(heat[0]).toBe(degreeDays(ruleC('single-sine'), 8, 20));
    expect(heat[1]).toBeNaN();
  });
});

describe('every method', () => {
  it('adds up a series as it does its days one by one', () => {
    fc.assert(
      fc.property(anyMethod, anyCutoff, fc.array(anyDay, { minLength: 1, maxLength: 20 }), (method, cutoff, days) => {
        const rule = ruleC(method, cutoff);
        const tmin = days.map((d, i) => (i % 7 === 5 ? Number.NaN : d.tmin));
        const tmax = days.map((d) => d.tmin + d.range);
        const reused = new Float64Array(days.length).fill(-1);
        const bulk = dailyDegreeDays(rule, seriesOf(tmin, tmax), reused);
        expect(bulk).toBe(reused);
        expect([...bulk]).toEqual(days.map((_, i) => degreeDays(rule, tmin[i]!, tmax[i]!, tmin[i + 1])));
      }),
    );
  });

  it('gives the same heat in °F as in °C: 1 °C·d is 1.8 °F·d', () => {
    fc.assert(
      fc.property(anyMethod, anyCutoff, anyDay, (method, cutoff, { tmin, range, next }) => {
        // The same figures read as °F: every temperature difference, and so the heat, is 1.8 times smaller in °C.
        const inF = degreeDays(
          { method, cutoff, lower: 50, upper: 88, unit: 'F' },
          celsius(tmin, 'F'),
          celsius(tmin + range, 'F'),
          celsius(next, 'F'),
        );
        const asC = degreeDays(ruleC(method, cutoff, 50, 88), tmin, tmin + range, next);
        expect(degreeDaysIn(inF, 'F')).toBeCloseTo(asC, 9);
      }),
    );
  });

  it('loses no heat when the day grows warmer, without a cutoff or with the horizontal one', () => {
    fc.assert(
      fc.property(
        anyMethod,
        fc.constantFrom('none', 'horizontal'),
        anyDay,
        range,
        range,
        (method, cutoff, d, liftMin, liftMax) => {
          const rule = ruleC(method, cutoff as HeatCutoff);
          const tmax = d.tmin + d.range;
          const warmerMin = Math.min(d.tmin + liftMin, tmax + liftMax);
          const cooler = degreeDays(rule, d.tmin, tmax, d.next);
          const warmer = degreeDays(rule, warmerMin, tmax + liftMax, d.next + liftMin);
          expect(warmer).toBeGreaterThanOrEqual(cooler - 1e-9);
        },
      ),
    );
  });

  it('keeps its cutoffs in order: 0 ≤ intermediate, vertical ≤ horizontal ≤ the span between the thresholds', () => {
    const curved = HEAT_METHODS.filter((method) => method !== 'modified-average');
    fc.assert(
      fc.property(fc.constantFrom(...curved), anyDay, (method, { tmin, range, next }) => {
        const [none, horizontal, intermediate, vertical] = HEAT_CUTOFFS.map((cutoff) =>
          degreeDays(ruleC(method, cutoff), tmin, tmin + range, next),
        ) as [number, number, number, number];
        const aboveUpper = degreeDays(ruleC(method, 'none', 30, null), tmin, tmin + range, next);
        expect(horizontal).toBeCloseTo(none - aboveUpper, 9);
        expect(intermediate).toBeCloseTo(Math.max(0, none - 2 * aboveUpper), 9);
        expect(horizontal).toBeLessThanOrEqual(20 + 1e-9);
        expect(vertical).toBeLessThanOrEqual(horizontal + 1e-9);
        expect(vertical).toBeGreaterThanOrEqual(0);
      }),
    );
  });
});

describe('a rule that no day can be summed by', () => {
  it('is refused with what to change', () => {
    const refused = (rule: HeatRule) => {
      const result = checkHeatRule(rule);
      return result.ok ? [] : result.problems.map((problem) => problem.where.column);
    };
    expect(refused(ruleC('single-sine', 'horizontal', 30, 10))).toEqual(['upper']);
    expect(refused(ruleC('single-sine', 'horizontal', 10, null))).toEqual(['cutoff']);
    expect(refused(ruleC('modified-average', 'vertical'))).toEqual(['cutoff']);
    expect(refused(ruleC('single-sine', 'none', Number.NaN, null))).toEqual(['lower']);
    expect(refused(ruleC('single-sine', 'intermediate'))).toEqual([]);
  });
});
