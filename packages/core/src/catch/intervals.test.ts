import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CheckRecord } from '../records/schema.ts';
import { catchIntervals } from './intervals.ts';
import { after, check, HUNG, lure, season, trap } from './season.testing.ts';
import { sumIntervals } from './sum.ts';

const counts = (visits: Parameters<typeof season>[0]) => season(visits).history.intervals.map(({ count }) => count);
const unfit = { condition: 'unfit' } as const;
const left = { emptied: false } as const;

describe('the nights a check covers', () => {
  it('the first night of a season is the night of the hanging', () => {
    const [first, second] = season([
      [3, 6],
      [7, 8],
    ]).history.intervals;
    expect(first).toMatchObject({ from: HUNG, to: after(3), nights: 3, count: 6 });
    expect(second).toMatchObject({ from: after(3), to: after(7), nights: 4, count: 8 });
  });

  it('a trap that was down for three nights adds no zero nights', () => {
    const { intervals } = season([
      [2, 4],
      [5, null, unfit],
      [7, 6],
    ]).history;
    expect(intervals.map(({ nights, count, noInformation }) => [nights, count, noInformation])).toEqual([
      [2, 4, null],
      [3, null, 'unfit'],
      [2, 6, null],
    ]);
    expect(sumIntervals(intervals)).toEqual({ count: 10, trapNights: 4, sumSquaredNights: 8, visits: 2 });
  });

  it('a count taken in an unfit trap is not used, not even a zero', () => {
    expect(counts([[4, 0, unfit]])).toEqual([null]);
  });

  it('a doubtful check keeps its count and its condition', () => {
    expect(season([[3, 2, { condition: 'doubtful' }]]).history.intervals[0]).toMatchObject({ count: 2, condition: 'doubtful' });
  });

  it('a check on the day of hanging covers no night', () => {
    expect(counts([[0, 0]])).toEqual([]);
    expect(
      counts([
        [0, 2, left],
        [3, 7],
      ]),
    ).toEqual([5]);
  });

  it('what was checked later was not known on an earlier day', () => {
    const checks = [check(3, 1), check(7, 40)];
    expect(catchIntervals(trap(), checks, [], after(6)).intervals).toHaveLength(1);
    expect(catchIntervals(trap(), checks, [], after(7)).intervals).toHaveLength(2);
  });

  it('checks before the hanging or after the taking down are passed over', () => {
    const checks = [check(-2, 5), check(4, 3), check(9, 8)];
    const history = catchIntervals(trap({ takenDownOn: '2025-06-05' }), checks, [], after(30));
    expect(history.intervals.map(({ to, count }) => [to, count])).toEqual([[after(4), 3]]);
  });

  it('the moths of another trap are never counted', () => {
    expect(catchIntervals(trap(), [check(3, 9, { trapId: 'T2' })], [], after(9)).intervals).toEqual([]);
  });
});

describe('moths left in the trap', () => {
  it('are taken off the next count, through any chain of visits that left them', () => {
    expect(
      counts([
        [2, 5, left],
        [4, 8, left],
        [6, 8, left],
        [8, 11],
        [10, 4],
      ]),
    ).toEqual([5, 3, 0, 3, 4]);
  });

  it('and then fewer found is a question to the scout, and those nights say nothing', () => {
    const { intervals, questions } = season([
      [2, 5, left],
      [4, 3, left],
      [6, 7],
    ]).history;
    expect(intervals.map(({ count, noInformation }) => [count, noInformation])).toEqual([
      [5, null],
      [null, 'count-went-down'],
      [4, null],
    ]);
    expect(questions).toEqual([{ kind: 'count-went-down', trapId: 'T1', on: after(4), got: 3, before: 5 }]);
  });

  it('are lost with a trap found down, and the count restarts at zero once that visit emptied it', () => {
    expect(
      counts([
        [2, 5, left],
        [4, null, unfit],
        [6, 3],
      ]),
    ).toEqual([5, null, 3]);
  });

  it('without a count make the next count unusable', () => {
    const { intervals } = season([
      [2, null, { ...unfit, ...left }],
      [4, 6, left],
      [6, 9],
    ]).history;
    expect(intervals.map(({ count, noInformation }) => [count, noInformation])).toEqual([
      [null, 'unfit'],
      [null, 'left-uncounted'],
      [3, null],
    ]);
  });

  it('but counted in an unfit trap are taken off the next count', () => {
    expect(
      counts([
        [2, 4, { ...unfit, ...left }],
        [4, 6],
      ]),
    ).toEqual([null, 2]);
  });

  it('other species follow the same arithmetic, apart, and not knowing theirs does not spoil the target', () => {
    const { intervals } = season([
      [2, 5, { ...left, otherCount: 10 }],
      [4, 6, { otherCount: 14 }],
      [6, 1, { otherCount: null }],
      [8, 2, { otherCount: 3 }],
    ]).history;
    expect(intervals.map(({ count, others }) => [count, others])).toEqual([
      [5, 10],
      [1, 4],
      [1, null],
      [2, 3],
    ]);
  });
});

describe('two visits on one day', () => {
  const twice = (first: Partial<CheckRecord>, second: Partial<CheckRecord>) =>
    season([
      [3, 4, first],
      [3, 6, { visit: 2, ...second }],
      [5, 7],
    ]).history;

  it('are one interval: counts add when the first emptied the trap', () => {
    expect(twice({ otherCount: 1 }, { otherCount: 2 }).intervals).toMatchObject([
      { nights: 3, count: 10, others: 3 },
      { nights: 2, count: 7 },
    ]);
  });

  it('and the second holds the first when the moths were left', () => {
    expect(twice(left, {}).intervals).toMatchObject([{ count: 6 }, { count: 7 }]);
  });

  it('a second count below what the first left is a question', () => {
    const { intervals, questions } = twice({ targetCount: 9, ...left }, {});
    expect(intervals).toMatchObject([{ count: null, noInformation: 'count-went-down' }, { count: 7 }]);
    expect(questions).toMatchObject([{ on: after(3), got: 6, before: 9 }]);
  });

  it('first found down, put right and then found fit: the nights stay unknown', () => {
    expect(twice(unfit, {}).intervals).toMatchObject([{ count: null, noInformation: 'unfit' }, { count: 7 }]);
  });

  it('first found fit, later found down: the first saw the nights, and its count stands', () => {
    expect(twice({}, { ...unfit, targetCount: null }).intervals).toMatchObject([{ count: 4, condition: 'fit' }, { count: 7 }]);
  });
});

describe('the age of the lure', () => {
  const ages = (lures: Parameters<typeof catchIntervals>[2], visits: readonly number[]) =>
    catchIntervals(
      trap(),
      visits.map((nights) => check(nights, 1)),
      lures,
      after(365),
    ).intervals.map(({ lureAgeDays, lureLifeDays, lurePastLife }) => [lureAgeDays, lureLifeDays, lurePastLife]);

  it('a lure hung at a visit is for the nights after it', () => {
    expect(ages([lure(14, 21), lure(0, 14)], [7, 14, 21])).toEqual([
      [7, 14, false],
      [14, 14, false],
      [7, 21, false],
    ]);
  });

  it('a lure is past its life from the day after its last', () => {
    expect(ages([lure(0, 14)], [14, 15])).toEqual([
      [14, 14, false],
      [15, 14, true],
    ]);
  });

  it('nobody knows the age of a lure that nobody wrote down, nor the end of one without a stated life', () => {
    expect(ages([lure(5, null)], [3, 9])).toEqual([
      [null, null, null],
      [4, null, null],
    ]);
  });
});

describe('whatever a season brought', () => {
  const visit = fc.record({
    gap: fc.integer({ min: 0, max: 5 }),
    caught: fc.integer({ min: 0, max: 30 }),
    condition: fc.constantFrom('fit', 'fit', 'doubtful', 'unfit' as const),
    emptied: fc.boolean(),
  });
  const visits = fc.array(visit, { maxLength: 25 });

  /** Checks as written at a trap into which `caught` moths flew before each visit. */
  function write(events: readonly (typeof visit extends fc.Arbitrary<infer V> ? V : never)[]): CheckRecord[] {
    let [nights, inTrap, sameDay] = [0, 0, 1];
    return events.map(({ gap, caught, condition, emptied }) => {
      nights += gap;
      sameDay = gap === 0 ? sameDay + 1 : 1;
      inTrap += caught;
      const record = check(nights, inTrap, { condition, emptied, visit: sameDay });
      if (emptied) inTrap = 0;
      return record;
    });
  }
  const read = (checks: readonly CheckRecord[]) => catchIntervals(trap(), checks, [lure(0, 14)], after(365));

  it('every moth that flew into a fit trap after its first night is counted once', () => {
    fc.assert(
      fc.property(visits, (events) => {
        const fit = events.map((event, i) => ({
          ...event,
          condition: 'fit' as const,
          gap: i === 0 ? Math.max(1, event.gap) : event.gap,
        }));
        const flown = fit.reduce((sum, { caught }) => sum + caught, 0);
        expect(sumIntervals(read(write(fit)).intervals).count).toBe(flown);
      }),
    );
  });

  it('the intervals follow one another without gap or overlap', () => {
    fc.assert(
      fc.property(visits, (events) => {
        let from = HUNG;
        for (const interval of read(write(events)).intervals) {
          expect(interval.from).toBe(from);
          expect(interval.nights).toBe(interval.to - interval.from);
          expect(interval.nights).toBeGreaterThan(0);
          expect(interval.count === null).toBe(interval.noInformation !== null);
          from = interval.to;
        }
      }),
    );
  });

  it('the order in which checks were typed in does not matter', () => {
    fc.assert(
      fc.property(
        visits.chain((events) => {
          const checks = write(events);
          return fc.tuple(fc.constant(checks), fc.shuffledSubarray(checks, { minLength: checks.length }));
        }),
        ([checks, shuffled]) => void expect(read(shuffled)).toEqual(read(checks)),
      ),
    );
  });

  it('finding the trap down at the end changes nothing that was known before', () => {
    fc.assert(
      fc.property(visits, fc.integer({ min: 1, max: 20 }), (events, nights) => {
        const checks = write(events);
        const end = read(checks).intervals.at(-1)?.to ?? HUNG;
        const down = check(end - HUNG + nights, 0, unfit);
        expect(sumIntervals(read([...checks, down]).intervals)).toEqual(sumIntervals(read(checks).intervals));
      }),
    );
  });
});
