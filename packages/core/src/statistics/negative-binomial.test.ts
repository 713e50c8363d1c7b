import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitNegativeBinomial } from './negative-binomial.ts';
import { randomFrom } from './random.testing.ts';
import reference from './reference/regression.json' with { type: 'json' };

describe('a sample of counts', () => {
  it('of red mites on apple leaves is as clumped as Bliss & Fisher found (k 1.0246) and R finds', () => {
    const { frequencies, ...expected } = reference.mites;
    const fit = fitNegativeBinomial({ frequencies });
    if (!fit.ok) throw new Error('refused');
    expect(fit.value.k).toBeCloseTo(1.0246, 4);
    expect(fit.value.n).toBe(150);
    expect(fit.value.mean).toBeCloseTo(expected.mean, 14);
    expect(fit.value.k / expected.k).toBeCloseTo(1, 9);
    expect(fit.value.logLikelihood).toBeCloseTo(expected.logLikelihood, 9);
    expect(fit.value.kStandardError! / expected.kStandardError).toBeCloseTo(1, 5); // glm.nb lags one step here
    expect(fit.value.meanStandardError / expected.meanStandardError).toBeCloseTo(1, 4); // fitdistr differentiates numerically
  });

  it('that scatters no more than chance shows no over-dispersion, and its k is not made up', () => {
    const even = fitNegativeBinomial([2, 3, 2, 3, 2, 3, 2, 2, 3]);
    expect(even).toMatchObject({ ok: true, value: { k: Infinity, kStandardError: null, overdispersed: false } });
  });

  it('of nothing but zeros leaves k unknown', () => {
    expect(fitNegativeBinomial([0, 0, 0])).toMatchObject({ ok: false, problems: [{ got: 'only zeros' }] });
    expect(fitNegativeBinomial([1, 2.5])).toMatchObject({ ok: false });
    expect(fitNegativeBinomial([1, -1])).toMatchObject({ ok: false });
  });

  it('is fitted alike counted one by one or as a table', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(30), { minLength: 2, maxLength: 60 }), (counts) => {
        const frequencies = Array.from({ length: 31 }, (_, j) => counts.filter((count) => count === j).length);
        const [single, table] = [fitNegativeBinomial(counts), fitNegativeBinomial({ frequencies })];
        expect(single.ok).toBe(table.ok);
        if (single.ok && table.ok && single.value.overdispersed) expect(single.value.k / table.value.k).toBeCloseTo(1, 6);
      }),
    );
  });

  it('drawn with a known k gives it back within its standard error', () => {
    const random = randomFrom(5);
    for (const k of [0.3, 1, 4]) {
      const counts = Array.from({ length: 400 }, () => random.negativeBinomial(6, k));
      const fit = fitNegativeBinomial(counts);
      if (!fit.ok) throw new Error('refused');
      expect(Math.abs(fit.value.k - k)).toBeLessThan(3.5 * fit.value.kStandardError!);
    }
  });
});
