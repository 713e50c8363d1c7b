import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  fieldMoments,
  fitPatchiness,
  fitPowerLaw,
  greenStopTotal,
  iwaoSampleSize,
  kunoStopTotal,
  taylorSampleSize,
} from './precision.ts';
import { meanFromShare, shareFromMean, shareInfested, shareSampleSize } from './presence.ts';
import lines from './reference/lines.json' with { type: 'json' };
import reference from './reference/scouting.json' with { type: 'json' };

const fields = reference.fields.map((counts) => {
  const moments = fieldMoments(counts);
  if (!moments.ok) throw new Error('refused');
  return moments.value;
});

describe('how scatter grows with the mean', () => {
  it('by Taylor’s power law, as R fits it', () => {
    const fit = fitPowerLaw(fields);
    if (!fit.ok) throw new Error('refused');
    const { estimate, standardError, rSquared } = reference.powerLaw;
    expect(Math.log(fit.value.a)).toBeCloseTo(estimate[0]!, 11);
    expect(fit.value.b).toBeCloseTo(estimate[1]!, 11);
    expect(fit.value.logAStandardError).toBeCloseTo(standardError[0]!, 11);
    expect(fit.value.bStandardError).toBeCloseTo(standardError[1]!, 11);
    expect(fit.value.rSquared).toBeCloseTo(rSquared, 11);
  });

  it('by Iwao’s patchiness regression, as R fits it', () => {
    const fit = fitPatchiness(fields);
    if (!fit.ok) throw new Error('refused');
    const { estimate, standardError } = reference.patchiness;
    expect([fit.value.alpha, fit.value.beta][0]).toBeCloseTo(estimate[0]!, 9);
    expect(fit.value.beta).toBeCloseTo(estimate[1]!, 11);
    expect(fit.value.alphaStandardError).toBeCloseTo(standardError[0]!, 9);
    expect(fit.value.betaStandardError).toBeCloseTo(standardError[1]!, 11);
  });

  it('is not told by fields without insects, nor by two fields', () => {
    const empty = { mean: 0, variance: 0 };
    const [with0, without] = [fitPowerLaw([...fields, empty]), fitPowerLaw(fields)];
    expect(with0).toEqual(without);
    expect(fitPowerLaw([fields[0]!, fields[1]!, empty])).toMatchObject({ ok: false, problems: [{ got: '2 points' }] });
    expect(fieldMoments([4])).toMatchObject({ ok: false });
  });
});

describe('a sample of fixed precision', () => {
  const law = fc.record({ a: fc.double({ min: 0.5, max: 5, noNaN: true }), b: fc.double({ min: 1, max: 1.9, noNaN: true }) });
  const mean = fc.double({ min: 0.05, max: 50, noNaN: true });

  it('has the standard error asked for, by Taylor’s law', () => {
    fc.assert(
      fc.property(law, mean, ({ a, b }, m) => {
        const n = taylorSampleSize({ a, b }, m, 0.25);
        expect(Math.sqrt((a * m ** b) / n) / m).toBeCloseTo(0.25, 10);
      }),
    );
  });

  it('ends on Green’s line just where Taylor’s size is reached', () => {
    fc.assert(
      fc.property(law, mean, (taylor, m) => {
        const n = taylorSampleSize(taylor, m, 0.2);
        expect(greenStopTotal(taylor, n, 0.2) / (n * m)).toBeCloseTo(1, 7);
      }),
    );
    expect(greenStopTotal({ a: 2, b: 2 }, 30, 0.25)).toBeNaN();
  });

  it('is the size, and ends at the total, that R finds by search on the variance', () => {
    const { D, means, samples, ...found } = lines.precision;
    const [taylor, iwao] = [
      { a: 2.3, b: 1.4 },
      { alpha: 0.8, beta: 1.5 },
    ];
    for (const [i, mean] of means.entries()) {
      expect(taylorSampleSize(taylor, mean, D) / found.taylor[i]!).toBeCloseTo(1, 9);
      expect(iwaoSampleSize(iwao, mean, D) / found.iwao[i]!).toBeCloseTo(1, 9);
    }
    for (const [i, n] of samples.entries()) {
      expect(greenStopTotal(taylor, n, D) / found.green[i]!).toBeCloseTo(1, 9);
      expect(kunoStopTotal(iwao, n, D) / found.kuno[i]!).toBeCloseTo(1, 9);
    }
    expect(kunoStopTotal(iwao, 8, D)).toBe(Infinity);
  });

  it('is the same by Iwao for counts that scatter by chance: 1/(m·D²)', () => {
    expect(iwaoSampleSize({ alpha: 0, beta: 1 }, 2, 0.25)).toBeCloseTo(8, 12);
    expect(taylorSampleSize({ a: 1, b: 1 }, 2, 0.25)).toBeCloseTo(8, 12);
  });

  it('of plants infested or not, one in ten of them, takes 144 for a quarter of the share', () => {
    expect(shareSampleSize(0.1, 0.25)).toBeCloseTo(144, 10);
  });
});

describe('plants infested or not', () => {
  it('none of twenty infested is not none in the field', () => {
    const estimate = shareInfested(0, 20, 0.9);
    expect(estimate).toMatchObject({ share: 0, low: 0 });
    expect(estimate.high).toBeGreaterThan(0.05);
    expect(shareInfested(20, 20, 0.9)).toMatchObject({ share: 1, high: 1 });
    expect(shareInfested(0, 0)).toMatchObject({ share: Number.NaN, low: 0, high: 1 });
  });

  it('the interval of eight in ten holds the true share about eight times in ten', () => {
    for (const share of [0.05, 0.1, 0.3]) {
      const n = 60;
      let [held, p] = [0, (1 - share) ** n];
      for (let infested = 0; infested <= n; infested++) {
        const { low, high } = shareInfested(infested, n, 0.8);
        if (low <= share && share <= high) held += p;
        p *= ((n - infested) / (infested + 1)) * (share / (1 - share));
      }
      expect(held).toBeGreaterThan(0.74);
      expect(held).toBeLessThan(0.88);
    }
  });

  it('stand for a mean count when clumping is known, and back', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 0.95, noNaN: true }), fc.constantFrom(0.3, 1, 5, Infinity), (share, k) => {
        expect(shareFromMean(meanFromShare(share, k), k)).toBeCloseTo(share, 10);
      }),
    );
    expect(meanFromShare(0.5, 1)).toBeCloseTo(1, 12);
  });
});
