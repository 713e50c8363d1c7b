import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { logGamma } from '../statistics/gamma-function.ts';
import { randomFrom } from '../statistics/random.testing.ts';
import type { CountDistribution } from './distribution.ts';
import { exactCharacteristic } from './exact.ts';
import { judge, type SequentialPlan, stopLine, stopLines } from './plan.ts';
import stops from './reference/lines.json' with { type: 'json' };
import reference from './reference/scouting.json' with { type: 'json' };
import { type Hypotheses, type SequentialTest, sequentialTest, waldCharacteristic } from './wald.ts';

/** Each unit a place of its own. */
const UNIT_BY_UNIT = { perPlace: 1, correlation: 0 } as const;

function testOf(hypotheses: Omit<Hypotheses, 'designEffect'>): SequentialTest {
  const test = sequentialTest({ ...hypotheses, designEffect: 1 });
  if (!test.ok) throw new Error(JSON.stringify(test.problems));
  return test.value;
}
const distributionOf = (kind: string, k: number) => (kind === 'negative-binomial' ? { kind, k } : { kind }) as CountDistribution;
const planOf = ({ kind, k, minSamples, maxSamples, ...risks }: (typeof reference.plans)[number]): SequentialPlan => ({
  test: testOf({ distribution: distributionOf(kind, k), m0: risks.m0, m1: risks.m1, alpha: risks.alpha, beta: risks.beta }),
  minSamples,
  maxSamples,
  ...UNIT_BY_UNIT,
});

const hypotheses = fc
  .record({
    distribution: fc.oneof(
      fc.constant({ kind: 'binomial' } as const),
      fc.constant({ kind: 'poisson' } as const),
      fc.record({ kind: fc.constant('negative-binomial' as const), k: fc.double({ min: 0.2, max: 10, noNaN: true }) }),
    ),
    m0: fc.double({ min: 0.03, max: 0.3, noNaN: true }),
    apart: fc.double({ min: 1.5, max: 3, noNaN: true }),
    alpha: fc.constantFrom(0.05, 0.1, 0.2),
    beta: fc.constantFrom(0.05, 0.1, 0.2),
  })
  .map(({ apart, ...rest }) => ({ ...rest, m1: rest.m0 * apart }));

describe('Wald’s stop lines', () => {
  it('for clumped counts are those of Boivin & Vincent 1983', () => {
    const [k, m0, m1, alpha, beta] = [0.8, 0.5, 2, 0.1, 0.05];
    const g = Math.log((m1 * (m0 + k)) / (m0 * (m1 + k)));
    const test = testOf({ distribution: { kind: 'negative-binomial', k }, m0, m1, alpha, beta });
    expect(test.slope).toBeCloseTo((k * Math.log((m1 + k) / (m0 + k))) / g, 12);
    expect(test.lowerIntercept).toBeCloseTo(Math.log(beta / (1 - alpha)) / g, 12);
    expect(test.upperIntercept).toBeCloseTo(Math.log((1 - beta) / alpha) / g, 12);
  });

  it('for infested plants at 10 and 30 %: 0.186·n − 2.58 and 0.186·n + 2.88 (Wald’s example, recalled, worked by hand)', () => {
    const test = testOf({ distribution: { kind: 'binomial' }, m0: 0.1, m1: 0.3, alpha: 0.02, beta: 0.03 });
    expect(test.slope).toBeCloseTo(0.1862, 4);
    expect(test.lowerIntercept).toBeCloseTo(-2.5829, 3);
    expect(test.upperIntercept).toBeCloseTo(2.8758, 3);
  });

  it('accept none in 24 and reject at 2 from the second on, as the NIST/SEMATECH e-Handbook 6.2.6 prints (recalled)', () => {
    const test = testOf({ distribution: { kind: 'binomial' }, m0: 0.01, m1: 0.1, alpha: 0.05, beta: 0.1 });
    expect(test.slope).toBeCloseTo(0.0397, 4);
    expect(test.lowerIntercept).toBeCloseTo(-0.939, 3);
    expect(test.upperIntercept).toBeCloseTo(1.205, 3);
    const plan = { test, minSamples: 1, maxSamples: 26, ...UNIT_BY_UNIT };
    expect([23, 24].map((n) => stopLine(plan, n).below)).toEqual([null, 0]);
    expect([1, 2, 19, 21, 26].map((n) => stopLine(plan, n).above)).toEqual([null, 2, 2, 3, 3]);
  });

  it.each(stops.lines)(
    'fall on the totals that R finds by likelihood: $kind, $m0 and $m1',
    ({ samples, below, above, ...stored }) => {
      const plan = planOf({ ...stored, minSamples: 1, maxSamples: 100, at: [] });
      for (const [i, n] of samples.entries()) {
        expect(stopLine(plan, n), `after ${n}`).toEqual({ samples: n, below: below[i], above: above[i] });
      }
    },
  );

  it('stand where the likelihood ratio of the counts seen reaches the bounds, whatever the counts', () => {
    fc.assert(
      fc.property(hypotheses, fc.array(fc.nat(6), { minLength: 1, maxLength: 40 }), (given, raw) => {
        const binomial = given.distribution.kind === 'binomial';
        const counts = binomial ? raw.map((y) => y % 2) : raw;
        const test = testOf(given);
        const ratio = counts.reduce(
          (sum, y) => sum + logMass(given.distribution, given.m1, y) - logMass(given.distribution, given.m0, y),
          0,
        );
        const total = counts.reduce((sum, y) => sum + y, 0);
        const offLine = (intercept: number) => total - test.slope * counts.length - intercept;
        const [upper, lower] = [Math.log((1 - given.beta) / given.alpha), Math.log(given.beta / (1 - given.alpha))];
        expect(test.weight * offLine(test.upperIntercept)).toBeCloseTo(ratio - upper, 8);
        expect(test.weight * offLine(test.lowerIntercept)).toBeCloseTo(ratio - lower, 8);
      }),
    );
  });

  it('need means, a k and risks that make a test', () => {
    const refused = sequentialTest({
      distribution: { kind: 'negative-binomial', k: 0 },
      m0: 2,
      m1: 1,
      alpha: 0,
      beta: 0.6,
      designEffect: 1,
    });
    expect(refused.ok ? [] : refused.problems.map(({ where }) => where.parameter)).toEqual(['m0', 'k', 'alpha', 'beta']);
    const beyond = { distribution: { kind: 'binomial' }, m0: 0.5, m1: 1.2, alpha: 0.1, beta: 0.1, designEffect: 1 } as const;
    expect(sequentialTest(beyond).ok).toBe(false);
  });
});

describe('what a plan does, by carrying probabilities from unit to unit', () => {
  it.each(reference.plans)('agrees with R: $kind between $m0 and $m1', (stored) => {
    const plan = planOf(stored);
    for (const { mean, ...expected } of stored.at) {
      const exact = exactCharacteristic(plan, mean);
      for (const key of ['below', 'above', 'undecided', 'averageSamples'] as const)
        expect(exact[key], `${key} at ${mean}`).toBeCloseTo(expected[key], 9);
    }
  });

  it('is what all 4096 ways to find or miss insects on twelve plants add up to', () => {
    const plan = {
      test: testOf({ distribution: { kind: 'binomial' }, m0: 0.2, m1: 0.6, alpha: 0.1, beta: 0.1 }),
      minSamples: 3,
      maxSamples: 12,
      ...UNIT_BY_UNIT,
    };
    const share = 0.35;
    const found = { below: 0, above: 0, 'undecided-at-limit': 0, 'go-on': 0 };
    let units = 0;
    for (let way = 0; way < 2 ** 12; way++) {
      const plants = Array.from({ length: 12 }, (_, i) => (way >> i) & 1);
      const probability = plants.reduce((p, infested) => p * (infested ? share : 1 - share), 1);
      found[judge(plan, plants)] += probability;
      units += probability * (1 + plants.findIndex((_, i) => i === 11 || judge(plan, plants.slice(0, i + 1)) !== 'go-on'));
    }
    const exact = exactCharacteristic(plan, share);
    expect(exact.below).toBeCloseTo(found.below, 12);
    expect(exact.above).toBeCloseTo(found.above, 12);
    expect(exact.undecided).toBeCloseTo(found['undecided-at-limit'], 12);
    expect(exact.averageSamples).toBeCloseTo(units, 10);
  });

  const random = randomFrom(7);
  const drawn: readonly [Hypotheses['distribution'], number, number, readonly number[], (mean: number) => number][] = [
    [{ kind: 'negative-binomial', k: 1 }, 0.5, 1.5, [0.2, 0.5, 0.9, 1.5, 3], (mean) => random.negativeBinomial(mean, 1)],
    [{ kind: 'poisson' }, 1, 2, [0.5, 1, 1.4, 2, 3], (mean) => random.poisson(mean)],
    [{ kind: 'binomial' }, 0.05, 0.15, [0.02, 0.05, 0.1, 0.15, 0.3], (mean) => Number(random.uniform() < mean)],
  ];

  it.each(drawn)('is what 4000 seeded walks through fields of known mean find: $0.kind', (distribution, m0, m1, means, draw) => {
    const test = testOf({ distribution, m0, m1, alpha: 0.1, beta: 0.1 });
    const walks = 4000;
    for (const plan of [
      { test, minSamples: 5, maxSamples: 60, ...UNIT_BY_UNIT },
      { test, minSamples: 10, maxSamples: 40, perPlace: 8, correlation: 0 },
    ]) {
      for (const mean of means) {
        const ends = { below: 0, above: 0, 'undecided-at-limit': 0 };
        let [units, squares] = [0, 0];
        for (let i = 0; i < walks; i++) {
          const samples: number[] = [];
          let found: ReturnType<typeof judge> = 'go-on';
          for (; found === 'go-on'; found = judge(plan, samples)) samples.push(draw(mean));
          ends[found]++;
          units += samples.length;
          squares += samples.length ** 2;
        }
        const exact = exactCharacteristic(plan, mean);
        for (const [share, truth] of [
          [ends.below, exact.below],
          [ends.above, exact.above],
          [ends['undecided-at-limit'], exact.undecided],
        ] as const) {
          const standardError = Math.sqrt((truth * (1 - truth)) / walks);
          expect(Math.abs(share / walks - truth)).toBeLessThan(4 * standardError + 0.5 / walks);
        }
        const average = units / walks;
        const standardError = Math.sqrt((squares / walks - average ** 2) / walks);
        expect(Math.abs(average - exact.averageSamples)).toBeLessThan(4 * standardError + 0.005);
      }
    }
  });

  it('keeps the risks accepted: together never more than α + β when no limit cuts it short', () => {
    fc.assert(
      fc.property(hypotheses, (given) => {
        const test = testOf(given);
        const plan = {
          test,
          minSamples: 1,
          maxSamples: 6 * Math.ceil(waldCharacteristic(test, test.slope).averageSamples),
          ...UNIT_BY_UNIT,
        };
        const [at0, at1] = [exactCharacteristic(plan, given.m0), exactCharacteristic(plan, given.m1)];
        expect(at0.above).toBeLessThanOrEqual(given.alpha / (1 - given.beta) + 1e-9);
        expect(at1.below).toBeLessThanOrEqual(given.beta / (1 - given.alpha) + 1e-9);
        expect(at0.above + at1.below).toBeLessThanOrEqual(given.alpha + given.beta + 1e-9);
        expect(at0.below + at0.above + at0.undecided).toBeCloseTo(1, 12);
      }),
      { numRuns: 40 },
    );
  });
});

describe('Wald’s approximation', () => {
  const test = testOf({ distribution: { kind: 'negative-binomial', k: 1 }, m0: 0.5, m1: 1.5, alpha: 0.1, beta: 0.1 });

  it('gives the accepted risks at both means, and Wald’s values on the slope', () => {
    fc.assert(
      fc.property(hypotheses, (given) => {
        const any = testOf(given);
        expect(waldCharacteristic(any, given.m0).below).toBeCloseTo(1 - given.alpha, 9);
        expect(waldCharacteristic(any, given.m1).below).toBeCloseTo(given.beta, 9);
        const [a, b] = [Math.log((1 - given.beta) / given.alpha), Math.log(given.beta / (1 - given.alpha))];
        expect(waldCharacteristic(any, any.slope).below).toBeCloseTo(a / (a - b), 4);
      }),
    );
  });

  it('falls as the field gets worse, asks for most units in between, and is joined up at the slope', () => {
    const means = Array.from({ length: 60 }, (_, i) => 0.1 + i * 0.05);
    const curve = means.map((mean) => waldCharacteristic(test, mean));
    for (let i = 1; i < curve.length; i++) expect(curve[i]!.below).toBeLessThan(curve[i - 1]!.below);
    const most = curve.reduce((best, at) => (at.averageSamples > best.averageSamples ? at : best));
    expect(most.mean).toBeGreaterThan(test.m0);
    expect(most.mean).toBeLessThan(test.m1);
    const [at, near] = [waldCharacteristic(test, test.slope), waldCharacteristic(test, test.slope * 1.001)];
    expect(near.averageSamples / at.averageSamples).toBeCloseTo(1, 2);
  });

  it('asks for somewhat fewer units than whole insects need, and is close', () => {
    const plan = { test, minSamples: 1, maxSamples: 300, ...UNIT_BY_UNIT };
    for (const mean of [0.3, 0.5, 0.9, 1.5, 2.5]) {
      const [exact, wald] = [exactCharacteristic(plan, mean), waldCharacteristic(test, mean)];
      expect(Math.abs(exact.below - wald.below)).toBeLessThan(0.06);
      expect(exact.averageSamples).toBeGreaterThan(wald.averageSamples);
      expect(exact.averageSamples).toBeLessThan(1.6 * wald.averageSamples + 1);
    }
  });
});

describe('walking a plan', () => {
  const plan: SequentialPlan = {
    test: testOf({ distribution: { kind: 'binomial' }, m0: 0.05, m1: 0.15, alpha: 0.1, beta: 0.1 }),
    minSamples: 10,
    maxSamples: 60,
    ...UNIT_BY_UNIT,
  };
  const clean = (n: number) => new Array<number>(n).fill(0);

  it('never ends in the first corner of the field, however bad it looks', () => {
    expect(judge(plan, [1, 1, 1, 1, 1, 1, 1, 1, 1])).toBe('go-on');
    expect(judge(plan, [1, 1, 1, 1, 1, 1, 1, 1, 1, 1])).toBe('above');
  });

  it('stops below after enough clean plants, and plants seen afterwards change nothing', () => {
    const enough = stopLines(plan).find(({ below }) => below === 0)!.samples;
    expect(judge(plan, clean(enough - 1))).toBe('go-on');
    expect(judge(plan, clean(enough))).toBe('below');
    expect(judge(plan, [...clean(enough), 1, 1, 1, 1, 1, 1])).toBe('below');
  });

  it('ends undecided when the largest sample still lies between the lines', () => {
    const between = Array.from({ length: 60 }, (_, i) => (i % 11 === 10 ? 1 : 0));
    expect(judge(plan, between.slice(0, 59))).toBe('go-on');
    expect(judge(plan, between)).toBe('undecided-at-limit');
    expect(judge(plan, [])).toBe('go-on');
  });

  it('prints no total that cannot occur', () => {
    for (const { samples, below, above } of stopLines({ ...plan, minSamples: 1 })) {
      if (below !== null) expect(below).toBeGreaterThanOrEqual(0);
      if (above !== null) expect(above).toBeLessThanOrEqual(samples);
    }
    expect(stopLine({ ...plan, minSamples: 1 }, 1)).toEqual({ samples: 1, below: null, above: null });
  });
});

function logMass(distribution: CountDistribution, mean: number, y: number): number {
  if (distribution.kind === 'binomial') return Math.log(y === 1 ? mean : 1 - mean);
  if (distribution.kind === 'poisson') return y * Math.log(mean) - mean - logGamma(y + 1);
  const { k } = distribution;
  return logGamma(k + y) - logGamma(k) - logGamma(y + 1) + k * Math.log(k / (k + mean)) + y * Math.log(mean / (k + mean));
}
