import { describe, expect, it } from 'vitest';
import type { Result } from '../base/problem.ts';
import { catalogue, lookFor } from '../catalogue/index.ts';
import type { InfestationRule } from '../catalogue/types.ts';
import { countingPlan } from './counting.ts';
import { exactCharacteristic } from './exact.ts';
import { stopLines } from './plan.ts';
import { planFor, type ScoutingPlan } from './plan-for.ts';

const rules = catalogue.rules.filter((rule) => rule.kind === 'infestation');
const rule = (id: string): InfestationRule => rules.find((entry) => entry.id === id)!;
const planOf = (result: Result<ScoutingPlan>): ScoutingPlan => {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
};

/** Of a field surely below or surely above, at least so many walks give the right answer. */
const MOSTLY = 0.68;

describe('each published figure for infested plants, ears or fruit', () => {
  it.each(rules)('has a plan that mostly ends decided, and keeps its risks: $id', (entry) => {
    const plan = planOf(planFor(entry));
    expect(plan.threshold).toBe(entry.share);
    const [at0, at1, between] = [plan.test.m0, plan.test.m1, entry.share].map((mean) => exactCharacteristic(plan, mean));
    expect(at0!.above).toBeLessThanOrEqual(0.1);
    expect(at1!.below).toBeLessThanOrEqual(0.1);
    expect(at0!.below + at1!.above).toBeGreaterThan(2 * MOSTLY);
    expect(between!.below + between!.above + between!.undecided).toBeCloseTo(1, 10);
  });

  it('is judged between half and one and a half of it, and says that these are Duskwatch’s own figures', () => {
    const plan = planOf(planFor(rule('tomato-fruitworm-eggs')));
    expect(plan.test).toMatchObject({ m0: 0.05, distribution: { kind: 'binomial' }, alpha: 0.1, beta: 0.1 });
    expect(plan.test.m1).toBeCloseTo(0.15, 12);
    expect(plan.assumed.map(({ id }) => id)).toContain('belowShare');
    expect(plan.assumed.map(({ standing }) => standing)).not.toContain('published');
  });

  it('where egg masses are counted is judged by clumped counts, with a k that can be given', () => {
    const entry = rule('potato-corn-borer-egg-masses');
    expect(planOf(planFor(entry)).test.distribution).toEqual({ kind: 'negative-binomial', k: 1 });
    expect(planOf(planFor(entry)).assumed.map(({ id }) => id)).toContain('clumpingK');
    expect(planOf(planFor(entry, { k: 0.4 })).test.distribution).toEqual({ kind: 'negative-binomial', k: 0.4 });
    expect(planOf(planFor(entry, { k: Infinity })).test.distribution).toEqual({ kind: 'poisson' });
  });

  it('with every figure given rests on no assumption', () => {
    const given = { m0: 0.05, m1: 0.2, alpha: 0.05, beta: 0.1, minSamples: 20, maxSamples: 100, correlation: 0.1 };
    const plan = planOf(planFor(rule('sweet-corn-earworm-ears'), given));
    expect(plan).toMatchObject({ minSamples: 20, maxSamples: 100, assumed: [] });
    expect(plan.test).toMatchObject({ m0: 0.05, m1: 0.2 });
  });

  it('is not judged before every place was seen once, and ends with a whole lap', () => {
    for (const entry of rules) {
      const { walk, minSamples, maxSamples } = planOf(planFor(entry));
      expect(minSamples).toBe(walk.places * walk.perPlace);
      expect(maxSamples % minSamples).toBe(0);
      expect(maxSamples / minSamples).toBeLessThanOrEqual(6);
    }
  });

  it.each(rules)('never answers against the rule itself, which reads the same sample as a share: $id', (entry) => {
    const plan = planOf(planFor(entry));
    for (const { samples, below, above } of stopLines(plan)) {
      if (below !== null) expect(below / samples).toBeLessThan(entry.share);
      if (above !== null) expect(above / samples).toBeGreaterThanOrEqual(entry.share);
    }
  });

  it.each(rules)('never answers against the rule however alike neighbours are: $id', (entry) => {
    for (const correlation of [0, 0.05, 0.3, 0.5]) {
      for (const { samples, below, above } of stopLines(planOf(planFor(entry, { correlation })))) {
        if (below !== null) expect(below / samples).toBeLessThan(entry.share);
        if (above !== null) expect(above / samples).toBeGreaterThanOrEqual(entry.share);
      }
    }
  });

  it('cannot be judged between figures that stand the wrong way round', () => {
    expect(planFor(rule('sweet-corn-earworm-ears'), { m0: 0.3 })).toMatchObject({
      ok: false,
      problems: [{ where: { parameter: 'm0' } }],
    });
  });
});

describe('a rule that no sample can reach', () => {
  const others = catalogue.rules.filter((entry) => entry.kind !== 'infestation');

  it.each(others)('has no plan, and the answer says why: $id', (entry) => {
    const answer = planFor(entry);
    expect(answer).toMatchObject({ ok: false, problems: [{ where: { parameter: 'rule' } }] });
    if (!answer.ok) expect(answer.problems[0]!.got).toContain(entry.kind === 'heat-scout' ? 'when to look' : 'moths in traps');
  });

  it('leaves a count of five places of twenty, by common practice', () => {
    expect(countingPlan('agrotis-ipsilon')).toMatchObject({ units: 100, walk: { places: 5, perPlace: 20 } });
    expect(countingPlan('agrotis-ipsilon').assumed.map(({ standing }) => standing)).toEqual(['practice', 'practice', 'chosen']);
  });

  it('or that can, has words for what to look for, in both languages', () => {
    for (const { insect, crops, unit } of rules)
      for (const crop of crops) {
        const text = lookFor(insect, crop, unit)?.text;
        expect(text?.en).toBeTruthy();
        expect(text?.es).not.toBe(text?.en);
      }
  });
});
