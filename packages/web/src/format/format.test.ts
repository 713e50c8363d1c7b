import { degreeDaysFrom } from '@duskwatch/core';
import { describe, expect, test } from 'vitest';
import { daySpan, dayText, dayTextFrom, longDay, shiftDay, shortDay } from './day.ts';
import { intervalText } from './number.ts';
import { heatText } from './temperature.ts';

describe('days', () => {
  test('carry their weekday, whatever the zone of the reader', () => {
    expect(dayText('2025-07-13')).toBe('Sun 13 July');
    expect(shortDay('2025-07-13')).toBe('Sun 13 Jul');
    expect(longDay('2025-07-12')).toBe('Saturday 12 July 2025');
  });

  test('name their year only when it is another one', () => {
    expect(dayTextFrom('2025-09-30', '2026-03-01')).toBe('Tue 30 September 2025');
    expect(dayTextFrom('2026-02-27', '2026-03-01')).toBe('Fri 27 February');
  });

  test('name the month once in a span within it', () => {
    expect(daySpan('2025-07-13', '2025-07-16')).toBe('Sun 13 – Wed 16 Jul');
    expect(daySpan('2025-07-30', '2025-08-02')).toBe('Wed 30 Jul – Sat 2 Aug');
    expect(daySpan('2025-07-13', '2025-07-13')).toBe('Sun 13 Jul');
  });

  test('step over the end of February', () => {
    expect(shiftDay('2024-02-28', 1)).toBe('2024-02-29');
    expect(shiftDay('2025-03-01', -1)).toBe('2025-02-28');
  });
});

test('an interval is written with the figures of its rate', () => {
  expect(intervalText(0.2, 4.31)).toBe('0.2–4.3');
});

test('a sum of heat scales by 1.8 between units, with no offset', () => {
  expect(degreeDaysFrom(1800, 'F', 'C')).toBeCloseTo(1000, 9);
  expect(degreeDaysFrom(1000, 'C', 'F')).toBeCloseTo(1800, 9);
  expect(heatText(1204.4, 'F', 'F')).toBe('1,204 °F·d');
  expect(heatText(900, 'F', 'C')).toBe('500 °C·d');
});
