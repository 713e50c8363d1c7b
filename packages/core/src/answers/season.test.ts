/** The season as its pages show it, and every kind of bad input with its stated answer. */
import { describe, expect, it } from 'vitest';
import { prepare } from '../advice/index.ts';
import { fieldOf, lureAt, programOf, steadyWeather, trapOf } from '../advice/test-program.ts';
import { addDays, day, formatDay } from '../base/day.ts';
import { seasonToShow } from '../planning/index.ts';
import { leftEmpty } from '../records/left-empty.ts';
import { emptyProgram, type Program } from '../records/program.ts';
import type { PlanRecord, PriceRecord, SeasonRecord, StockRecord } from '../records/schema.ts';
import { seasonView } from './season.ts';
import { seasonTruthView } from './season-truth.ts';

const BORER = 'ostrinia-nubilalis';
const EARWORM = 'helicoverpa-zea';

const seasonOf = (over: Partial<SeasonRecord> = {}): SeasonRecord => ({
  ...leftEmpty('seasons'),
  season: 2026,
  insects: [BORER],
  crops: [],
  fields: [],
  checkWeekdays: [],
  ...over,
});
const planOf = (over: Partial<PlanRecord> = {}): PlanRecord => ({
  ...leftEmpty('plans'),
  season: 2026,
  insect: BORER,
  area: 'all',
  ...over,
});
const stockOf = (over: Partial<StockRecord> = {}): StockRecord => ({
  stockId: 'box',
  item: 'lure',
  of: BORER,
  onHand: 10,
  countedOn: '2025-11-01',
  wornOut: null,
  openedOn: null,
  expiresOn: '2027-12-31',
  storage: null,
  ...over,
});
const priceOf = (over: Partial<PriceRecord> = {}): PriceRecord => ({
  item: 'lure',
  of: BORER,
  price: 7,
  currency: 'USD',
  note: null,
  ...over,
});

const known = (parts: Partial<Program>, on = '2025-12-01') =>
  prepare(programOf({ traps: [], seasons: [seasonOf()], ...parts }), { on: day(on) });
const view = (parts: Partial<Program>, on?: string) => seasonView(known(parts, on), 2026, true);
const line = (parts: Partial<Program>, on?: string) => view(parts, on).lines[0]!;
/** (50 + 60)/2 − 50 = 5 °F·d a day: 374 are reached on day 75 of each year. */
const threeYears = steadyWeather('2023-01-01', '2025-11-30', 50, 60);

describe('a decision in the records', () => {
  it('goes before what is proposed, and one for an area before one for the insect', () => {
    const fields = ['F1', 'F2'].map((fieldId) => fieldOf({ fieldId }));
    const plans = [planOf({ traps: 3, takeDownOn: '2026-08-31' }), planOf({ area: 'F2', traps: 1, design: 'bucket' })];
    const { lines } = view({ fields, plans, weather: threeYears });
    expect(lines.map(({ traps, design, takeDown }) => [traps.count, traps.why, design.why, takeDown.on])).toEqual([
      [3, 'stated', 'not-known', '2026-08-31'],
      [1, 'stated', 'stated', '2026-08-31'],
    ]);
    expect(lines[1]!.decidedHere).toEqual(plans[1]);
  });

  it('about the hanging day leaves the proposal beside it, and says when it is too late', () => {
    const early = line({ weather: threeYears, plans: [planOf({ hangOn: '2026-03-01' })] }).hang;
    expect(early).toMatchObject({ basis: 'chosen', on: '2026-03-01', caution: null });
    const late = line({ weather: threeYears, plans: [planOf({ hangOn: '2026-03-20' })] }).hang;
    if (late.basis !== 'chosen') throw new Error(late.basis);
    expect(late.caution).toBe('late');
    expect(late.proposed < late.spread.plausible && late.spread.plausible < late.on).toBe(true);
  });

  it('about another season, or a field that is gone, changes nothing and is named', () => {
    const plans = [planOf({ season: 2025, traps: 9 }), planOf({ area: 'gone', traps: 9 })];
    const { lines, questions } = view({ plans, weather: threeYears });
    expect(lines[0]!.traps.count).not.toBe(9);
    expect(questions).toEqual([{ kind: 'no-such-area', insect: BORER, area: 'gone' }]);
  });

  it('past flights keep their distance from the earliest when they are moved to the season planned', () => {
    const cold = steadyWeather('2024-01-01', '2024-03-31', 46, 54).map((record) => record.date);
    const weather = threeYears.map((record) => (cold.includes(record.date) ? { ...record, tminC: 0, tmaxC: 5 } : record));
    const { flights, hang } = line({ weather });
    if (hang.basis !== 'heat') throw new Error(hang.basis);
    const [first, second] = flights;
    if (first?.kind !== 'reached' || second?.kind !== 'reached') throw new Error('not reached');
    expect(first.carried).toBe(hang.spread.earliest);
    expect(second.carried).toBe(formatDay(addDays(day(first.carried!), second.wait - first.wait)));
  });
});

describe('bad input has a stated, sensible answer', () => {
  it('no weather history: no date is made up', () => {
    expect(line({}).hang).toEqual({ basis: 'unknown', on: null, why: 'no-weather', years: [] });
    expect(view({}).lures.unknownLines).toHaveLength(1);
  });

  it('one year only: a stated margin stands for the spread', () => {
    const weather = steadyWeather('2025-01-01', '2025-11-30', 50, 60);
    expect(line({ weather }).hang).toMatchObject({ basis: 'heat', caution: 'one-year' });
  });

  it('a season that never reaches the event: no flight is expected, and each year shows its heat', () => {
    const { hang, flights } = line({ weather: steadyWeather('2023-01-01', '2025-11-30', 30, 45) });
    expect(hang).toMatchObject({ basis: 'unknown', why: 'never-reached' });
    expect(flights.map(({ kind, carried }) => [kind, carried])).toContainEqual(['not-reached', null]);
  });

  it('south of the equator the season runs across new year', () => {
    const fields = [fieldOf({ latitude: -38, longitude: 176, harvestOn: '2025-02-20' })];
    const weather = steadyWeather('2022-07-01', '2026-05-30', 50, 60);
    const southern = view({ fields, weather }, '2026-06-01');
    expect([southern.from, southern.to, southern.state]).toEqual(['2026-07-01', '2027-07-01', 'ahead']);
    expect(southern.lines[0]!.hang.on!.slice(0, 7)).toBe('2026-09');
    expect(southern.lines[0]!.takeDown).toEqual({ on: '2027-02-20', why: 'harvest-as-before' });
    expect(southern.lures.months.at(0)! < '2027-01' && southern.lures.months.at(-1)! >= '2027-01').toBe(true);
    expect(seasonToShow(known({ fields }, '2026-03-01'))).toBe(2026);
  });

  it('a price missing: unknown, and the total is at least what is known', () => {
    const { budget } = view({ weather: threeYears, prices: [] });
    const lure = budget!.rows.find(({ kind }) => kind === 'lure')!;
    expect([lure.price, lure.low]).toEqual([null, null]);
    expect(budget!.total.atLeast).toBe(true);
    expect(budget!.missing).toContainEqual({ kind: 'lure', of: BORER, why: 'price' });
  });

  it('a price in another currency is shown and left out of the sum', () => {
    const prices = [priceOf({ currency: 'MXN', price: 120 })];
    const { budget } = view({ weather: threeYears, prices, seasons: [seasonOf({ currency: 'USD' })] });
    expect(budget!.otherCurrency).toEqual(prices);
    expect(budget!.rows.find(({ kind }) => kind === 'lure')!.price).toBeNull();
  });

  it('two traps on one spot, and a station without coordinates: asked about, and both are read', () => {
    const at = { latitude: 45, longitude: -63, insect: BORER };
    const traps = [
      trapOf({ trapId: 'A', ...at }),
      trapOf({ trapId: 'B', ...at, longitude: -63.0001 }),
      trapOf({ trapId: 'C', station: 'Lost', insect: BORER }),
    ];
    const { questions, lines } = view({ traps, weather: threeYears });
    expect(questions).toMatchObject([
      { kind: 'one-spot', trapIds: ['A', 'B'] },
      { kind: 'no-coordinates', station: 'Lost', trapIds: ['C'] },
    ]);
    expect(lines).toHaveLength(1);
  });

  it('an empty program, and one without fields', () => {
    const nothing = prepare(emptyProgram(), { on: day('2026-03-01') });
    expect(seasonView(nothing, 2026, true)).toMatchObject({
      lines: [],
      trapsInAll: 0,
      budget: { total: { low: 0, atLeast: false } },
    });
    expect(seasonTruthView(nothing, 2026).lines).toEqual([]);
  });
});

describe('what lies in store', () => {
  const plans = [planOf({ traps: 2, design: 'mesh-cone', takeDownOn: '2026-06-30', lureLifeDays: 28 })];
  const ordered = (stock: StockRecord[], parts: Partial<Program> = {}, on?: string) =>
    view({ weather: threeYears, plans, stock, ...parts }, on).lures.orders.reduce((sum, { lures }) => sum + lures, 0);

  it('is taken off the order, unless it expires, or is open and says no date', () => {
    const without = ordered([]);
    expect(ordered([stockOf({ onHand: 3 })])).toBe(without - 3);
    expect(ordered([stockOf({ onHand: 3, expiresOn: '2026-02-01' })])).toBe(without);
    expect(ordered([stockOf({ onHand: 3, openedOn: '2025-10-01', expiresOn: null })])).toBe(without);
  });

  it('is less by what was placed since it was counted', () => {
    const traps = [trapOf({ trapId: 'T1', insect: BORER, hungOn: '2025-05-01' })];
    const lures = [lureAt('2025-10-31', 28), lureAt('2025-11-10', 28), lureAt('2025-11-20', 28)];
    const { stock } = view({ weather: threeYears, plans, traps, lures, stock: [stockOf({ onHand: 10 })] }).lures;
    expect(stock[0]).toMatchObject({ takenSince: 2, lures: 8 });
  });

  it('of traps is kept before any is bought; without a count, those that hung within the year are', () => {
    const bought = (parts: Partial<Program>) => view({ weather: threeYears, plans, ...parts }).budget!.traps[0];
    expect(bought({})).toMatchObject({ needed: 2, bought: 2, from: null });
    const shelf = stockOf({ stockId: 'loft', item: 'trap', of: 'mesh-cone', onHand: 3, wornOut: 2 });
    expect(bought({ stock: [shelf] })).toMatchObject({ kept: 1, wornOut: 2, bought: 1, from: 'stock' });
    const traps = ['A', 'B'].map((trapId) => trapOf({ trapId, insect: BORER, takenDownOn: '2025-09-01' }));
    // One in four is taken to be worn out, rounded up.
    expect(bought({ traps })).toMatchObject({ kept: 1, wornOut: 1, bought: 1, from: 'hung-before' });
  });

  it('and orders together cover what the budget counts', () => {
    const fields = ['F1', 'F2', 'F3'].map((fieldId) => fieldOf({ fieldId }));
    const { lures, budget } = view({ fields, weather: threeYears, plans });
    expect(budget!.rows.find(({ kind }) => kind === 'lure')!.quantity).toBe(
      lures.orders.reduce((sum, one) => sum + one.lures, 0),
    );
  });

  it('of prices nothing is shown to whoever may not see them', () => {
    const prepared = known({ weather: threeYears, prices: [priceOf()] });
    const shown = seasonView(prepared, 2026, false);
    expect(shown.budget).toBeNull();
    expect(shown.lures.orders.every(({ cost }) => cost === null)).toBe(true);
  });
});

describe('a running season', () => {
  it('orders only what is still to be placed', () => {
    const traps = [trapOf({ insect: BORER, hungOn: '2026-03-01' })];
    const plans = [planOf({ traps: 1, hangOn: '2026-03-01', takeDownOn: '2026-08-31', lureLifeDays: 28 })];
    const orders = (on: string) => view({ traps, plans }, on).lures.orders[0]!;
    expect(orders('2026-03-02').lures).toBeGreaterThan(orders('2026-07-01').lures);
    expect(orders('2026-07-01').neededOn >= '2026-07-01').toBe(true);
  });

  it('is held against what was decided for it', () => {
    const traps = [trapOf({ insect: EARWORM, hungOn: '2026-06-20' })];
    const plans = [planOf({ insect: EARWORM, traps: 1, hangOn: '2026-06-10', takeDownOn: '2026-08-31' })];
    const truth = seasonTruthView(known({ traps, plans, seasons: [seasonOf({ insects: [EARWORM] })] }, '2026-07-01'), 2026);
    expect(truth.lines[0]!.deviations).toContainEqual({ kind: 'hung-late', trapId: 'T1', daysLate: 10, firstVisitCaught: false });
  });
});
