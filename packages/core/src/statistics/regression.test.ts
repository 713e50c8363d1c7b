import { describe, expect, it } from 'vitest';
import type { Result } from '../base/problem.ts';
import { indicatorColumns, withIntercept } from './indicator-columns.ts';
import { logisticRegression } from './logistic-regression.ts';
import { negativeBinomialRegression } from './negative-binomial-regression.ts';
import { randomFrom } from './random.testing.ts';
import reference from './reference/regression.json' with { type: 'json' };
import type { RegressionFit } from './regression.ts';

const relativeError = (got: number, expected: number) => Math.abs(got / expected - 1);
const fitted = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
};
const problemOf = (result: Result<unknown>) => (result.ok ? null : result.problems[0]);

interface Stored {
  readonly names: readonly string[];
  readonly dropped: readonly string[];
  readonly y: readonly number[];
  readonly x: readonly (readonly number[])[];
  readonly offset: readonly number[] | null;
  readonly estimate: readonly number[];
  readonly standardError: readonly number[];
  readonly logLikelihood: number;
}
const inputOf = ({ y, x, names, dropped, offset }: Stored) => ({
  y,
  X: x.filter((_, j) => !dropped.includes(names[j]!)),
  names: names.filter((name) => !dropped.includes(name)),
  offset: offset ?? undefined,
});
function expectLikeR(fit: RegressionFit, { estimate, standardError, logLikelihood }: Stored) {
  expect(fit.coefficients).toHaveLength(estimate.length);
  fit.coefficients.forEach((coefficient, j) => {
    expect(relativeError(coefficient.estimate, estimate[j]!), coefficient.name).toBeLessThan(1e-7);
    expect(relativeError(coefficient.standardError, standardError[j]!), coefficient.name).toBeLessThan(1e-7);
  });
  expect(fit.logLikelihood).toBeCloseTo(logLikelihood, 8);
}

describe('negative binomial regression agrees with R’s glm.nb', () => {
  it.each(['quine', 'quineTwoWay', 'quineOffset'] as const)('on %s: coefficients, standard errors, theta, likelihood', (name) => {
    const stored = reference[name];
    const fit = fitted(negativeBinomialRegression(inputOf(stored)));
    expectLikeR(fit, stored);
    expect(relativeError(fit.k, stored.theta)).toBeLessThan(1e-8);
    expect(relativeError(fit.kStandardError!, stored.thetaStandardError)).toBeLessThan(1e-5); // glm.nb's lags one step
  });

  it('on red mites on apple leaves: as clumped as Bliss & Fisher 1953 found (k 1.0246) and R finds', () => {
    const { frequencies, ...expected } = reference.mites;
    const y = frequencies.flatMap((leaves, mites) => new Array<number>(leaves).fill(mites));
    const fit = fitted(negativeBinomialRegression({ y, ...withIntercept(y.length) }));
    expect(y).toHaveLength(150);
    expect(Math.exp(fit.coefficients[0]!.estimate)).toBeCloseTo(expected.mean, 12);
    expect(fit.k).toBeCloseTo(1.0246, 4);
    expect(relativeError(fit.k, expected.k)).toBeLessThan(1e-8);
    expect(fit.logLikelihood).toBeCloseTo(expected.logLikelihood, 9);
    expect(relativeError(fit.kStandardError!, expected.kStandardError)).toBeLessThan(1e-5); // glm.nb lags one step here
  });

  it('on claims that scatter no more than chance, as the Poisson fit it then is', () => {
    const fit = fitted(negativeBinomialRegression(inputOf(reference.insurance)));
    expect(fit).toMatchObject({ k: Infinity, kStandardError: null, overdispersed: false });
    expectLikeR(fit, reference.insurance);
  });
});

describe('dispersion adjusted for the coefficients fitted with it', () => {
  it('agrees with the same adjusted likelihood maximised in R', () => {
    const fit = fitted(negativeBinomialRegression({ ...inputOf(reference.quine), dispersion: 'adjusted' }));
    expect(relativeError(fit.k, reference.quineAdjustedK)).toBeLessThan(1e-4);
    expect(fit.k).toBeLessThan(reference.quine.theta);
  });

  it('keeps to the true scatter with an effect for each of many nights, where plain likelihood finds too little', () => {
    const random = randomFrom(11);
    const nights = Array.from({ length: 80 }, (_, i) => `${i % 40}`);
    const y = nights.map((night) => random.negativeBinomial(4 + Number(night) / 4, 2));
    const input = { y, ...withIntercept(80, indicatorColumns('night', nights)) };
    const [plain, adjusted] = [
      fitted(negativeBinomialRegression(input)),
      fitted(negativeBinomialRegression({ ...input, dispersion: 'adjusted' })),
    ];
    expect(plain.k).toBeGreaterThan(3);
    expect(Math.abs(Math.log(adjusted.k / 2))).toBeLessThan(0.6);
  });
});

describe('logistic regression agrees with R’s glm', () => {
  it('on tobacco budworm moths killed out of twenty', () => {
    const fit = fitted(logisticRegression({ ...inputOf(reference.budworm), trials: reference.budworm.trials }));
    expectLikeR(fit, reference.budworm);
  });

  it('on single outcomes', () => {
    expectLikeR(fitted(logisticRegression(inputOf(reference.birthwt))), reference.birthwt);
  });
});

describe('a regression that cannot be had is refused, with the column', () => {
  const ones = [1, 1, 1, 1, 1, 1, 1, 1];
  const first = [1, 1, 1, 1, 0, 0, 0, 0];
  const second = [0, 0, 0, 0, 1, 1, 1, 1];
  const counts = [3, 5, 2, 8, 9, 4, 12, 7];

  it('when columns fix one another', () => {
    const everything = negativeBinomialRegression({ y: counts, X: [ones, first, second], names: ['mean', 'bucket', 'cone'] });
    expect(problemOf(everything)).toMatchObject({
      where: { parameter: 'X', column: 'cone' },
      got: 'a column fixed by mean, bucket',
    });
    const allInteractions = { ...inputOf({ ...reference.quineTwoWay, dropped: [] }) };
    expect(problemOf(negativeBinomialRegression(allInteractions))?.where).toMatchObject({ column: 'AgeF3:LrnSL' });
  });

  it('when one group never catches, so that its estimate falls without end', () => {
    const silent = negativeBinomialRegression({ y: [3, 5, 2, 8, 0, 0, 0, 0], X: [ones, second], names: ['mean', 'spent lure'] });
    expect(problemOf(silent)).toMatchObject({ where: { column: 'spent lure' }, got: 'an estimate that grows without limit' });
  });

  it('when a dose separates the dead from the living', () => {
    const separated = logisticRegression({
      y: [0, 0, 0, 0, 1, 1, 1, 1],
      X: [ones, [1, 2, 3, 4, 5, 6, 7, 8]],
      names: ['mean', 'dose'],
    });
    expect(problemOf(separated)?.got).toBe('an estimate that grows without limit');
  });

  it('when values are missing, no counts, or too few', () => {
    const fit = (over: object) => negativeBinomialRegression({ y: counts, X: [ones, first], names: ['mean', 'bucket'], ...over });
    expect(problemOf(fit({ X: [ones, [...first.slice(1), Number.NaN]] }))?.where.column).toBe('bucket');
    expect(problemOf(fit({ y: [...counts.slice(1), 0.5] }))?.where.parameter).toBe('y');
    expect(
      problemOf(
        fit({
          y: [3, 4],
          X: [
            [1, 1],
            [1, 0],
          ],
        }),
      )?.got,
    ).toBe('2 rows');
    expect(problemOf(fit({ names: ['mean'] }))?.where.parameter).toBe('names');
    expect(problemOf(fit({ offset: [0] }))?.where.parameter).toBe('offset');
    expect(problemOf(fit({ y: counts.map(() => 0) }))?.got).toBe('only zeros');
  });
});
