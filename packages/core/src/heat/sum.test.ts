import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, day, formatDay } from '../base/day.ts';
import type { DailyExtremes } from '../weather/types.ts';
import { sumHeat } from './sum.ts';
import { heatTrack } from './track.ts';
import type { HeatRule } from './types.ts';

/** Mean less 10 °C: days of a chosen heat are days of that mean. */
const rule: HeatRule = { method: 'simple-average', cutoff: 'none', lower: 10, upper: null, unit: 'C' };
const start = day('2024-06-01');
const on = (n: number) => addDays(start, n - 1);
/** A series from 1 June with the given °C·d on each day. */
const seriesOf = (heats: readonly number[]): DailyExtremes => ({
  sourceId: 'gauge',
  start,
  tminC: Float64Array.from(heats, (heat) => heat + 6),
  tmaxC: Float64Array.from(heats, (heat) => heat + 14),
});
const _ = Number.NaN;

describe('a heat sum', () => {
  it('gives each day’s heat and the running total in the unit of the rule', () => {
    const inF: HeatRule = { ...rule, lower: 50, unit: 'F' };
    const sum = sumHeat(inF, seriesOf([5, 10, 0]), on(1), on(2));
    expect(sum).toEqual({
      ok: true,
      value: {
        unit: 'F',
        rows: [
          { date: '2024-06-01', degreeDays: 9, total: 9, bridged: false },
          { date: '2024-06-02', degreeDays: 18, total: 27, bridged: false },
        ],
        total: 27,
        bridgedDays: 0,
        bridgeMethod: null,
      },
    });
  });

  it('bridges three missing days, marks them, counts them and names the method', () => {
    const sum = sumHeat(rule, seriesOf([2, _, _, _, 10, 1]), on(1), on(6));
    if (!sum.ok) throw new Error('refused');
    expect(sum.value.rows.map((row) => [row.degreeDays, row.bridged])).toEqual([
      [2, false],
      [4, true],
      [6, true],
      [8, true],
      [10, false],
      [1, false],
    ]);
    expect(sum.value).toMatchObject({ total: 31, bridgedDays: 3, bridgeMethod: 'linear-between-neighbours' });
  });

  it('counts only the bridged days within its own span', () => {
    const sum = sumHeat(rule, seriesOf([2, _, _, _, 10]), on(3), on(5));
    expect(sum.ok && sum.value.bridgedDays).toBe(2);
  });

  it('is refused over four missing days, with their dates and what to do', () => {
    const sum = sumHeat(rule, seriesOf([2, _, _, _, _, 10, _, 5]), on(1), on(8));
    expect(sum).toEqual({
      ok: false,
      problems: [
        {
          where: { column: 'date' },
          got: 'no heat for 4 days at gauge, 2024-06-02 to 2024-06-05',
          expected: 'a minimum and a maximum for every day; at most 3 missing days in a row between known days can be bridged',
          fix: 'add the missing days to the weather, or end the sum on 2024-06-01',
        },
      ],
    });
    expect(sumHeat(rule, seriesOf([2, _, _, _, _, 10]), on(1), on(6), { maxBridgeDays: 4 }).ok).toBe(true);
    expect(sumHeat(rule, seriesOf([2, _, 10]), on(1), on(3), { maxBridgeDays: 0 }).ok).toBe(false);
  });

  it('is refused past either end of the data, one day as well as many', () => {
    const refusal = (from: number, to: number) => {
      const sum = sumHeat(rule, seriesOf([1, 2, _]), on(from), on(to));
      return sum.ok ? [] : sum.problems.map((problem) => problem.got);
    };
    expect(refusal(0, 2)).toEqual(['no heat for 1 day at gauge, 2024-05-31 to 2024-05-31']);
    expect(refusal(1, 3)).toEqual(['no heat for 1 day at gauge, 2024-06-03 to 2024-06-03']);
    expect(refusal(-1, 4)).toHaveLength(2);
    expect(refusal(2, 1)).toEqual(['2024-06-02 to 2024-06-01']);
  });

  it('of a double method ends the day before the last minimum', () => {
    const double: HeatRule = { ...rule, method: 'double-sine' };
    expect(sumHeat(double, seriesOf([1, 2, 3]), on(1), on(2)).ok).toBe(true);
    const refused = sumHeat(double, seriesOf([1, 2, 3]), on(1), on(3));
    expect(refused.ok ? '' : refused.problems[0]?.expected).toContain('each with the next day’s minimum');
  });
});

describe('a heat track', () => {
  const track = heatTrack(rule, seriesOf([1, 2, _, 4, 5, _, _, _, _, 6, 0, 7, _]));

  it('knows its last known day, and how many days stay missing', () => {
    expect(formatDay(track.end!)).toBe('2024-06-12');
    expect(track.missingDays).toBe(5);
    expect(heatTrack(rule, seriesOf([_, _])).end).toBeNull();
    expect(heatTrack(rule, seriesOf([])).end).toBeNull();
    expect(heatTrack({ ...rule, method: 'double-triangle' }, seriesOf([1, 2, 3])).end).toBe(on(2));
  });

  it('totals spans, and names the first gap where it cannot', () => {
    expect(track.total(on(1), on(5))).toEqual({ ok: true, degreeDays: 15, bridgedDays: 1, filledDays: 0 });
    expect(track.total(on(4), on(5))).toEqual({ ok: true, degreeDays: 9, bridgedDays: 0, filledDays: 0 });
    expect(track.total(on(4), on(3))).toEqual({ ok: true, degreeDays: 0, bridgedDays: 0, filledDays: 0 });
    expect(track.total(on(4), on(12))).toEqual({ ok: false, gap: { from: on(6), to: on(9) } });
    expect(track.total(on(4), on(7))).toEqual({ ok: false, gap: { from: on(6), to: on(7) } });
    expect(track.total(on(-2), on(3))).toEqual({ ok: false, gap: { from: on(-2), to: on(0) } });
    expect(track.total(on(10), on(20))).toEqual({ ok: false, gap: { from: on(13), to: on(20) } });
    expect(track.total(on(20), on(21))).toEqual({ ok: false, gap: { from: on(20), to: on(21) } });
  });

  it('finds the day on which a target is reached, and none across a gap', () => {
    expect(track.dayReaching(on(1), 3)).toBe(on(2));
    expect(track.dayReaching(on(1), 3.5)).toBe(on(3));
    expect(track.dayReaching(on(1), 16)).toBeNull();
    expect(track.dayReaching(on(6), 1)).toBeNull();
    expect(track.dayReaching(on(10), 13)).toBe(on(12));
    expect(track.dayReaching(on(10), 14)).toBeNull();
    expect(track.dayReaching(on(0), 1)).toBeNull();
  });

  it('agrees with the sum row by row, and reaches a target no day too late or early', () => {
    const heats = fc.array(fc.option(fc.integer({ min: 0, max: 20 }), { nil: _, freq: 4 }), { minLength: 1, maxLength: 40 });
    fc.assert(
      fc.property(heats, fc.nat(40), fc.nat(40), fc.integer({ min: 1, max: 200 }), (days, a, length, target) => {
        const series = seriesOf(days);
        const any = heatTrack(rule, series);
        const [from, to] = [on(a), on(a + length)];
        const sum = sumHeat(rule, series, from, to);
        const total = any.total(from, to);
        expect(total.ok).toBe(sum.ok);
        if (sum.ok && total.ok) {
          expect(total.degreeDays).toBeCloseTo(sum.value.total, 9);
          expect(total.bridgedDays).toBe(sum.value.bridgedDays);
        }
        const reached = any.dayReaching(from, target);
        if (reached !== null) {
          const before = any.total(from, addDays(reached, -1));
          const through = any.total(from, reached);
          expect(through.ok && through.degreeDays).toBeGreaterThanOrEqual(target - 1e-6);
          expect(before.ok && before.degreeDays).toBeLessThan(target);
        } else if (total.ok) expect(total.degreeDays).toBeLessThan(target);
      }),
    );
  });
});
