import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { catalogue } from '../catalogue/index.ts';
import { planCurves } from './curve.ts';
import { judge } from './plan.ts';
import { planFor, type ScoutingPlan } from './plan-for.ts';
import { placeNow, sheetLines, standpoint } from './walking.ts';

const plans = catalogue.rules.flatMap((rule): ScoutingPlan[] => {
  const plan = planFor(rule);
  return plan.ok ? [plan.value] : [];
});
const tassel = plans.find(({ ruleId }) => ruleId === 'sweet-corn-corn-borer-tassel')!;
const anyWalk = fc
  .record({
    plan: fc.constantFrom(...plans),
    share: fc.constantFrom(0.02, 0.1, 0.3),
    seed: fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 1, maxLength: 320 }),
  })
  .map(({ plan, share, seed }) => ({ plan, counts: seed.slice(0, plan.maxSamples).map((u) => Number(u < share)) }));

describe('somebody on the way through a field', () => {
  it('is told how many clean plants would end it, and those do, and no fewer', () => {
    fc.assert(
      fc.property(anyWalk, ({ plan, counts }) => {
        const at = standpoint(plan, counts);
        const and = (more: number, count: number) => judge(plan, [...counts, ...new Array<number>(more).fill(count)]);
        if (at.cleanToBelow !== null) {
          expect(and(at.cleanToBelow, 0)).toBe('below');
          expect(and(at.cleanToBelow - 1, 0)).toBe('go-on');
        }
        if (at.infestedToAbove !== null) {
          expect(and(at.infestedToAbove, 1)).toBe('above');
          expect(and(at.infestedToAbove - 1, 1)).toBe('go-on');
        }
        expect(at.mostMore).toBe(at.judgement === 'go-on' ? plan.maxSamples - counts.length : 0);
      }),
    );
  });

  it('goes on until the last place of the first lap, however the field looks', () => {
    expect(tassel).toMatchObject({ minSamples: 25, walk: { places: 5, perPlace: 5 } });
    const bad = new Array<number>(24).fill(1);
    expect(standpoint(tassel, bad)).toMatchObject({ judgement: 'go-on', infested: 24, infestedToAbove: 1, cleanToBelow: null });
    expect(standpoint(tassel, [...bad, 0])).toMatchObject({ judgement: 'above', mostMore: 0, infestedToAbove: null });
  });

  it('takes the units of a place, then goes to the next, and round again', () => {
    expect(placeNow(tassel.walk, 0)).toEqual({ lap: 1, place: 1, left: 5 });
    expect(placeNow(tassel.walk, 4)).toEqual({ lap: 1, place: 1, left: 1 });
    expect(placeNow(tassel.walk, 5)).toEqual({ lap: 1, place: 2, left: 5 });
    expect(placeNow(tassel.walk, 25)).toEqual({ lap: 2, place: 1, left: 5 });
  });
});

describe('a sheet of paper', () => {
  it.each(plans)('has a line for each place of each lap, and stops where the plan does: $ruleId', (plan) => {
    const lines = sheetLines(plan);
    expect(lines.reduce((sum, { units }) => sum + units, 0)).toBe(plan.maxSamples);
    expect(lines.length).toBeLessThanOrEqual(30);
    const first = lines.findIndex(({ below, above }) => below !== null || above !== null);
    expect(lines[first]!.samples).toBe(plan.minSamples);
    for (const line of lines.slice(first)) {
      const clean = new Array<number>(line.samples - line.above!).fill(0);
      const dirty = new Array<number>(line.above!).fill(1);
      // Infested units last, so that nothing stopped it before.
      if (line.samples === plan.minSamples) expect(judge(plan, [...clean, ...dirty])).toBe('above');
      expect(line.below === null || line.below < line.above! - 1).toBe(true);
    }
  });
});

describe('the curves of a plan', () => {
  it.each(plans)('fall from surely below to surely above, with most units in between: $ruleId', (plan) => {
    const { curve, atM0, atThreshold, atM1 } = planCurves(plan);
    expect(curve[0]).toMatchObject({ mean: 0, below: 1, above: 0 });
    for (const [i, at] of curve.entries()) {
      expect(at.below + at.above + at.undecided).toBeCloseTo(1, 9);
      if (i > 0) expect(at.below).toBeLessThanOrEqual(curve[i - 1]!.below + 1e-12);
    }
    expect(curve.at(-1)!.above).toBeGreaterThan(0.9);
    expect(atThreshold.averageSamples).toBeGreaterThan(Math.max(atM0.averageSamples, atM1.averageSamples) - 1);
  });
});
