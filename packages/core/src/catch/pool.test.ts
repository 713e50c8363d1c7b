import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatDay } from '../base/day.ts';
import type { TrapDesign } from '../records/schema.ts';
import { catchIntervals } from './intervals.ts';
import { type PoolOptions, poolNewest } from './pool.ts';
import { after, HUNG, season, trap } from './season.testing.ts';

const unfit = { condition: 'unfit' } as const;
const options = (over: Partial<PoolOptions> = {}): PoolOptions => ({
  on: after(21),
  windowNights: 1,
  maxAgeDays: 8,
  k: 2,
  ...over,
});
const onlyRate = (traps: Parameters<typeof poolNewest>[0], over?: Partial<PoolOptions>) =>
  poolNewest(traps, options(over)).designs[0]!.rate;

describe('the newest nights of the traps that inform a field', () => {
  const weekly = season([
    [7, 70],
    [14, 14],
    [18, 8],
    [21, 3],
  ]);

  it('a rule per night reads the newest interval alone', () => {
    expect(onlyRate([weekly])).toMatchObject({ count: 3, trapNights: 3, perNight: 1, model: 'negative-binomial', k: 2 });
  });

  it('a rule per week reads whole intervals until a week is covered', () => {
    expect(onlyRate([weekly], { windowNights: 7 })).toMatchObject({ count: 11, trapNights: 7, visits: 2 });
    expect(onlyRate([weekly], { windowNights: 8 })).toMatchObject({ count: 25, trapNights: 14, visits: 3 });
  });

  it('two traps of one design are one rate over all their trap-nights', () => {
    const other = season([[19, 20]], { trapId: 'T2' });
    expect(onlyRate([weekly, other])).toMatchObject({ count: 23, trapNights: 22, sumSquaredNights: 9 + 361, visits: 2 });
  });

  it('two designs are never one rate', () => {
    const wire = season([[21, 42]], { trapId: 'W1', design: 'wire-cone' });
    const { designs } = poolNewest([wire, weekly], options());
    expect(designs.map(({ design, rate }) => [design, rate.perNight])).toEqual([
      ['mesh-cone', 1],
      ['wire-cone', 2],
    ]);
  });

  it('the intervals behind a rate come with it, newest first', () => {
    const [design] = poolNewest([weekly], options({ windowNights: 7 })).designs;
    expect(design!.intervals.map(({ to }) => to)).toEqual([after(21), after(18)]);
    expect(design!.newest).toBe(after(21));
  });

  it('a doubtful check is used and can be seen', () => {
    const [design] = poolNewest([season([[20, 4, { condition: 'doubtful' }]])], options()).designs;
    expect(design!.intervals[0]).toMatchObject({ condition: 'doubtful', count: 4 });
  });

  it('nights without information end the run: what lies before them is another week', () => {
    const broken = season([
      [12, 50],
      [17, null, unfit],
      [21, 4],
    ]);
    expect(onlyRate([broken], { windowNights: 7 })).toMatchObject({ count: 4, trapNights: 4 });
  });
});

describe('a trap that cannot be used', () => {
  const why = (season: Parameters<typeof poolNewest>[0][number], over?: Partial<PoolOptions>) => {
    const { designs, unusable } = poolNewest([season], options(over));
    expect(designs).toEqual([]);
    return unusable[0];
  };
  const never = (over = {}) => season([], over);

  it('found down at its newest visit has been blind since the visit before', () => {
    const down = season([
      [14, 3],
      [18, null, unfit],
    ]);
    expect(why(down)).toMatchObject({ why: 'unfit', since: after(14), nightsWithoutSight: 7 });
  });

  it('found down twice running has been blind since the last visit that told something', () => {
    const down = season([
      [11, 3],
      [15, null, unfit],
      [18, null, unfit],
    ]);
    expect(why(down)).toMatchObject({ why: 'unfit', since: after(11), nightsWithoutSight: 10 });
  });

  it('with a count that went down waits for the scout', () => {
    const question = season([
      [14, 9, { emptied: false }],
      [18, 2],
    ]);
    expect(why(question)).toMatchObject({ why: 'count-went-down', since: after(14) });
  });

  it('is overdue the day after the longest gap allowed', () => {
    const checked = season([[12, 5]]);
    expect(why(checked, { on: after(21) })).toMatchObject({ why: 'overdue', since: after(12), nightsWithoutSight: 9 });
    expect(poolNewest([checked], options({ on: after(20) })).unusable).toEqual([]);
  });

  it('has never been checked since it was hung', () => {
    expect(why(never())).toMatchObject({ why: 'never-checked', since: HUNG, nightsWithoutSight: 21 });
    expect(why(never(), { on: after(2) })).toMatchObject({ why: 'never-checked', nightsWithoutSight: 2 });
  });

  it('is not hung yet, or was taken down', () => {
    expect(why(never({ hungOn: formatDay(after(22)) }))).toMatchObject({
      why: 'not-hung',
      since: null,
      nightsWithoutSight: null,
    });
    const down = season([[18, 3]], { takenDownOn: formatDay(after(20)) });
    expect(why(down)).toMatchObject({ why: 'taken-down', since: after(18), nightsWithoutSight: 3 });
    expect(poolNewest([down], options({ on: after(19) })).unusable).toEqual([]);
  });

  it('is named beside the rate of its own design', () => {
    const traps = [season([[20, 1]]), never({ trapId: 'T2' }), never({ trapId: 'W1', design: 'wire-cone' })];
    const { designs, unusable } = poolNewest(traps, options());
    expect(designs[0]!.unusable.map(({ trapId }) => trapId)).toEqual(['T2']);
    expect(unusable.map(({ trapId }) => trapId)).toEqual(['T2', 'W1']);
  });
});

describe('whatever the traps', () => {
  const visits = fc.array(fc.tuple(fc.integer({ min: 1, max: 21 }), fc.integer({ min: 0, max: 40 }), fc.boolean()), {
    maxLength: 6,
  });
  const designs = fc.constantFrom<TrapDesign>('mesh-cone', 'wire-cone', 'bucket');
  const traps = fc.array(fc.tuple(visits, designs), { maxLength: 5 }).map((all) =>
    all.map(([checks, design], i) => {
      const days = [...new Map(checks.map((visit) => [visit[0], visit])).values()];
      return season(
        days.map(([nights, moths, fit]) => [nights, moths, { condition: fit ? 'fit' : 'unfit' }] as const),
        { trapId: `T${i}`, design },
      );
    }),
  );

  it('every trap is either behind a rate or named as unusable, never both', () => {
    fc.assert(
      fc.property(traps, (all) => {
        const { designs, unusable } = poolNewest(all, options({ windowNights: 7 }));
        const used = designs.flatMap(({ intervals }) => intervals.map(({ trapId }) => trapId));
        const named = [...new Set(used), ...unusable.map(({ trapId }) => trapId)].sort();
        expect(named).toEqual(all.map(({ trap }) => trap.trapId).sort());
      }),
    );
  });

  it('the order of the traps does not matter', () => {
    fc.assert(
      fc.property(traps, (all) => {
        expect(poolNewest([...all].reverse(), options())).toEqual(poolNewest(all, options()));
      }),
    );
  });

  it('a visit that finds a trap down never lowers a rate by zero nights', () => {
    fc.assert(
      fc.property(traps, (all) => {
        const before = poolNewest(all, options({ windowNights: 7 }));
        const downTrap = trap({ trapId: 'T0', design: all[0]?.trap.design ?? 'bucket' });
        const down = {
          trapId: 'T0',
          checkedOn: formatDay(after(21)),
          visit: 9,
          targetCount: 0,
          otherCount: null,
          ...unfit,
          emptied: true,
          note: null,
        };
        const checks = (all[0]?.history.intervals ?? []).map(({ to, count, condition }) => ({
          ...down,
          checkedOn: formatDay(to),
          visit: 1,
          targetCount: count,
          condition,
        }));
        const withDown = { trap: downTrap, history: catchIntervals(downTrap, [...checks, down], [], after(21)) };
        const later = poolNewest([withDown, ...all.slice(1)], options({ windowNights: 7 }));
        for (const { design, intervals } of later.designs) {
          const earlier = before.designs.find((pooled) => pooled.design === design)!;
          for (const { visits: _, ...interval } of intervals)
            expect(earlier.intervals).toContainEqual(expect.objectContaining(interval));
        }
      }),
    );
  });
});
