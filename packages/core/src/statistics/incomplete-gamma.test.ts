import { describe, expect, it } from 'vitest';
import reference from '../catch/reference/rate.json' with { type: 'json' };
import { gammaCdf, gammaQuantile } from './incomplete-gamma.ts';

describe('the gamma distribution', () => {
  it('has the quantiles and probabilities that R gives, from half a moth to a million', () => {
    for (const { a, p, x, nearby, pNearby } of reference.gamma) {
      expect(gammaQuantile(p, a) / x, `quantile ${p} of shape ${a}`).toBeCloseTo(1, 9);
      expect(Math.abs(gammaCdf(nearby, a) - pNearby), `probability at ${nearby} for shape ${a}`).toBeLessThan(1e-12);
    }
  });

  it('of shape 1 is the exponential distribution', () => {
    for (const x of [1e-9, 0.3, 1, 1.9, 2.1, 30]) expect(gammaCdf(x, 1)).toBeCloseTo(-Math.expm1(-x), 13);
    expect(gammaQuantile(0.95, 1)).toBeCloseTo(-Math.log(0.05), 12);
  });

  it('lies wholly between nothing and infinity', () => {
    expect([gammaCdf(0, 2.5), gammaCdf(Infinity, 2.5)]).toEqual([0, 1]);
  });
});
