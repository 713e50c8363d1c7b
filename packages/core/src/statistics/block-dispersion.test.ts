import { expect, it } from 'vitest';
import { dispersionWithinBlocks } from './block-dispersion.ts';
import { indicatorColumns, withIntercept } from './indicator-columns.ts';
import { negativeBinomialRegression } from './negative-binomial-regression.ts';
import { randomFrom } from './random.testing.ts';

/** The regression is itself held to R; see regression.test.ts. */
it.each([0.7, 2, 6, Number.POSITIVE_INFINITY])(
  'within blocks the k of counts of %s is that of a regression with a column for each block',
  (k) => {
    const random = randomFrom(7);
    const blocks = Array.from({ length: 30 }, (_, b) => {
      const mean = 2 + 15 * random.uniform();
      return Array.from({ length: 2 + (b % 3) }, () => random.negativeBinomial(mean, k));
    }).filter((block) => block.some((count) => count > 0));
    const labels = blocks.flatMap((block, b) => block.map(() => String(b)));
    const design = withIntercept(labels.length, indicatorColumns('block', labels));
    const whole = negativeBinomialRegression({ y: blocks.flat(), ...design, dispersion: 'adjusted' });
    if (!whole.ok) throw new Error('the regression should settle');
    const within = dispersionWithinBlocks(blocks)!;
    expect(within.overdispersed).toBe(whole.value.overdispersed);
    if (!within.overdispersed) return;
    expect(Math.log(within.k / whole.value.k)).toBeCloseTo(0, 3);
    expect(within.kStandardError! / whole.value.kStandardError!).toBeCloseTo(1, 3);
  },
);

it('a half moth is no count', () => {
  expect(dispersionWithinBlocks([[1, 2.5]])).toBeNull();
});
