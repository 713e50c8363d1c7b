import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dispersionBetweenVisits, priorDispersion } from './dispersion.ts';
import { estimateRate, probabilityAbove } from './rate.ts';
import reference from './reference/rate.json' with { type: 'json' };
import { season } from './season.testing.ts';
import { sumIntervals } from './sum.ts';
import type { CatchSum } from './types.ts';

const equalVisits = (count: number, nights: number, visits = nights): CatchSum => ({
  count,
  trapNights: nights,
  sumSquaredNights: nights ** 2 / visits,
  visits,
});
const width = (sum: CatchSum, k: number | null) => {
  const { low, high } = estimateRate(sum, { k });
  return high - low;
};

describe('the nightly rate', () => {
  it('agrees with R: interval and probability above a threshold', () => {
    for (const { low, high, threshold, above, k, ...sum } of reference.rates) {
      const rate = estimateRate(sum, { k });
      const named = JSON.stringify({ ...sum, k });
      expect(rate.perNight, named).toBe(sum.count / sum.trapNights);
      if (sum.count === 0) expect(rate.low, named).toBe(0);
      else expect(rate.low / low, named).toBeCloseTo(1, 8);
      expect(rate.high / high, named).toBeCloseTo(1, 8);
      expect(Math.abs(probabilityAbove(sum, threshold, { k }) - above), named).toBeLessThan(1e-9);
    }
  });

  it('agrees with the posterior integrated in R without use of conjugacy', () => {
    for (const { count, nights, k, threshold, above } of reference.integrated) {
      expect(Math.abs(probabilityAbove(equalVisits(count, nights), threshold, { k }) - above)).toBeLessThan(1e-8);
    }
  });

  it('agrees with R where k is known only by its prior, and integrated over', () => {
    const k = priorDispersion({ median: 3, logSd: 0.8 });
    for (const { low, high, threshold, above, ...sum } of reference.mixed) {
      const rate = estimateRate(sum, { k });
      const named = JSON.stringify(sum);
      if (sum.count > 0) expect(rate.low / low, named).toBeCloseTo(1, 2);
      expect(Math.abs(rate.high / high - 1), named).toBeLessThan(0.01);
      expect(Math.abs(probabilityAbove(sum, threshold, { k }) - above), named).toBeLessThan(0.002);
    }
  });

  it('of one trap over two nights is weak evidence, and looks weak', () => {
    expect(width(equalVisits(6, 2), 2)).toBeGreaterThan(2.5 * width(equalVisits(84, 28), 2));
    expect(width(equalVisits(6, 2), 2)).toBeGreaterThan(3);
  });

  it('when nothing was caught runs from nothing to a one-sided limit', () => {
    const rate = estimateRate(equalVisits(0, 7), { k: 2, level: 0.9 });
    expect(rate.low).toBe(0);
    expect(probabilityAbove(equalVisits(0, 7), rate.high, { k: 2 })).toBeCloseTo(0.1, 9);
  });

  it('of nothing in seven nights at one trap still allows 0.353 a night, twice what Jeffreys’ prior would say', () => {
    expect(estimateRate(equalVisits(0, 7, 1), { k: 2 }).high).toBeCloseTo((2 * (Math.sqrt(5) - 1)) / 7, 9);
    expect(probabilityAbove(equalVisits(0, 7, 1), 0.2, { k: 2 })).toBeCloseTo((1 + 1.4 / 2) ** -2, 9);
  });

  it('of nothing in three nights allows about one moth a night at 95 %, if moths come by chance alone', () => {
    expect(estimateRate(equalVisits(0, 3), { level: 0.95 }).high).toBeCloseTo(Math.log(20) / 3, 9);
  });

  it('of nothing has exactly the chance 1 − level at its limit, visit by visit, whatever is known of k', () => {
    const own = dispersionBetweenVisits([], { median: 1.5, logSd: 0.6 });
    const { high } = estimateRate(equalVisits(0, 21, 3), { k: own, level: 0.9 });
    const zeroAtOneVisit = (k: number) => (1 + (high * 7) / k) ** -k;
    const chance = own.k.reduce((sum, k, i) => sum + own.weight[i]! * zeroAtOneVisit(k) ** 3, 0);
    expect(chance).toBeCloseTo(0.1, 6);
  });

  it('says which model and dispersion it rests on', () => {
    expect(estimateRate(equalVisits(3, 7), { k: 2 })).toMatchObject({ model: 'negative-binomial', k: 2, level: 0.8 });
    expect(estimateRate(equalVisits(3, 7))).toMatchObject({ model: 'gamma-poisson', k: null });
  });

  it('without a single fit night is unknown, not zero', () => {
    const nothing = sumIntervals(season([[4, null, { condition: 'unfit' }]]).history.intervals);
    expect(estimateRate(nothing, { k: 1 })).toMatchObject({ perNight: Number.NaN, low: 0, high: Infinity });
    expect(probabilityAbove(nothing, 1)).toBeNaN();
  });
});

describe('whatever was caught', () => {
  const sums = fc
    .array(fc.record({ nights: fc.integer({ min: 1, max: 14 }), count: fc.integer({ min: 0, max: 300 }) }), {
      minLength: 1,
      maxLength: 12,
    })
    .map((visits) => ({
      count: visits.reduce((sum, visit) => sum + visit.count, 0),
      trapNights: visits.reduce((sum, visit) => sum + visit.nights, 0),
      sumSquaredNights: visits.reduce((sum, visit) => sum + visit.nights ** 2, 0),
      visits: visits.length,
    }));
  const dispersion = fc.option(fc.double({ min: 0.1, max: 50, noNaN: true }), { nil: null });

  it('the limits of the interval leave exactly the stated share of belief outside', () => {
    fc.assert(
      fc.property(sums, dispersion, fc.constantFrom(0.5, 0.8, 0.95), (sum, k, level) => {
        const { low, high } = estimateRate(sum, { k, level });
        const outside = 1 - probabilityAbove(sum, low, { k }) + probabilityAbove(sum, high, { k });
        expect(outside).toBeCloseTo(1 - level, 7);
      }),
    );
  });

  it('a higher threshold is less likely passed, and none at all surely is', () => {
    fc.assert(
      fc.property(sums, dispersion, fc.double({ min: 0.01, max: 50, noNaN: true }), (sum, k, threshold) => {
        expect(probabilityAbove(sum, 0, { k })).toBe(1);
        expect(probabilityAbove(sum, threshold * 1.2, { k })).toBeLessThanOrEqual(probabilityAbove(sum, threshold, { k }));
      }),
    );
  });

  it('counts that scatter more leave more doubt, and hardly scattering ones are Poisson', () => {
    fc.assert(
      fc.property(
        sums.filter(({ count }) => count > 0),
        (sum) => {
          expect(width(sum, 0.5)).toBeGreaterThan(width(sum, 5));
          expect(width(sum, 5)).toBeGreaterThan(width(sum, null));
          expect(width(sum, 1e7) / width(sum, null)).toBeCloseTo(1, 3);
        },
      ),
    );
  });
});

/**
 * Counts are whole, so at a single low rate the share swings far about the stated level (and falls short just above
 * the limit for nothing caught, which is one-sided); over the rates that a season passes through it hardly does.
 */
describe('the 80 % interval, over many seeded seasons', () => {
  const shareHeld = (visitNights: readonly number[], k: number, rates: readonly [number, number]) => {
    const random = seeded(20250601);
    const sum = sumIntervals(season(visitDays(visitNights)).history.intervals);
    const seasons = 4000;
    let held = 0;
    for (let i = 0; i < seasons; i++) {
      const perNight = rates[0] * (rates[1] / rates[0]) ** random();
      const caught = visitNights.map((nights) => poisson(perNight * nights * gammaMeanOne(k, random), random));
      const count = caught.reduce((total, moths) => total + moths, 0);
      const { low, high } = estimateRate({ ...sum, count }, { k });
      if (low <= perNight && perNight <= high) held++;
    }
    return held / seasons;
  };

  it.each([
    { what: 'few moths at weekly checks', nights: [7, 7], k: 2, rates: [0.05, 1] },
    { what: 'a flight at its height, checked every night', nights: [1, 1, 1, 1, 1], k: 1, rates: [2, 20] },
    { what: 'counts that scatter no more than chance', nights: [3, 3, 3], k: 1e6, rates: [0.1, 2] },
    { what: 'unequal nights, where only mean and variance are matched', nights: [1, 6, 2, 5], k: 2, rates: [0.2, 4] },
  ] as const)('holds the true rate about eight times in ten: $what', ({ nights, k, rates }) => {
    const share = shareHeld(nights, k, rates);
    expect(share).toBeGreaterThan(0.74);
    expect(share).toBeLessThan(0.86);
  });
});

/** Visits at the ends of such stretches of nights. */
function visitDays(visitNights: readonly number[]): [number, number][] {
  let day = 0;
  return visitNights.map((nights) => {
    day += nights;
    return [day, 0];
  });
}

/** Uniform on (0, 1): a 32-bit linear congruential generator, the constants of Knuth's TAOCP vol. 2. */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state + 0.5) / 2 ** 32;
  };
}

function poisson(mean: number, random: () => number): number {
  let [count, product] = [0, random()];
  const limit = Math.exp(-mean);
  while (product > limit) {
    product *= random();
    count++;
  }
  return count;
}

/** Gamma with shape k and mean 1, after Marsaglia & Tsang 2000. */
function gammaMeanOne(k: number, random: () => number): number {
  if (k > 1e5) return 1;
  if (k < 1) return ((gammaMeanOne(k + 1, random) * (k + 1)) / k) * random() ** (1 / k);
  const d = k - 1 / 3;
  for (;;) {
    const normal = Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());
    const v = (1 + normal / Math.sqrt(9 * d)) ** 3;
    if (v > 0 && Math.log(random()) < normal ** 2 / 2 + d - d * v + d * Math.log(v)) return (d * v) / k;
  }
}
