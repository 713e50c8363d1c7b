import { describe, expect, it } from 'vitest';
import reference from '../catch/reference/rate.json' with { type: 'json' };
import { betaOddsCdf, betaOddsQuantile } from './incomplete-beta.ts';

describe('the odds of a beta variate', () => {
  it('have the quantiles and probabilities that R gives, from half a moth to a million', () => {
    for (const { a, b, p, odds, nearby, pNearby } of reference.betaOdds) {
      expect(betaOddsQuantile(p, a, b) / odds, `quantile ${p} of ${a}, ${b}`).toBeCloseTo(1, 8);
      expect(Math.abs(betaOddsCdf(nearby, a, b) - pNearby), `probability at ${nearby} for ${a}, ${b}`).toBeLessThan(1e-11);
    }
  });

  it('of a uniform variate are at most x with probability x/(1 + x)', () => {
    for (const x of [1e-9, 0.2, 1, 7, 1e9]) expect(betaOddsCdf(x, 1, 1)).toBeCloseTo(x / (1 + x), 13);
    expect(betaOddsQuantile(0.75, 1, 1)).toBeCloseTo(3, 12);
  });

  it('turn over when the shapes change places', () => {
    expect(betaOddsQuantile(0.1, 3.5, 0.7) * betaOddsQuantile(0.9, 0.7, 3.5)).toBeCloseTo(1, 12);
  });

  it('lie wholly between nothing and infinity', () => {
    expect([betaOddsCdf(0, 2.5, 1), betaOddsCdf(Infinity, 2.5, 1)]).toEqual([0, 1]);
  });
});
