import { describe, expect, it } from 'vitest';
import { addDays, day, dayOf } from '../base/day.ts';
import { monthlyMeans, normalsFromRecords, normalsOn } from './normals.ts';

const months = (tminC: (month: number) => number) =>
  Array.from({ length: 12 }, (_, i) => ({ sourceId: 'airport', month: i + 1, tminC: tminC(i + 1), tmaxC: tminC(i + 1) + 10 }));

describe('the normals of a source', () => {
  it('are used once all twelve months are there, in any order, and not before', () => {
    const all = months((month) => month);
    expect(normalsFromRecords([...all].reverse()).get('airport')).toEqual({
      tminC: [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12],
      tmaxC: [11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22],
    });
    expect(normalsFromRecords(all.slice(1)).size).toBe(0);
    expect(normalsFromRecords(all.map((each) => (each.month === 7 ? { ...each, tmaxC: each.tminC - 1 } : each))).size).toBe(0);
    expect(normalsFromRecords([]).size).toBe(0);
  });

  it('stand in the middle of their months, with straight lines between, over the turn of the year too', () => {
    const normals = normalsFromRecords(months((month) => month)).get('airport')!;
    // Noon of 16 January is the middle of 31 days; 30 days of June have it at the end of the 15th.
    expect(normalsOn(normals, day('2025-01-16')).tminC).toBeCloseTo(1, 9);
    expect((normalsOn(normals, day('2025-06-15')).tminC + normalsOn(normals, day('2025-06-16')).tminC) / 2).toBeCloseTo(6, 2);
    const [december, january] = [normalsOn(normals, day('2025-12-31')).tminC, normalsOn(normals, day('2026-01-01')).tminC];
    expect(december).toBeGreaterThan(january);
    expect(december).toBeLessThan(12);
    expect(january).toBeGreaterThan(1);
    for (let on = dayOf(2024, 1, 1); on < dayOf(2025, 1, 1); on = addDays(on, 1)) {
      const { tminC, tmaxC } = normalsOn(normals, on);
      expect(tmaxC - tminC).toBeCloseTo(10, 9);
    }
  });

  it('are told from days of some years, leaving out those that are not known', () => {
    const days = 730;
    const series = {
      sourceId: 'airport',
      start: dayOf(2023, 1, 1),
      tminC: Float64Array.from({ length: days }, (_, i) => (i < 365 ? 4 : i % 3 === 0 ? Number.NaN : 8)),
      tmaxC: new Float64Array(days).fill(20),
    };
    expect(monthlyMeans(series, (year) => year === 2023)?.tminC).toEqual(Array(12).fill(4));
    expect(monthlyMeans(series, (year) => year === 2024)?.tminC).toEqual(Array(12).fill(8));
    expect(monthlyMeans(series, (year) => year === 2022)).toBeNull();
  });
});
