import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { betaCdf } from '../statistics/index.ts';
import { randomFrom } from '../statistics/random.testing.ts';
import {
  type Checking,
  chanceOfReading,
  chanceOfWrongSide,
  countsForPrecision,
  relativePrecision,
  visitsInWindow,
} from './trap-number.ts';

const nightly = (traps: number, k: number | null = 2, nightsBetweenChecks = 1): Checking => ({
  traps,
  nightsBetweenChecks,
  windowNights: 1,
  k,
});

describe('the number of traps for a precision', () => {
  it('is n = z²(1/μ + 1/k)/D² (Karandinos 1976): μ = 4, k = 2 and D = 0.25 by hand', () => {
    // (1/4 + 1/2)/0.0625 = 12; at 95 %, z² = 3.8415, so 46.1.
    expect(countsForPrecision({ mean: 4, k: 2 }, 0.25)).toBeCloseTo(12, 12);
    expect(countsForPrecision({ mean: 4, k: 2 }, 0.25, 0.95)).toBeCloseTo(12 * 3.841459, 5);
    expect(relativePrecision({ mean: 4, k: 2 }, 12)).toBeCloseTo(0.25, 12);
  });

  it('with counts that scatter by chance alone is that of a Poisson mean, 1/(μD²)', () => {
    expect(countsForPrecision({ mean: 4, k: null }, 0.25)).toBeCloseTo(4, 12);
    expect(countsForPrecision({ mean: 4, k: Infinity }, 0.25)).toBeCloseTo(4, 12);
  });

  it('brings the mean of simulated counts as close as it says', () => {
    const random = randomFrom(4);
    const means = Array.from({ length: 4000 }, () => {
      let sum = 0;
      for (let i = 0; i < 12; i++) sum += random.negativeBinomial(4, 2);
      return sum / 12;
    });
    const spread = Math.sqrt(means.reduce((sum, mean) => sum + (mean - 4) ** 2, 0) / means.length) / 4;
    // The standard error of a spread from 4000 means is about 1.2 % of it.
    expect(Math.abs(spread / relativePrecision({ mean: 4, k: 2 }, 12) - 1)).toBeLessThan(0.05);
  });
});

describe('the wrong verb', () => {
  it('has the probability of the beta function: a negative binomial tail by another road', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 8 }),
        fc.integer({ min: 1, max: 7 }),
        fc.double({ min: 0.2, max: 8, noNaN: true }),
        fc.double({ min: 0.1, max: 20, noNaN: true }),
        fc.double({ min: 0.1, max: 12, noNaN: true }),
        (traps, nights, k, rate, threshold) => {
          const checking = nightly(traps, k, nights);
          const [size, mean] = [k * traps, rate * traps * nights];
          const least = Math.ceil(threshold * traps * nights * (1 - 1e-9));
          const below = least === 0 ? 0 : betaCdf(size / (size + mean), size, least);
          expect(chanceOfReading(checking, rate, threshold)).toBeCloseTo(1 - below, 9);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('of one trap and one night at one moth a night, half the true rate missing, is worked out by hand', () => {
    // k = 1: P(0) = 1/(1 + 2) when two moths a night are true; a threshold of one is then missed one time in three.
    expect(chanceOfWrongSide(nightly(1, 1), 2, 1)).toBeCloseTo(1 / 3, 12);
    // Poisson, half a moth a night: reached with 1 − e^(−1/2).
    expect(chanceOfWrongSide(nightly(1, null), 0.5, 1)).toBeCloseTo(1 - Math.exp(-0.5), 12);
  });

  it('agrees with seeded seasons of four traps over three nights', () => {
    const random = randomFrom(11);
    const checking = nightly(4, 2, 3);
    const runs = 20_000;
    let missed = 0;
    for (let run = 0; run < runs; run++) {
      let total = 0;
      for (let trap = 0; trap < 4; trap++) total += random.negativeBinomial(15 * 3, 2);
      if (total / 12 < 10) missed++;
    }
    const expected = chanceOfWrongSide(checking, 15, 10);
    expect(Math.abs(missed / runs - expected)).toBeLessThan(4 * Math.sqrt((expected * (1 - expected)) / runs));
  });

  it('fades with more traps, and hardly with more nights once moths are many', () => {
    const wrong = (traps: number, nights: number) => chanceOfWrongSide(nightly(traps, 2, nights), 15, 10);
    expect(wrong(8, 1)).toBeLessThan(wrong(4, 1));
    expect(wrong(4, 1)).toBeLessThan(wrong(2, 1));
    expect(Math.abs(wrong(4, 7) - wrong(4, 1))).toBeLessThan(0.02);
  });

  it('of a weekly rule reads as many whole visits as cover seven nights', () => {
    const visits = [1, 3, 3.5, 4, 7, 10].map((nightsBetweenChecks) => visitsInWindow({ nightsBetweenChecks, windowNights: 7 }));
    expect(visits).toEqual([7, 3, 2, 2, 1, 1]);
  });
});
