import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, type Day, day, daysBetween } from '../base/day.ts';
import { lureChanges } from './lure-changes.ts';
import { type LureUse, lureNeeds, lureOrders } from './lure-need.ts';

const every = (from: string, days: number, to: string): Day[] => {
  const all: Day[] = [];
  for (let on = day(from); on <= day(to); on = addDays(on, days)) all.push(on);
  return all;
};
const changeDays = (from: string, to: string, life: number, checks: readonly Day[]) =>
  lureChanges(day(from), day(to), life, checks).map(({ on }) => on);
const use = (on: string, lures: number, insect = 'helicoverpa-zea'): LureUse => ({ insect, on, lures });

describe('lure changes, worked by hand', () => {
  it('fall on a check day at or before the end of the life: 28 days, weekly checks from 2 June', () => {
    // 2 June + 28 = 30 June, a check day; then 28 July; 25 August is the taking down.
    expect(lureChanges(day('2025-06-02'), day('2025-08-25'), 28, every('2025-06-02', 7, '2025-08-25'))).toEqual([
      { on: '2025-06-30', ageDays: 28, extraVisit: false },
      { on: '2025-07-28', ageDays: 28, extraVisit: false },
    ]);
  });

  it('come early where the day falls on no check: 30 days, weekly checks', () => {
    // 2 June + 30 = 2 July; the last check before it is 30 June. 30 June + 30 = 30 July; the last check is 28 July.
    expect(changeDays('2025-06-02', '2025-09-01', 30, every('2025-06-02', 7, '2025-09-01'))).toEqual([
      '2025-06-30',
      '2025-07-28',
      '2025-08-25',
    ]);
  });

  it('count 29 February in a leap year and 1 March in others', () => {
    const daily = every('2023-02-01', 1, '2028-05-01');
    // 14 days after 15 February.
    expect(changeDays('2024-02-15', '2024-03-05', 14, daily)).toEqual(['2024-02-29']);
    expect(changeDays('2025-02-15', '2025-03-05', 14, daily)).toEqual(['2025-03-01']);
  });

  it('shorter-lived than the check interval take a visit of their own on the last day', () => {
    // Checks every 14 days, life 10: 11 June alone; then 15 June is a check, 25 June alone; that lure
    // lasts until 5 July, beyond the taking down.
    expect(lureChanges(day('2025-06-01'), day('2025-07-01'), 10, every('2025-06-01', 14, '2025-07-01'))).toEqual([
      { on: '2025-06-11', ageDays: 10, extraVisit: true },
      { on: '2025-06-15', ageDays: 4, extraVisit: false },
      { on: '2025-06-25', ageDays: 10, extraVisit: true },
    ]);
  });

  it('are none in a season that one lure outlasts, to the day', () => {
    expect(changeDays('2025-06-01', '2025-06-29', 28, every('2025-06-01', 7, '2025-06-29'))).toEqual([]);
    expect(changeDays('2025-06-01', '2025-06-30', 28, every('2025-06-01', 7, '2025-06-30'))).toEqual(['2025-06-29']);
  });

  it('never leave a lure hanging beyond its life, whatever the season and the checks', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: 1, max: 200 }),
        fc.uniqueArray(fc.integer({ min: 0, max: 200 }), { maxLength: 40 }),
        (life, length, offsets) => {
          const from = day('2025-04-01');
          const to = addDays(from, length);
          const checks = offsets.sort((a, b) => a - b).map((offset) => addDays(from, offset));
          let placed = from;
          for (const { on, ageDays, extraVisit } of lureChanges(from, to, life, checks)) {
            expect(daysBetween(placed, day(on))).toBe(ageDays);
            expect(ageDays).toBeGreaterThan(0);
            expect(ageDays).toBeLessThanOrEqual(life);
            expect(checks.includes(day(on)) || extraVisit).toBe(true);
            placed = day(on);
          }
          expect(daysBetween(placed, to)).toBeLessThanOrEqual(life);
        },
      ),
    );
  });
});

describe('lures needed', () => {
  it('in a season across a month’s end are counted in the month they are placed', () => {
    // Four traps: 31 May, 28 June, 26 July. 12 lures; a reserve of 10 % and 5 % is 1.8, so 2.
    const [need] = lureNeeds([use('2025-05-31', 4), use('2025-06-28', 4), use('2025-07-26', 4)]);
    expect(need!.months.map(({ month, lures }) => [month, lures])).toEqual([
      ['2025-05', 4],
      ['2025-06', 4],
      ['2025-07', 4],
    ]);
    expect([need!.placed, need!.reserve]).toEqual([12, 2]);
  });

  it('are kept apart by insect, and those of another year by year', () => {
    const needs = lureNeeds([use('2025-12-20', 2), use('2026-01-17', 2), use('2025-12-20', 1, 'melittia-cucurbitae')]);
    expect(needs.map(({ insect, months }) => [insect, months.map(({ month }) => month)])).toEqual([
      ['helicoverpa-zea', ['2025-12', '2026-01']],
      ['melittia-cucurbitae', ['2025-12']],
    ]);
  });
});

describe('lure orders', () => {
  const uses = [use('2025-06-02', 4), use('2025-06-30', 4), use('2025-07-28', 4)];
  const options = { today: day('2025-02-01'), leadDays: 21, spares: 0, losses: 0 };

  it('are placed a lead before the first lure that the stock does not cover', () => {
    const { orders, stock } = lureOrders(uses, [stockOf(5, '2026-12-31')], options);
    // 4 of 5 are placed on 2 June, one on 30 June: 3 + 4 are missing, the first on 30 June; 21 days before is 9 June.
    expect(orders).toEqual([
      { insect: 'helicoverpa-zea', lures: 7, neededOn: '2025-06-30', orderBy: '2025-06-09', late: false, ordinal: 1 },
    ]);
    expect(stock[0]).toMatchObject({ used: 5, left: 0, why: null });
  });

  it('do not count on stock that expires before it is placed', () => {
    const { orders, stock } = lureOrders(uses, [stockOf(12, '2025-07-01')], options);
    expect(orders).toMatchObject([{ lures: 4, neededOn: '2025-07-28' }]);
    expect(stock[0]).toMatchObject({ used: 8, left: 4, why: 'expires-before-use' });
  });

  it('use up first what expires first', () => {
    const { stock } = lureOrders(uses, [stockOf(4, null), stockOf(4, '2025-06-15')], options);
    expect(stock.map(({ used }) => used)).toEqual([4, 4]);
  });

  it('do not count on an opened package without a date, and say why', () => {
    const { orders, stock } = lureOrders(uses, [{ ...stockOf(12, null), opened: true }], options);
    expect(orders[0]!.lures).toBe(12);
    expect(stock[0]).toMatchObject({ used: 0, left: 12, why: 'opened-without-date' });
  });

  it('are split where lures do not keep for a season', () => {
    const { orders } = lureOrders(uses, [], { ...options, keepsDays: 30 });
    expect(orders.map(({ lures, orderBy, ordinal }) => [lures, orderBy, ordinal])).toEqual([
      [8, '2025-05-12', 1],
      [4, '2025-07-07', 2],
    ]);
  });

  it('that should have gone out say so', () => {
    const { orders } = lureOrders(uses, [], { ...options, today: day('2025-05-13') });
    expect(orders[0]).toMatchObject({ orderBy: '2025-05-12', late: true });
  });

  it('and stock together cover need and reserve, and no lure is placed twice', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 0, max: 150 }), fc.integer({ min: 1, max: 9 })), { minLength: 1, maxLength: 9 }),
        fc.array(fc.tuple(fc.integer({ min: 0, max: 200 }), fc.integer({ min: 1, max: 30 })), { maxLength: 4 }),
        (placings, packages) => {
          const at = (offset: number) => new Date(Date.UTC(2025, 3, 1 + offset)).toISOString().slice(0, 10);
          const season = placings.map(([offset, lures]) => use(at(offset), lures));
          const stock = packages.map(([offset, lures]) => stockOf(lures, at(offset)));
          const [need] = lureNeeds(season);
          const answer = lureOrders(season, stock, { today: day('2025-01-01') });
          const ordered = answer.orders.reduce((sum, { lures }) => sum + lures, 0);
          const used = answer.stock.reduce((sum, item) => sum + item.used, 0);
          expect(ordered + used).toBe(need!.placed + need!.reserve);
        },
      ),
    );
  });
});

const stockOf = (lures: number, expiresOn: string | null) => ({ insect: 'helicoverpa-zea', lures, opened: false, expiresOn });
