import type { RatePoint } from '@duskwatch/core';
import { describe, expect, test } from 'vitest';
import { bandPath, stepPath, stepVertices } from './steps.ts';

const point = (from: string, to: string, perNight: number | null): RatePoint => ({
  from,
  to,
  perNight,
  low: perNight === null ? null : perNight / 2,
  high: perNight === null ? null : perNight * 2,
});
const x = (day: number) => (day - 20_000) * 10;
const y = (rate: number) => 100 - rate * 10;
// 2024-10-04 is day 20000 since 1970-01-01.
const points = [
  point('2024-10-04', '2024-10-06', 2),
  point('2024-10-06', '2024-10-07', 4),
  point('2024-10-07', '2024-10-10', null),
  point('2024-10-10', '2024-10-12', 1),
];

describe('the season line', () => {
  test('holds a rate over all of its nights, and steps at the visit', () => {
    expect(stepPath(stepVertices(points.slice(0, 2)), x, y)).toBe('M0,80L20,80L20,60L30,60L30,60');
  });

  test('lifts the pen over nights without a fit trap, and never falls to zero there', () => {
    const path = stepPath(stepVertices(points), x, y);
    expect(path.match(/M/g)).toHaveLength(2);
    expect(path).toContain('M60,90');
    expect(path).not.toContain('100');
  });

  test('lifts the pen where the nights between two points are missing altogether', () => {
    const apart = [point('2024-10-04', '2024-10-05', 1), point('2024-10-08', '2024-10-09', 1)];
    expect(stepPath(stepVertices(apart), x, y)).toBe('M0,90L10,90L10,90M40,90L50,90L50,90');
  });

  test('draws a band only over nights with an interval', () => {
    expect(bandPath(stepVertices(points), x, y).match(/M/g)).toHaveLength(2);
  });

  test('draws nothing for a season without a fit check', () => {
    expect(stepPath(stepVertices([point('2024-10-04', '2024-10-09', null)]), x, y)).toBe('');
  });
});
