import type { RateLine } from '@duskwatch/core';
import { expect, test } from 'vitest';
import { rateScale, ticksOf } from './rate-scale.ts';

const line = (rates: readonly (number | null)[], thresholdPerNight: number | null): RateLine => ({
  design: 'mesh-cone',
  from: '2026-07-01',
  to: '2026-07-10',
  points: rates.map((perNight) => ({ from: '2026-07-01', to: '2026-07-10', perNight, low: 0, high: 500 })),
  thresholdPerNight,
});
const place = { top: 20, bottom: 140 };

test.each([
  [0.02, 0.2],
  [0.2, 10],
  [200, 0.2],
  [1, 7],
])('a catch of %s and a rule of %s a night are both seen, and apart', (rate, rule) => {
  const y = rateScale(line([rate, null], rule), place);
  const [low, high] = [y(Math.min(rate, rule)), y(Math.max(rate, rule))];
  expect(high).toBeGreaterThanOrEqual(place.top);
  expect(140 - low).toBeGreaterThan(2);
  expect(low - high).toBeGreaterThan(10);
});

test('an interval does not press the rates to the ground: it runs off at the top', () => {
  const y = rateScale(line([1], 0.2), place);
  expect(y(500)).toBe(place.top);
  expect(y(1)).toBeLessThan(50);
});

test.each([0.1, 1, 25, 300])('figures on an axis to %s keep apart', (most) => {
  const y = rateScale(line([most], null), place);
  const ticks = ticksOf(y, 22);
  expect(ticks[0]).toBe(0);
  expect(ticks.length).toBeGreaterThan(2);
  for (const [index, tick] of ticks.entries()) if (index > 0) expect(y(ticks[index - 1]!) - y(tick)).toBeGreaterThanOrEqual(22);
});
