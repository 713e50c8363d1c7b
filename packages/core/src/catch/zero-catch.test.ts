import { describe, expect, it } from 'vitest';
import { upperLimitForZero } from './zero-catch.ts';

describe('a trap that caught nothing', () => {
  it('in three nights still allows about one moth a night at 95 %', () => {
    expect(upperLimitForZero({ nights: 3, k: null, confidence: 0.95 })).toBeCloseTo(Math.log(20) / 3, 12);
  });

  it('has exactly the chance 1 − confidence of doing so at the Poisson limit', () => {
    const nights = 7;
    const limit = upperLimitForZero({ nights, k: null, confidence: 0.9 });
    expect(Math.exp(-limit * nights)).toBeCloseTo(0.1, 14);
  });

  it('has exactly that chance at the negative binomial limit, visit by visit', () => {
    for (const [k, visits] of [
      [0.4, 1],
      [1, 3],
      [2, 7],
    ] as const) {
      const limit = upperLimitForZero({ nights: 21, visits, k, confidence: 0.95 });
      const zeroAtOneVisit = (k / (k + (limit * 21) / visits)) ** k;
      expect(zeroAtOneVisit ** visits).toBeCloseTo(0.05, 12);
    }
  });

  it('says less when its counts scatter more, and less when it was seen only once', () => {
    const limit = (k: number | null, visits = 1) => upperLimitForZero({ nights: 7, visits, k, confidence: 0.9 });
    expect(limit(0.5)).toBeGreaterThan(limit(2));
    expect(limit(2)).toBeGreaterThan(limit(2, 7));
    expect(limit(2, 7)).toBeGreaterThan(limit(null));
    expect(limit(1e9)).toBeCloseTo(limit(null), 8);
  });
});
