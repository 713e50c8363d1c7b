/** What the co-operative decided, paid and counted for its seasons. All of it is invented. */
import { leftEmpty, type PlanRecord, type PriceRecord, type SeasonRecord, type StockRecord } from '@duskwatch/core';
import { INSECTS, type InsectCode } from './network.ts';

const season = (year: number, over: Partial<SeasonRecord> = {}): SeasonRecord => ({
  ...leftEmpty('seasons'),
  season: year,
  insects: (['HZ', 'ON', 'SF', 'MC'] as const).map((code) => INSECTS[code]),
  crops: [],
  fields: [],
  checkWeekdays: ['mon', 'thu'],
  currency: 'USD',
  ...over,
});

const decided = (year: number, insect: InsectCode, over: Partial<PlanRecord>): PlanRecord => ({
  ...leftEmpty('plans'),
  season: year,
  insect: INSECTS[insect],
  area: 'all',
  lureLifeDays: 28,
  ...over,
});

const price = (item: PriceRecord['item'], of: string, amount: number, note: string | null = null): PriceRecord => ({
  item,
  of,
  price: amount,
  currency: 'USD',
  note,
});

const lures = (stockId: string, insect: InsectCode, onHand: number, over: Partial<StockRecord> = {}): StockRecord => ({
  stockId,
  item: 'lure',
  of: INSECTS[insect],
  onHand,
  countedOn: '2026-07-12',
  wornOut: null,
  openedOn: null,
  expiresOn: null,
  storage: 'freezer in the packing shed',
  ...over,
});

const traps = (stockId: string, of: string, onHand: number, wornOut: number | null): StockRecord => ({
  stockId,
  item: 'trap',
  of,
  onHand,
  countedOn: '2026-07-12',
  wornOut,
  openedOn: null,
  expiresOn: null,
  storage: 'hanging; back to the loft in autumn',
});

export const PLANNING: {
  readonly seasons: readonly SeasonRecord[];
  readonly plans: readonly PlanRecord[];
  readonly prices: readonly PriceRecord[];
  readonly stock: readonly StockRecord[];
} = {
  seasons: [season(2026), season(2027, { trapBudget: 110 })],
  plans: [
    decided(2026, 'HZ', { hangOn: '2026-06-08', takeDownOn: '2026-09-20', traps: 2 }),
    decided(2026, 'SF', { hangOn: '2026-06-15', takeDownOn: '2026-09-20', traps: 1 }),
    decided(2026, 'ON', { traps: 2 }),
    decided(2026, 'MC', { hangOn: '2026-06-10', traps: 1 }),
    decided(2027, 'HZ', { hangOn: '2027-06-01', note: 'A week earlier than in 2026, when two traps were late.' }),
    decided(2027, 'SF', { hangOn: '2027-06-10', design: 'bucket', traps: 2, lureLifeDays: null }),
    decided(2027, 'MC', { design: 'wire-cone', lureLifeDays: 21 }),
  ],
  prices: [
    price('trap', 'mesh-cone', 118, 'invented list of spring 2026'),
    price('lure', INSECTS.HZ, 7.4, 'invented list of spring 2026'),
    price('lure', INSECTS.ON, 6.9),
    price('gloves', 'any', 0.35),
    price('driving-km', 'any', 0.62, 'the co-operative’s own rate'),
    price('driving-hour', 'any', 19.5),
    price('replaces', 'fixed weekly schedule', 21_500, 'as the growers put it together for 2023; invented'),
  ],
  stock: [
    lures('HZ box 3', 'HZ', 18, { expiresOn: '2027-12-31' }),
    lures('ON opened bag', 'ON', 6, { openedOn: '2026-06-29', storage: 'refrigerator, closed again with a clip' }),
    lures('SF 2024', 'SF', 10, { expiresOn: '2027-05-31' }),
    traps('mesh cones', 'mesh-cone', 24, 5),
    traps('buckets', 'bucket', 20, null),
    traps('wire cones', 'wire-cone', 14, 0),
  ],
};
