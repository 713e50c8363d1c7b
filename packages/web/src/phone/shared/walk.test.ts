import { catalogue, countingPlan, planFor, type ScoutingPlan } from '@duskwatch/core';
import { expect, test } from 'vitest';
import { progressOf, sampleOf, type Walk, withoutLast, withUnit } from './walk.ts';

const planOf = (id: string): ScoutingPlan => {
  const plan = planFor(catalogue.rules.find((rule) => rule.id === id)!);
  if (!plan.ok) throw new Error('refused');
  return plan.value;
};
const begun = (part: Partial<Walk>): Walk => ({
  id: 'F1|ostrinia-nubilalis',
  person: 'p',
  fieldId: 'F1',
  insect: 'ostrinia-nubilalis',
  startedOn: '2026-07-15',
  plan: null,
  counting: null,
  counts: [],
  stage: null,
  ...part,
});
const walked = (walk: Walk, counts: readonly number[]) => counts.reduce(withUnit, walk);
const times = (n: number, count: number) => new Array<number>(n).fill(count);

test('a walk that has ended takes no further plant, and taking the last one back opens it again', () => {
  const ended = walked(begun({ plan: planOf('sweet-corn-corn-borer-tassel') }), times(40, 1));
  expect(ended.counts).toHaveLength(25);
  expect(progressOf(ended)).toMatchObject({ ended: true, at: { judgement: 'above' } });
  expect(progressOf(withoutLast(ended))).toMatchObject({ ended: false, at: { mostMore: 76 } });
});

test('plants infested or not become a sample without a total; egg masses one with it', () => {
  const plants = walked(begun({ plan: planOf('sweet-corn-corn-borer-tassel') }), [1, 0, 0, 1]);
  expect(sampleOf(plants)).toMatchObject({ kind: 'plants', unitsExamined: 4, unitsInfested: 2, totalCount: null });
  expect(sampleOf(plants).byPlace).toEqual(['2/4']);
  const masses = walked(begun({ plan: planOf('potato-corn-borer-egg-masses') }), [3, 0, 1]);
  expect(sampleOf(masses)).toMatchObject({ kind: 'plants', unitsExamined: 3, unitsInfested: 2, totalCount: 4 });
});

test('a walk writes down what each place held, in the order walked, the last place as far as it was seen', () => {
  const walk = walked(begun({ plan: planOf('sweet-corn-corn-borer-tassel') }), [1, 0, 0, 1, 0, 0, 0, 0, 0, 0, 1, 0]);
  expect(sampleOf(walk).byPlace).toEqual(['2/5', '0/5', '1/2']);
});

test('where no figure is published the share is told with its interval, and never an answer', () => {
  const walk = walked(begun({ counting: countingPlan('agrotis-ipsilon') }), [...times(50, 0), ...times(70, 1)]);
  expect(walk.counts).toHaveLength(100);
  const { at, ended, share } = progressOf(walk);
  expect(ended).toBe(true);
  expect(at.judgement).toBe('undecided-at-limit');
  expect(share!.share).toBe(0.5);
  expect(share!.low).toBeLessThan(0.5);
});
