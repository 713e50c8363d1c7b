import { describe, expect, it } from 'vitest';
import { randomFrom } from '../statistics/random.testing.ts';
import { catchToInfestation } from './catch-to-infestation.ts';
import { LAGS, lagCoverage, shareCoverage } from './coverage.testing.ts';
import { catchReaching, fieldwise, fitAtLag, fitsByLag, withoutEach } from './infestation-fit.ts';
import { inventedInfestation } from './invented.testing.ts';

const crop = { lag: 12, intercept: -3.5, slope: 0.9, pairs: 30, examined: 100 };
/** ln(0.15/0.85) = −3.5 + 0.9·ln(1 + moths). */
const TRUE_THRESHOLD = Math.expm1((Math.log(0.15 / 0.85) + 3.5) / 0.9);
const learn = (seed: number, over: Partial<typeof crop> = {}) =>
  catchToInfestation(inventedInfestation(randomFrom(seed), { ...crop, ...over }), LAGS);

describe('catch against what samples found', () => {
  it('holds the lag it was simulated with about eight times in ten, without bias', () => {
    const { answered, held, bias } = lagCoverage(40, crop);
    expect(answered).toBeGreaterThanOrEqual(36);
    // 75 to 85 %, and twice the standard error of 40 seeds.
    expect(held).toBeGreaterThan(0.62);
    expect(Math.abs(bias)).toBeLessThan(1.5);
  });

  it('suggests a threshold near the true one, with the errors it would have made on samples it did not see', () => {
    const found = learn(2, { pairs: 60 });
    if (!found.known) throw new Error(found.reason);
    const { suggestion } = found;
    expect(found.lag.high - found.lag.low).toBeLessThanOrEqual(8);
    expect(suggestion.status).toBe('suggestion');
    expect(Math.abs(Math.log(suggestion.perNight / TRUE_THRESHOLD))).toBeLessThan(0.6);
    expect(suggestion.falseAlarms.examined + suggestion.misses.examined + suggestion.notCalled).toBe(found.pairs);
    expect(suggestion.misses.share).toBeLessThan(0.4);
    expect(suggestion.misses.high).toBeGreaterThan(suggestion.misses.share);
  });

  it('the share at the threshold is the rule’s, by the fit itself', () => {
    const pairs = inventedInfestation(randomFrom(2), crop);
    const fit = fitAtLag(pairs, { lag: 12, window: 5, response: 'share-infested' })!;
    const moths = catchReaching(fit, 0.15, 'share-infested');
    expect(1 / (1 + Math.exp(-fit.intercept - fit.slope * Math.log1p(moths)))).toBeCloseTo(0.15, 12);
  });

  it('also fits counts of egg masses per plant', () => {
    const random = randomFrom(5);
    const counted = inventedInfestation(random, crop).map((pair) => {
      const rate =
        pair.catches.filter(({ before }) => Math.abs(before - 12) <= 2).reduce((sum, { perNight }) => sum + perNight, 0) / 5;
      return { ...pair, found: random.negativeBinomial(100 * Math.exp(-3 + 0.8 * Math.log1p(rate)), 4) };
    });
    const found = catchToInfestation(counted, { ...LAGS, ruleLevel: 0.2, response: 'count-per-unit' });
    if (!found.known) throw new Error(found.reason);
    expect(found.lag.low).toBeLessThanOrEqual(12);
    expect(found.lag.high).toBeGreaterThanOrEqual(12);
    expect(found.fit.slope).toBeCloseTo(0.8, 0);
  });

  it('says when the lag may lie outside those tried', () => {
    const pairs = inventedInfestation(randomFrom(2), crop);
    const found = catchToInfestation(pairs, { ...LAGS, lags: [0, 2, 4, 6] });
    if (!found.known) throw new Error(found.reason);
    expect(found.lag).toMatchObject({ value: 6, openAbove: true, openBelow: false });
  });
});

describe('fields that differ, sampled again and again', () => {
  const differing = { ...crop, pairs: 40, perField: 5, fieldSd: 0.6 };

  it('leave the interval of the share at a catch right in about eight of ten', () => {
    const share = shareCoverage(40, differing, 5);
    expect(share.answered).toBeGreaterThan(34);
    // 75 to 85 %, and twice the standard error of 40 seeds.
    expect(share.held).toBeGreaterThan(0.62);
    expect(share.held).toBeLessThan(0.98);
    expect(Math.abs(share.bias)).toBeLessThan(0.03);
  });

  it('count as the fields they are: the same samples said to be of one field each look surer than they are', () => {
    const pairs = inventedInfestation(randomFrom(4), { ...differing, fieldSd: 1 });
    const apart = pairs.map((pair, i) => ({ ...pair, field: `one of its own ${i}` }));
    const [together, alone] = [pairs, apart].map((each) => {
      const options = { ...LAGS, lags: [12] };
      return fieldwise(fitsByLag(each, options), withoutEach(each, options))!;
    });
    expect(together!.slope).toBeCloseTo(alone!.slope, 12);
    expect(together!.freedom).toBe(7);
    expect(alone!.freedom).toBe(39);
    expect(together!.covariance[0]).toBeGreaterThan(alone!.covariance[0]);
    expect(together!.heterogeneity).toBeGreaterThan(1);
  });

  it('are refused while they are too few to show how they differ', () => {
    const four = inventedInfestation(randomFrom(1), { ...differing, perField: 10 });
    expect(catchToInfestation(four, LAGS)).toMatchObject({
      known: false,
      reason: 'too-few-fields',
      figures: { have: 4, need: 5 },
    });
  });
});

describe('no threshold is suggested', () => {
  it('from few samples, or samples all on one side of the rule', () => {
    expect(learn(1, { pairs: 8 })).toMatchObject({
      known: false,
      reason: 'too-few-pairs',
      problem: { where: { parameter: 'pairs' } },
    });
    expect(learn(1, { intercept: -9 })).toMatchObject({ known: false, reason: 'one-sided' });
  });

  it('where catch foretells nothing', () => {
    const reasons = [1, 2, 3, 4, 5].map((seed) => {
      const random = randomFrom(seed);
      const unrelated = inventedInfestation(random, crop).map((pair) => ({ ...pair, found: Math.floor(30 * random.uniform()) }));
      const found = catchToInfestation(unrelated, { ...LAGS, lags: [12] });
      return found.known ? 'known' : found.reason;
    });
    expect(reasons.filter((reason) => reason === 'no-relation').length).toBeGreaterThanOrEqual(3);
  });

  it('from samples whose catches nobody recorded', () => {
    const pairs = inventedInfestation(randomFrom(1), crop).map((pair) => ({
      ...pair,
      catches: pair.catches.filter(({ before }) => before < 5),
    }));
    expect(catchToInfestation(pairs, LAGS)).toMatchObject({ known: false, reason: 'too-few-pairs' });
  });
});
