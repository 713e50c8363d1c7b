/** Every sine and triangle value against the integral of the temperature curve itself. */
import { describe, expect, it } from 'vitest';
import { degreeDays } from './daily.ts';
import { degreeDaysByQuadrature } from './quadrature.ts';
import { sineHeatAbove, sineTimeAbove } from './sine.ts';
import { triangleHeatAbove, triangleTimeAbove } from './triangle.ts';
import { HEAT_CUTOFFS, type HeatRule } from './types.ts';

const CURVES = ['single-sine', 'double-sine', 'single-triangle', 'double-triangle'] as const;

describe('heat above a threshold at the day’s mean', () => {
  // a/π and a/4 by direct integration of a half wave and of a triangle of height a.
  it('is a/π under a sine: 3.1831 °F·d for 40–60 °F at 50 °F', () => {
    expect(sineHeatAbove(40, 60, 50)).toBeCloseTo(10 / Math.PI, 14);
    expect(sineHeatAbove(40, 60, 50)).toBeCloseTo(3.1831, 4);
  });

  it('is a/4 under a triangle: 2.5 °F·d for 40–60 °F at 50 °F', () => {
    expect(triangleHeatAbove(40, 60, 50)).toBe(2.5);
  });

  it('is reached for half of the day', () => {
    expect(sineTimeAbove(40, 60, 50)).toBeCloseTo(0.5, 15);
    expect(triangleTimeAbove(40, 60, 50)).toBe(0.5);
  });
});

describe('quadrature of the temperature curve', () => {
  it('itself gives the integral of a half wave, 10/π, and of a triangle, 2.5', () => {
    const rule = { cutoff: 'none', lower: 50, upper: null, unit: 'C' } as const;
    expect(degreeDaysByQuadrature({ ...rule, method: 'single-sine' }, 40, 60, 40)).toBeCloseTo(10 / Math.PI, 12);
    expect(degreeDaysByQuadrature({ ...rule, method: 'single-triangle' }, 40, 60, 40)).toBeCloseTo(2.5, 12);
  });

  it.each(CURVES.flatMap((method) => HEAT_CUTOFFS.map((cutoff) => [method, cutoff] as const)))(
    'agrees with %s, %s cutoff, to 1e-9, from frost to a day past both thresholds and a day of one temperature',
    (method, cutoff) => {
      const rule: HeatRule = { method, cutoff, lower: 10, upper: 30, unit: 'C' };
      let worst = 0;
      let crossedBoth = 0;
      for (let tmin = -8; tmin <= 40; tmin += 1)
        for (let range = 0; range <= 48; range += 1.5)
          for (const nextTmin of [tmin - 7, tmin, tmin + 0.1, tmin + 5, tmin + range + 3]) {
            const tmax = tmin + range;
            if (tmin < 10 && tmax > 30) crossedBoth++;
            const error = degreeDays(rule, tmin, tmax, nextTmin) - degreeDaysByQuadrature(rule, tmin, tmax, nextTmin);
            worst = Math.max(worst, Math.abs(error));
          }
      expect(crossedBoth).toBeGreaterThan(500);
      expect(worst).toBeLessThan(1e-9);
    },
  );

  it('agrees when a threshold all but touches an extreme', () => {
    const rule: HeatRule = { method: 'single-sine', cutoff: 'vertical', lower: 10, upper: 30, unit: 'C' };
    for (const hair of [1e-15, 1e-12, 1e-9, 1e-6])
      for (const [tmin, tmax] of [
        [10 - hair * 10, 22],
        [-3.3, 10 + hair * 10],
        [7, 30 + hair * 30],
        [30 - hair * 30, 41],
      ] as const)
        expect(degreeDays(rule, tmin, tmax)).toBeCloseTo(degreeDaysByQuadrature(rule, tmin, tmax, tmin), 9);
  });
});
