import { day } from '@duskwatch/core';
import { expect, test } from 'vitest';
import { isoOf } from '../../format/day.ts';
import { monthTicks, weekTicks } from './axis.ts';

test('month ticks stand on the first of each month, over a new year too', () => {
  const ticks = monthTicks(day('2024-11-15'), day('2025-02-01'));
  expect(ticks.map((tick) => [isoOf(tick.at), tick.label])).toEqual([
    ['2024-12-01', 'Dec'],
    ['2025-01-01', 'Jan'],
    ['2025-02-01', 'Feb'],
  ]);
});

test('a month begun on the last days of the axis keeps its tick and loses its label', () => {
  expect(monthTicks(day('2025-06-20'), day('2025-07-03'), 7)).toEqual([{ at: day('2025-07-01'), label: '' }]);
});

test('week ticks are Mondays', () => {
  const ticks = weekTicks(day('2025-07-01'), day('2025-07-21')).map(isoOf);
  expect(ticks).toEqual(['2025-07-07', '2025-07-14', '2025-07-21']);
  expect(weekTicks(day('2025-07-07'), day('2025-07-07')).map(isoOf)).toEqual(['2025-07-07']);
});
