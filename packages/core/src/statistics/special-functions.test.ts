import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { digamma, logGamma, stirlingError, trigamma } from './gamma-function.ts';
import { betaCdf, betaQuantile } from './incomplete-beta.ts';
import reference from './reference/special-functions.json' with { type: 'json' };
import { studentCdf, studentLimit } from './student.ts';

const relativeError = (got: number, expected: number) => Math.abs(got / expected - 1);

describe('the gamma function and its relatives', () => {
  it.each(reference.gamma)('agree with R at $x', ({ x, ...expected }) => {
    for (const [f, value] of [
      [logGamma, expected.logGamma],
      [digamma, expected.digamma],
      [trigamma, expected.trigamma],
    ] as const) {
      expect(Math.abs(f(x) - value), f.name).toBeLessThan(1e-12 * Math.abs(value) + 1e-14);
    }
  });

  it('keep their digits where ln Γ is large: the error of Stirling’s formula at 1e5 is 1/12e5', () => {
    expect(relativeError(stirlingError(1e5), 1 / 12e5)).toBeLessThan(1e-10);
  });
});

describe('the beta distribution', () => {
  it('agrees with R to ten digits, shapes from ½ to 100,000 and both far tails', () => {
    for (const { p, a, b, quantile, below } of reference.beta) {
      const at = `p ${p}, shapes ${a} and ${b}`;
      expect(relativeError(betaCdf(quantile, a, b), below), `cdf at ${at}`).toBeLessThan(1e-10);
      expect(relativeError(betaQuantile(p, a, b), quantile), `quantile at ${at}`).toBeLessThan(1e-10);
    }
  });

  it('ends at 0 and 1', () => {
    expect([betaCdf(-1, 2, 3), betaCdf(0, 2, 3), betaCdf(1, 2, 3), betaCdf(2, 2, 3)]).toEqual([0, 0, 1, 1]);
    expect([betaQuantile(0, 2, 3), betaQuantile(1, 2, 3)]).toEqual([0, 1]);
  });

  const shape = fc.double({ min: -2, max: 5, noNaN: true }).map((exponent) => 10 ** exponent);
  const probability = fc.double({ min: 1e-9, max: 1 - 1e-9, noNaN: true });

  it('has a quantile that its distribution function takes back', () => {
    fc.assert(
      fc.property(probability, shape, shape, (p, a, b) => {
        const x = betaQuantile(p, a, b);
        fc.pre(x > 1e-300);
        const lastDigitOfX = betaCdf(x + Number.EPSILON, a, b) - betaCdf(x - Number.EPSILON, a, b);
        expect(Math.abs(betaCdf(x, a, b) - p)).toBeLessThan(1e-10 + lastDigitOfX);
      }),
    );
  });

  it('is the same seen from the other end', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1023 }), shape, shape, (n, a, b) => {
        const x = n / 1024;
        expect(betaCdf(x, a, b) + betaCdf(1 - x, b, a)).toBeCloseTo(1, 12);
      }),
    );
  });
});

describe('Student’s t and the normal', () => {
  it('leave outside what R says', () => {
    for (const { level, df, limit } of reference.student) expect(studentLimit(level, df) / limit).toBeCloseTo(1, 9);
    for (const { level, limit } of reference.normal) expect(studentLimit(level, Infinity) / limit).toBeCloseTo(1, 8);
  });

  it('leave as much below a limit as above its mirror image', () => {
    for (const { level, df, limit } of reference.student) {
      expect(studentCdf(limit, df)).toBeCloseTo((1 + level) / 2, 9);
      expect(studentCdf(-limit, df)).toBeCloseTo((1 - level) / 2, 9);
    }
    expect(studentCdf(0, 3)).toBe(0.5);
  });
});
