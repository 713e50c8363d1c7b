import { describe, expect, it } from 'vitest';
import { catalogue } from '../catalogue/index.ts';
import type { InfestationRule } from '../catalogue/types.ts';
import { randomFrom } from '../statistics/random.testing.ts';
import { type Clumping, clumpingOf, type PlaceCounts, placeCounts } from './clumping.ts';
import { designEffect, placeProbabilities } from './distribution.ts';
import { exactCharacteristic } from './exact.ts';
import { judge, type SequentialPlan } from './plan.ts';
import { planFor, type ScoutingPlan } from './plan-for.ts';
import { sampleVerdict } from './sample-verdict.ts';
import { waldCharacteristic } from './wald.ts';

const rules = catalogue.rules.filter((rule) => rule.kind === 'infestation');
const ears = rules.find(({ id }) => id === 'sweet-corn-earworm-ears')!;
const masses = rules.find(({ id }) => id === 'potato-corn-borer-egg-masses')!;
const planOf = (rule: InfestationRule, options = {}): ScoutingPlan => {
  const plan = planFor(rule, options);
  if (!plan.ok) throw new Error(JSON.stringify(plan.problems));
  return plan.value;
};

const random = randomFrom(16);
/** A place's own share about the field's, with correlation ρ of any two units there. */
const shareAt = (share: number, rho: number): number => {
  if (rho === 0) return share;
  const [a, b] = [random.gamma(share * (1 / rho - 1)), random.gamma((1 - share) * (1 / rho - 1))];
  return a / (a + b);
};

/** Shares of so many walks through fields whose places differ that end in each answer. */
function walked(plan: SequentialPlan, walks: number, unitsAtPlace: () => () => number) {
  const ends = { below: 0, above: 0, 'undecided-at-limit': 0, 'go-on': 0 };
  let units = 0;
  for (let i = 0; i < walks; i++) {
    const counts: number[] = [];
    let found = judge(plan, counts);
    while (found === 'go-on') {
      const unit = unitsAtPlace();
      for (let n = 0; n < plan.perPlace && counts.length < plan.maxSamples; n++) counts.push(unit());
      found = judge(plan, counts);
    }
    ends[found]++;
    units += counts.length;
  }
  return { below: ends.below / walks, above: ends.above / walks, averageSamples: units / walks };
}
const infestedOrNot = (share: number, rho: number) => () => {
  const here = shareAt(share, rho);
  return () => Number(random.uniform() < here);
};
const within = (got: number, truth: number, walks: number) =>
  expect(Math.abs(got - truth)).toBeLessThan(4 * Math.sqrt((truth * (1 - truth)) / walks) + 0.5 / walks);

describe('infested units at one place', () => {
  it('are all as likely when the place’s share may be anything: 1/(n + 1), as ρ = 1/3 at one half says', () => {
    for (const p of placeProbabilities({ kind: 'binomial' }, 0.5, 8, 1 / 3, 8)) expect(p).toBeCloseTo(1 / 9, 12);
  });

  it('are binomial where none is like its neighbour, and all or none where all are', () => {
    const apart = placeProbabilities({ kind: 'binomial' }, 0.3, 4, 0, 4);
    for (const [y, p] of [0.2401, 0.4116, 0.2646, 0.0756, 0.0081].entries()) expect(apart[y]).toBeCloseTo(p, 12);
    const alike = placeProbabilities({ kind: 'binomial' }, 0.3, 4, 1 - 1e-9, 4);
    expect(alike[0]).toBeCloseTo(0.7, 6);
    expect(alike[4]).toBeCloseTo(0.3, 6);
  });

  it('scatter by the design effect, counts as much as infested units', () => {
    for (const [distribution, mean] of [
      [{ kind: 'binomial' }, 0.2],
      [{ kind: 'negative-binomial', k: 1 }, 0.4],
      [{ kind: 'poisson' }, 0.4],
    ] as const) {
      const p = placeProbabilities(distribution, mean, 6, 0.15, 200);
      const moment = (power: number) => p.reduce((sum, each, y) => sum + each * y ** power, 0);
      const unit = { binomial: 0.16, 'negative-binomial': 0.4 + 0.16, poisson: 0.4 }[distribution.kind];
      expect(moment(1)).toBeCloseTo(6 * mean, 9);
      expect(moment(2) - moment(1) ** 2).toBeCloseTo(6 * unit * designEffect(6, 0.15), 8);
    }
  });
});

describe('ears, with a correlation of 0.15 between neighbours', () => {
  const rho = 0.15;
  const plan = planOf(ears);
  const walks = 3_000;

  it('would be called below in error in some 3 of 10 fields by a plan that takes them as independent, nine at a place', () => {
    const naive = planOf(ears, { correlation: 0, minSamples: 45, maxSamples: 180 });
    const { below } = walked(naive, walks, infestedOrNot(naive.test.m1, rho));
    expect(below).toBeGreaterThan(0.2);
    within(below, exactCharacteristic(naive, naive.test.m1, rho).below, walks);
  });

  it('are called below or above in error in at most 1 of 10, by walks through such fields', () => {
    expect(plan.correlation).toBe(rho);
    const [low, high] = [
      walked(plan, walks, infestedOrNot(plan.test.m0, rho)),
      walked(plan, walks, infestedOrNot(plan.test.m1, rho)),
    ];
    const [exactLow, exactHigh] = [exactCharacteristic(plan, plan.test.m0), exactCharacteristic(plan, plan.test.m1)];
    expect(exactLow.above).toBeLessThanOrEqual(0.1);
    expect(exactHigh.below).toBeLessThanOrEqual(0.1);
    within(low.above, exactLow.above, walks);
    within(low.below, exactLow.below, walks);
    within(high.below, exactHigh.below, walks);
    within(high.above, exactHigh.above, walks);
    expect(high.averageSamples / exactHigh.averageSamples).toBeCloseTo(1, 1);
  });
});

describe('every plan', () => {
  it.each(rules.flatMap((rule) => [0, 0.05, 0.15, 0.3].map((correlation) => ({ id: rule.id, rule, correlation }))))(
    'keeps both risks to 1 in 10 at the correlation it is made for: $id, $correlation',
    ({ rule, correlation }) => {
      const plan = planOf(rule, { correlation });
      expect(exactCharacteristic(plan, plan.test.m0).above).toBeLessThanOrEqual(0.1);
      expect(exactCharacteristic(plan, plan.test.m1).below).toBeLessThanOrEqual(0.1);
      const less = exactCharacteristic(plan, plan.test.m1, correlation / 2);
      expect(less.below).toBeLessThanOrEqual(exactCharacteristic(plan, plan.test.m1).below + 0.005);
    },
  );

  it('that counts egg masses keeps them in fields where places differ, by walks', () => {
    const plan = planOf(masses);
    const { m1 } = plan.test;
    // Between places gamma with variance ρ·V, within them what is left of V = m + m²/k, and no less than chance.
    const between = plan.correlation * (m1 + m1 ** 2);
    const within1 = m1 + m1 ** 2 - between;
    const unitsAtPlace = () => {
      const here = m1 * (random.gamma(m1 ** 2 / between) / (m1 ** 2 / between));
      const spread = (within1 - m1) / (m1 ** 2 + between);
      return () => (spread > 0 ? random.negativeBinomial(here, 1 / spread) : random.poisson(here));
    };
    const { below } = walked(plan, 2_000, unitsAtPlace);
    expect(below).toBeLessThan(0.1 + 4 * Math.sqrt((0.1 * 0.9) / 2_000));
  });

  it('asks for more units the more alike neighbours are, and for more places rather than more at each', () => {
    const average = (correlation: number) => {
      const plan = planOf(ears, { correlation });
      return exactCharacteristic(plan, plan.test.m1).averageSamples;
    };
    expect(average(0.05)).toBeGreaterThan(average(0));
    expect(average(0.3)).toBeGreaterThan(average(0.05));
    expect(planOf(ears).walk).toMatchObject({ places: 5, perPlace: 8 });
    expect(waldCharacteristic(planOf(ears).test, 0.05).averageSamples).toBeGreaterThan(0);
  });

  it('cannot be made for a correlation of 1 or below 0', () => {
    for (const correlation of [1, -0.1, Number.NaN])
      expect(planFor(ears, { correlation })).toMatchObject({ ok: false, problems: [{ where: { parameter: 'correlation' } }] });
  });
});

describe('the correlation of neighbours', () => {
  const sample = (share: number, rho: number, places = 8, each = 5): PlaceCounts[] =>
    Array.from({ length: places }, () => {
      const here = shareAt(share, rho);
      const infested = Array.from({ length: each }, () => Number(random.uniform() < here)).reduce((a, b) => a + b, 0);
      return { infested, examined: each };
    });

  it('is assumed until samples say what each place held, and the plan says so', () => {
    expect(clumpingOf([])).toEqual({ correlation: 0.15, samples: 0, places: 0 });
    expect(clumpingOf([placeCounts(['0/5', '0/5']), placeCounts(['3/20'])])).toMatchObject({ correlation: 0.15, samples: 0 });
    expect(planOf(ears).assumed.map(({ id }) => id)).toContain('placeCorrelation');
    expect(planOf(ears, { correlation: 0.05 })).toMatchObject({ clumping: null });
  });

  it.each([0, 0.15, 0.4])('of %d is found again in many own samples', (rho) => {
    const { correlation, samples, places } = clumpingOf(Array.from({ length: 150 }, () => sample(0.15, rho)));
    expect(Math.abs(correlation - rho)).toBeLessThan(0.05);
    expect(samples).toBeGreaterThan(100);
    expect(places).toBe(8 * samples);
  });

  it('leans on the assumption after few: one sample without any clumping does not make it nil', () => {
    const spread = placeCounts(['1/5', '1/5', '1/5', '1/5', '1/5']);
    const { correlation, samples } = clumpingOf([spread]);
    expect(samples).toBe(1);
    expect(correlation).toBeGreaterThan(0.05);
    expect(correlation).toBeLessThan(0.15);
    const plan = planOf(ears, { clumping: clumpingOf([spread]) });
    expect(plan.correlation).toBe(correlation);
    expect(plan.assumed.map(({ id }) => id)).not.toContain('placeCorrelation');
  });

  it('is highest where places are all or none', () => {
    const { correlation } = clumpingOf(Array.from({ length: 40 }, () => placeCounts(['5/5', '0/5', '0/5', '5/5'])));
    expect(correlation).toBeGreaterThan(0.8);
  });
});

describe('a finished sample in which nothing was found, eight at a place', () => {
  it('calls a field at one and a half times the rule below in less than one of ten; read as units that stand anywhere, in one of four', () => {
    const noneAtPlace = placeProbabilities({ kind: 'binomial' }, 1.5 * ears.share, 8, 0.15, 0)[0]!;
    const fewest = (clumping: Clumping) => {
      let examined = 1;
      while (sampleVerdict(ears, examined, 0, { clumping }).verdict !== 'below') examined++;
      return examined;
    };
    const clumped = fewest(clumpingOf([]));
    const scattered = fewest({ correlation: 0, samples: 1, places: 20 });
    expect(noneAtPlace ** (clumped / 8)).toBeLessThan(0.1);
    expect(noneAtPlace ** (scattered / 8)).toBeGreaterThan(0.2);
  });
});
