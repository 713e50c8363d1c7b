import { expect, test } from 'vitest';
import { randomFor } from './prng.ts';
import { exponential, gamma, negativeBinomial, normal, poisson } from './samplers.ts';

const DRAWS = 40_000;

function moments(draw: () => number): { mean: number; variance: number } {
  let [sum, squares] = [0, 0];
  for (let i = 0; i < DRAWS; i++) {
    const x = draw();
    sum += x;
    squares += x * x;
  }
  const mean = sum / DRAWS;
  return { mean, variance: squares / DRAWS - mean * mean };
}

// Means and variances as in Johnson, Kotz & Balakrishnan, Distributions in Statistics; tolerances are about five standard errors.
test.each([
  ['uniform on [0, 1)', randomFor('u'), 1 / 2, 1 / 12],
  ['standard normal', () => normal(normalStream), 0, 1],
  ['exponential of mean 6.5', () => exponential(exponentialStream, 6.5), 6.5, 6.5 ** 2],
  ['gamma of shape 3 and mean 1', () => gamma(gammaStream, 3, 1), 1, 1 / 3],
  ['gamma of shape 0.5 and mean 2', () => gamma(gammaStream, 0.5, 2), 2, 8],
  ['Poisson of mean 2', () => poisson(poissonStream, 2), 2, 2],
  ['Poisson of mean 70, drawn in halves', () => poisson(poissonStream, 70), 70, 70],
  ['negative binomial of mean 4 and k 1.6', () => negativeBinomial(nbStream, 4, 1.6), 4, 4 + 16 / 1.6],
])('a sample of the %s has its mean and variance', (_name, draw, mean, variance) => {
  const sample = moments(draw);
  expect(Math.abs(sample.mean - mean)).toBeLessThan(5 * Math.sqrt(variance / DRAWS));
  expect(Math.abs(sample.variance / variance - 1)).toBeLessThan(0.09);
});

const normalStream = randomFor('normal');
const exponentialStream = randomFor('exponential');
const gammaStream = randomFor('gamma');
const poissonStream = randomFor('poisson');
const nbStream = randomFor('negative binomial');

test('two labels give unrelated streams, one label always the same', () => {
  const draw = (label: string) => {
    const random = randomFor(label);
    return Array.from({ length: 2_000 }, random);
  };
  const [a, b] = [draw('trap 1'), draw('trap 2')];
  expect(draw('trap 1')).toEqual(a);
  const covariance = a.reduce((sum, x, i) => sum + (x - 0.5) * (b[i]! - 0.5), 0) / a.length;
  expect(Math.abs(covariance * 12)).toBeLessThan(0.1);
});
