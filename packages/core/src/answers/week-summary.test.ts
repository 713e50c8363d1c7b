import { expect, test } from 'vitest';
import type { Verb } from '../advice/types.ts';
import type { DueField, WeekField, WeekView } from './week-schema.ts';
import { needsNothing, soonestCheck, weekSummary } from './week-summary.ts';

const field = (farm: string, ...said: readonly (readonly [Verb, string | null])[]): WeekField => ({
  fieldId: farm,
  name: farm,
  farm,
  crop: 'sweet-corn',
  growthHabit: null,
  stage: null,
  cells: said.map(([verb, by]) => ({
    advice: { verb, by, dueSince: null, rate: null, interval: null, confidence: null, reason: null },
    line: null,
  })),
});
const decision = (by: string, dueSince: string | null): DueField => ({
  fieldId: 'a',
  name: 'a',
  farm: 'a',
  insect: 'helicoverpa-zea',
  verb: 'decide',
  by,
  dueSince,
});
const week = (decisions: DueField[], fields: WeekField[]): WeekView => ({
  program: { name: 'Small', invented: true },
  on: '2025-07-12',
  countsTo: null,
  weatherTo: null,
  insects: [],
  due: { decisions, scouting: [], checks: [], lures: [] },
  fields,
});

test('a decision due today is not late, and one since yesterday is', () => {
  const said = weekSummary(
    week([decision('2025-07-12', '2025-07-11'), decision('2025-07-12', '2025-07-12'), decision('2025-07-14', null)], []),
  );
  expect(said).toMatchObject({ lateDecisions: 1, moreDecisions: 2, moreBy: '2025-07-14' });
});

test('a week without decisions has no day by which they are due', () => {
  expect(weekSummary(week([], []))).toMatchObject({ lateDecisions: 0, moreDecisions: 0, moreBy: null, fields: 0, farms: 0 });
});

test('a field needs nothing while all is watched or away, and a covered or blind one is still shown', () => {
  expect(needsNothing(field('a', ['watch', '2025-07-15'], ['none', null]))).toBe(true);
  for (const verb of ['decide', 'scout', 'blind', 'covered'] as const)
    expect(needsNothing(field('a', ['watch', '2025-07-15'], [verb, null]))).toBe(false);
});

test('fields that need nothing are counted with their farms, and the soonest check among them is known', () => {
  const fields = [field('a', ['watch', '2025-07-15']), field('a', ['blind', null]), field('b', ['watch', '2025-07-13'])];
  expect(weekSummary(week([], fields))).toMatchObject({ fields: 3, farms: 2, quiet: 2, blind: 1 });
  expect(soonestCheck(fields)).toBe('2025-07-13');
  expect(soonestCheck([field('c', ['none', null])])).toBe(null);
});
