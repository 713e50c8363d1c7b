import { describe, expect, it } from 'vitest';
import { prepare } from '../advice/index.ts';
import { fieldOf, programOf } from '../advice/test-program.ts';
import { day } from '../base/day.ts';
import type { TrapDesign } from '../records/schema.ts';
import { type BudgetOptions, seasonBudget } from './budget.ts';
import { planLures } from './plan-lures.ts';
import { seasonPlan } from './season-plan.ts';

const fields = [fieldOf(), fieldOf({ fieldId: 'F2' }), fieldOf({ fieldId: 'F3', farm: 'Other Farm' })];

/** Three mesh cones for F1 and F2 together, and three for F3; lures last 28 days of 91. */
function lines(design: TrapDesign = 'mesh-cone') {
  const prepared = prepare(programOf({ fields, traps: [] }), { on: day('2025-12-01') });
  const stated = { 'helicoverpa-zea': { hangOn: '2026-06-01', takeDownOn: '2026-08-31', traps: 3, design } };
  const request = { season: 2026, insects: ['helicoverpa-zea'], checkWeekdays: [1], areas: [['F1', 'F2']], stated };
  return planLures(prepared, seasonPlan(prepared, request), { 'helicoverpa-zea': 28 });
}

const allPrices = {
  currency: 'USD',
  lures: { 'helicoverpa-zea': 8 },
  gloves: 0.5,
  post: 6,
  drivingHour: 20,
  drivingKm: 0.6,
};
const driving = ['Test Farm', 'Other Farm'].map((farm) => ({ farm, hours: 10, km: 200 }));
const complete: BudgetOptions = { prices: allPrices, driving, reserveShare: 0.15 };

describe('a season’s budget', () => {
  it('is the sum worked out by hand', () => {
    const budget = seasonBudget(lines(), complete);
    // Each of two lines: 3 traps at 120, 3 posts at 6, 12 lures and a reserve of 2 at 8, 4 handlings of lures at 0.5,
    // 10 hours at 20 and 200 km at 0.6: 360 + 18 + 112 + 2 + 200 + 120 = 812.
    expect(budget.total).toEqual({ low: 1624, high: 1624, atLeast: false });
    expect(budget.missing).toEqual([]);
    expect(budget.traps).toEqual([{ design: 'mesh-cone', needed: 6, kept: 0, wornOut: 0, bought: 6 }]);
  });

  it('adds up the same by farm, by field and by insect', () => {
    const budget = seasonBudget(lines(), complete);
    expect([...budget.byFarm].map(([farm, { low }]) => [farm, low])).toEqual([
      ['Test Farm', 812],
      ['Other Farm', 812],
    ]);
    expect([...budget.byField].map(([field, { low }]) => [field, low])).toEqual([
      ['F1', 406],
      ['F2', 406],
      ['F3', 812],
    ]);
    expect(budget.byInsect.get('helicoverpa-zea')).toEqual(budget.total);
  });

  it('buys no traps for what is kept and fit, and takes worn-out ones off', () => {
    const kept = [{ design: 'mesh-cone' as const, traps: 5, wornOut: 1 }];
    const budget = seasonBudget(lines(), { ...complete, kept });
    expect(budget.traps).toEqual([{ design: 'mesh-cone', needed: 6, kept: 4, wornOut: 1, bought: 2 }]);
    // Four traps and their posts fewer.
    expect(budget.total.low).toBe(1624 - 4 * 126);
    const unsaid = seasonBudget(lines(), { ...complete, kept: [{ ...kept[0]!, wornOut: null }] });
    expect(unsaid.traps[0]).toMatchObject({ wornOut: 2, bought: 3 });
  });

  it('shows the range of a default price, and puts the user’s price before it', () => {
    const items = (options: BudgetOptions) => seasonBudget(lines('bucket'), options).items.find(({ kind }) => kind === 'trap')!;
    expect(items(complete)).toMatchObject({ cost: { low: 75, high: 90 }, price: { standing: 'practice' } });
    const own = { ...complete, prices: { ...allPrices, traps: { bucket: 31 } } };
    expect(items(own)).toMatchObject({ cost: { low: 93, high: 93 }, price: { standing: 'user' } });
  });

  it('with a price missing says which, and that the total is at least what is known', () => {
    const { lures: _, ...prices } = allPrices;
    const budget = seasonBudget(lines(), { ...complete, prices });
    expect(budget.missing).toEqual([{ kind: 'lure', of: 'helicoverpa-zea', why: 'price' }]);
    expect(budget.total).toEqual({ low: 1624 - 224, high: 1624 - 224, atLeast: true });
    expect(budget.byField.get('F1')!.atLeast).toBe(true);
  });

  it('does not take prices in dollars for those of another currency', () => {
    const budget = seasonBudget(lines(), { ...complete, prices: { ...allPrices, currency: 'EUR' } });
    expect(budget.missing.map(({ kind, why }) => [kind, why])).toEqual([
      ['trap', 'price'],
      ['trap', 'price'],
    ]);
  });

  it('with driving not known counts it as missing, not as nothing', () => {
    const budget = seasonBudget(lines(), { ...complete, driving: [driving[0]!] });
    expect(budget.missing.map(({ kind, of, why }) => [kind, of, why])).toEqual([
      ['driving-hour', 'Other Farm', 'quantity'],
      ['driving-km', 'Other Farm', 'quantity'],
    ]);
    expect([budget.byFarm.get('Test Farm')!.atLeast, budget.byFarm.get('Other Farm')!.atLeast]).toEqual([false, true]);
  });
});
