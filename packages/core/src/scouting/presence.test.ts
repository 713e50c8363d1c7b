import { describe, expect, it } from 'vitest';
import { shareInfested } from './presence.ts';

describe('plants infested or not', () => {
  it('none of twenty infested is not none in the field', () => {
    const estimate = shareInfested(0, 20, { level: 0.9 });
    expect(estimate).toMatchObject({ share: 0, low: 0 });
    expect(estimate.high).toBeGreaterThan(0.05);
    expect(shareInfested(20, 20, { level: 0.9 })).toMatchObject({ share: 1, high: 1 });
    expect(shareInfested(0, 0)).toMatchObject({ share: Number.NaN, low: 0, high: 1 });
  });

  it('the interval of eight in ten holds the true share about eight times in ten', () => {
    for (const share of [0.05, 0.1, 0.3]) {
      const n = 60;
      let [held, p] = [0, (1 - share) ** n];
      for (let infested = 0; infested <= n; infested++) {
        const { low, high } = shareInfested(infested, n);
        if (low <= share && share <= high) held += p;
        p *= ((n - infested) / (infested + 1)) * (share / (1 - share));
      }
      expect(held).toBeGreaterThan(0.74);
      expect(held).toBeLessThan(0.88);
    }
  });
});
