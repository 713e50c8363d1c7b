import { describe, expect, it } from 'vitest';
import { combineAlong, combineAssumed, combineSeen, limitsOf } from './combine.ts';

describe('values of several sites brought together', () => {
  it('with equal variances are their mean with Student’s interval: 1, 2, 3, 4 give 2.5 ± 1.638 · 0.6455 (t tables)', () => {
    const values = [1, 2, 3, 4].map((value) => ({ value, variance: 0.01 }));
    const combined = combineSeen(values);
    expect(combined.value).toBeCloseTo(2.5, 12);
    expect(combined.standardError).toBeCloseTo(Math.sqrt(5 / 3 / 4), 10);
    expect(combined.between).toBeCloseTo(5 / 3 - 0.01, 8);
    expect(limitsOf(combined, 0.8).high).toBeCloseTo(2.5 + 1.6377 * 0.6455, 3);
  });

  it('that differ no more than their own counts let them show no scatter between them', () => {
    expect(combineSeen([1, 1.1, 0.9].map((value) => ({ value, variance: 1 }))).between).toBe(0);
  });

  it('under an assumed scatter are weighted by it: 1/(1/2 + 1/2) = 1 for two of variance 1 about 1', () => {
    const combined = combineAssumed(
      [0, 2].map((value) => ({ value, variance: 1 })),
      1,
    );
    expect(combined).toMatchObject({ value: 1, standardError: 1, df: Infinity });
  });

  it('along a line are least squares when all are equally sure: Anscombe’s first set, 3 + 0.5·x, s.e. 0.1179 (Anscombe 1973)', () => {
    const x = [10, 8, 13, 9, 11, 14, 6, 4, 12, 7, 5];
    const y = [8.04, 6.95, 7.58, 8.81, 8.33, 9.96, 7.24, 4.26, 10.84, 4.82, 5.68];
    const { slope, at } = combineAlong(x.map((each, i) => ({ x: each, value: y[i]!, variance: 0.001 })));
    expect(slope.value).toBeCloseTo(0.5001, 4);
    expect(at(0)).toBeCloseTo(3.0001, 3);
    expect(slope.standardError).toBeCloseTo(0.1179, 4);
    expect(slope.df).toBe(9);
  });
});
