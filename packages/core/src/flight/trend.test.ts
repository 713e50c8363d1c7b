import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, formatDay } from '../base/day.ts';
import { after, season } from '../catch/season.testing.ts';
import type { TrapHistory } from '../catch/types.ts';
import reference from './reference/trend.json' with { type: 'json' };
import { trendOf } from './trend.ts';

interface Written {
  readonly hung: number;
  readonly nights: readonly number[];
  readonly count: readonly number[];
}

function historyOf({ hung, nights, count }: Written, trapId = 'T1'): TrapHistory {
  let since = hung;
  const visits = nights.map((n, i): [number, number] => {
    since += n;
    return [since, count[i]!];
  });
  return season(visits, { trapId, hungOn: formatDay(after(hung)) }).history;
}
const trend = (nights: readonly number[], count: readonly number[]) =>
  trendOf([historyOf({ hung: 0, nights, count })], after(21));

describe('the trend of a flight', () => {
  it.each(reference.seasons)('agrees with quasi-Poisson regression in R: $name', ({ traps, perNight, low, high }) => {
    const found = trendOf(
      traps.map((trap, i) => historyOf(trap, `T${i}`)),
      after(20),
    )!;
    expect(found.perNight).toBeCloseTo(perNight, 9);
    expect(found.low).toBeCloseTo(low, 8);
    expect(found.high).toBeCloseTo(high, 8);
    expect(found.visits).toBe(traps.reduce((sum, { count }) => sum + count.length, 0));
  });

  it('of a flight caught only at the newest visit is fitted with half a moth added to each, as in R', () => {
    const { traps, perNight, low, high } = reference.halfAMothAdded;
    const withoutHalf = traps.map((trap) => ({ ...trap, count: trap.count.map((moths) => moths - 0.5) }));
    const found = trendOf(
      withoutHalf.map((trap) => historyOf(trap)),
      after(20),
    )!;
    expect(found.perNight).toBeCloseTo(perNight, 9);
    expect([found.low, found.high]).toEqual([expect.closeTo(low, 8), expect.closeTo(high, 8)]);
  });

  it('is rising or falling only when the whole interval is', () => {
    expect(trend([3, 4, 3, 4], [5, 12, 20, 60])!.direction).toBe('rising');
    expect(trend([3, 4, 3, 4], [60, 30, 12, 5])!.direction).toBe('falling');
    expect(trend([3, 4, 3, 4], [2, 1, 3, 2])!.direction).toBe('unclear');
    expect(trend([3, 4, 3, 4], [1, 0, 1, 3])!.direction).toBe('unclear');
    expect(trend([3, 4, 3, 4], [0, 0, 0, 3])!.direction).toBe('unclear');
    expect(trend([3, 4, 3, 4], [0, 0, 0, 300])!.direction).toBe('rising');
  });

  it('does not take longer stretches between checks for more moths', () => {
    expect(trend([2, 4, 8], [20, 40, 80])!.perNight).toBeCloseTo(0, 9);
  });

  it('does not take a second trap of a better catching design for a rise', () => {
    const poor = historyOf({ hung: 0, nights: [3, 3, 3], count: [6, 6, 6] }, 'M1');
    const better = historyOf({ hung: 9, nights: [3, 3, 3], count: [60, 60, 60] }, 'W1');
    const found = trendOf([poor, better], after(18))!;
    expect(found.perNight).toBeCloseTo(0, 9);
    expect(found.direction).toBe('unclear');
  });

  it('cannot be told from two visits, from no moths, or from nights without information', () => {
    expect(trend([3, 4], [1, 9])).toBeNull();
    expect(trend([3, 4, 3], [0, 0, 0])).toBeNull();
    const down = season([
      [3, 1],
      [6, null, { condition: 'unfit' }],
      [9, 8],
    ]).history;
    expect(trendOf([down], after(9))).toBeNull();
  });

  it('looks back three weeks and no further', () => {
    const rising = { hung: 0, nights: [5, 5, 5, 5], count: [500, 4, 9, 30] };
    const recent = { hung: 5, nights: [5, 5, 5], count: [4, 9, 30] };
    expect(trendOf([historyOf(rising)], after(26))).toEqual(trendOf([historyOf(recent)], after(26)));
  });

  const moths = fc.oneof(fc.nat(3), fc.nat(200), fc.nat(1_000_000));
  const flights = fc.array(fc.record({ nights: fc.integer({ min: 1, max: 3 }), count: moths }), {
    minLength: 3,
    maxLength: 7,
  });
  const written = (flight: readonly { nights: number; count: number }[]): Written => ({
    hung: 0,
    nights: flight.map(({ nights }) => nights),
    count: flight.map(({ count }) => count),
  });
  const end = (flight: readonly { nights: number }[]) => after(flight.reduce((sum, { nights }) => sum + nights, 0));

  it('run backwards is the same with its sign turned', () => {
    fc.assert(
      fc.property(flights, (flight) => {
        const forwards = trendOf([historyOf(written(flight))], end(flight));
        const backwards = trendOf([historyOf(written([...flight].reverse()))], end(flight));
        if (forwards === null) expect(backwards).toBeNull();
        else {
          expect(backwards!.perNight).toBeCloseTo(-forwards.perNight, 7);
          expect(backwards!.low).toBeCloseTo(-forwards.high, 5);
        }
      }),
    );
  });

  it('is finite, holds its own slope, and does not depend on the order of the traps', () => {
    fc.assert(
      fc.property(flights, flights, (one, two) => {
        const histories = [historyOf(written(one), 'A'), historyOf(written(two), 'B')];
        const on = addDays(after(0), 21);
        const found = trendOf(histories, on);
        if (found === null) return;
        expect(Number.isFinite(found.low) && Number.isFinite(found.high)).toBe(true);
        expect(found.low).toBeLessThan(found.perNight);
        expect(found.high).toBeGreaterThan(found.perNight);
        expect(trendOf([...histories].reverse(), on)!.perNight).toBeCloseTo(found.perNight, 9);
      }),
    );
  });
});
