import type { RateLine } from '@duskwatch/core';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { besideRule, HEIGHT, lineScales, RULE_Y } from './line-scale.ts';
import { week } from './week.fixture.ts';

test('every rule lies at one height, be it 0.02 or 200 a night, and what reaches it lies on or over it', () => {
  for (const rule of [0.02, 0.2, 7, 200]) {
    expect(besideRule(rule, rule)).toBe(RULE_Y);
    expect(besideRule(rule * 1.1, rule)).toBeLessThan(RULE_Y);
    expect(besideRule(rule * 0.9, rule)).toBeGreaterThan(RULE_Y);
  }
});

test('more moths never stand lower, and none leaves the drawing', () => {
  const rate = fc.double({ min: 0, max: 1e6, noNaN: true });
  fc.assert(
    fc.property(rate, rate, fc.double({ min: 0.001, max: 1000, noNaN: true }), (a, b, rule) => {
      const [low, high] = a < b ? [a, b] : [b, a];
      expect(besideRule(high, rule)).toBeLessThanOrEqual(besideRule(low, rule));
      for (const y of [besideRule(low, rule), besideRule(high, rule)]) {
        expect(y).toBeGreaterThanOrEqual(1);
        expect(y).toBeLessThanOrEqual(HEIGHT);
      }
    }),
  );
});

test('a tenth of the rule is seen: a third of the way up to it', () => {
  expect((HEIGHT - 1 - besideRule(0.02, 0.2)) / (HEIGHT - 1 - RULE_Y)).toBeCloseTo(Math.sqrt(0.1), 6);
});

test('lines without a rule share one scale within an insect and design', () => {
  const line = week.fields[0]!.cells[0]!.line!;
  const bare: RateLine = { ...line, thresholdPerNight: null };
  const scale = lineScales(week)(0, bare);
  // 3.1 a night is the most that a mesh cone caught for this insect.
  expect(scale.y(3.1)).toBe(RULE_Y);
  expect(scale.y(3.1 / 4)).toBeCloseTo((RULE_Y + HEIGHT - 1) / 2, 6);
  expect(scale.ground).toBe('M0,29.5H240M0.0,26v3');
});
