/** What a season takes and costs, per farm, field and insect. */
import type { Shape } from '../base/shape.ts';
import type { TrapDesign } from '../records/schema.ts';
import { SEASON_ASSUMPTIONS } from './assumptions.ts';
import type { LineLures } from './plan-lures.ts';
import { type CostKind, type Price, type PriceList, priceOf } from './prices.ts';
import type { rangeSchema, totalSchema, trapStockSchema } from './schema.ts';

export interface KeptTraps {
  readonly design: TrapDesign;
  readonly traps: number;
  /** Of these, fit for no further season; null: one in `SEASON_ASSUMPTIONS.trapLifeSeasons`, rounded up. */
  readonly wornOut: number | null;
}

/** What the rounds of a farm take over the season; null: not known. */
export interface FarmDriving {
  readonly farm: string;
  readonly hours: number | null;
  readonly km: number | null;
}

export interface BudgetOptions {
  readonly prices: PriceList;
  readonly kept?: readonly KeptTraps[] | undefined;
  readonly driving?: readonly FarmDriving[] | undefined;
  /** Lures kept in reserve and lost, as a share of those placed. */
  readonly reserveShare?: number | undefined;
  /** Lures on hand, by insect, good until they are placed. */
  readonly luresOnHand?: Readonly<Record<string, number>> | undefined;
}

export interface CostItem {
  readonly kind: CostKind;
  /** The line of the plan that takes it. */
  readonly lineId: string;
  readonly insect: string;
  readonly farm: string;
  readonly fields: readonly string[];
  /** To buy or to spend; null: not known. */
  readonly quantity: number | null;
  readonly price: Price | null;
  /** Null when quantity or price is not known. */
  readonly cost: Money | null;
}

export type Money = Shape<typeof rangeSchema>;

export type Total = Shape<typeof totalSchema>;

export type TrapStock = Shape<typeof trapStockSchema>;

export interface Budget {
  readonly currency: string;
  readonly items: readonly CostItem[];
  readonly traps: readonly TrapStock[];
  readonly total: Total;
  readonly byFarm: ReadonlyMap<string, Total>;
  /** A line's cost is shared evenly by its fields. */
  readonly byField: ReadonlyMap<string, Total>;
  readonly byInsect: ReadonlyMap<string, Total>;
  /** What the total leaves out, each thing once. */
  readonly missing: readonly { readonly kind: CostKind; readonly of: string | null; readonly why: 'price' | 'quantity' }[];
}

/** Designs that stand on a post of their own; others hang from a branch, stake or stand at the crop. */
const ON_POSTS: readonly (TrapDesign | null)[] = ['mesh-cone', 'wire-cone'];

/**
 * Traps are bought for what kept and fit ones do not cover, line by line in the plan's order. A post goes with every
 * trap that stands on one and is bought; a fresh pair of gloves with every handling of lures on a line, because pairs are
 * changed between species. Driving is shared among a farm's lines by their traps.
 */
export function seasonBudget(lines: readonly LineLures[], options: BudgetOptions): Budget {
  const { prices, kept = [], driving = [], luresOnHand = {} } = options;
  const { spareLures, lostTraps } = SEASON_ASSUMPTIONS;
  const reserveShare = options.reserveShare ?? spareLures.value + lostTraps.value;
  const fit = new Map(kept.map((stock) => [stock.design as TrapDesign | null, fitTraps(stock)]));
  const onHand = new Map(Object.entries(luresOnHand));
  const farmTraps = sumBy(lines, ({ line }) => line.farm);
  const designTraps = sumBy(lines, ({ line }) => line.design.design);

  /** Placed so far, by insect: the reserve is rounded up once for an insect, and not once for every line. */
  const placedBefore = new Map<string, number>();
  const reserveOf = (placed: number): number => Math.ceil(placed * reserveShare - 1e-9);

  const items: CostItem[] = [];
  for (const { line, uses } of lines) {
    const { id: lineId, insect, farm, fields, traps } = line;
    const { design } = line.design;
    const add = (kind: CostKind, quantity: number | null) => {
      if (quantity === 0) return;
      const price = priceOf(kind, { design, insect }, prices);
      const cost = price && quantity !== null ? { low: price.low * quantity, high: price.high * quantity } : null;
      items.push({ kind, lineId, insect, farm, fields, quantity, price, cost });
    };
    const bought = traps.count - take(fit, design, traps.count);
    add('trap', bought);
    add('post', ON_POSTS.includes(design) ? bought : 0);
    if (uses.length === 0) add('lure', null);
    else {
      const placed = uses.reduce((sum, { lures }) => sum + lures, 0);
      const before = placedBefore.get(insect) ?? 0;
      placedBefore.set(insect, before + placed);
      const wanted = placed + reserveOf(before + placed) - reserveOf(before);
      add('lure', wanted - take(onHand, insect, wanted));
      add('gloves', uses.length);
    }
    const drive = driving.find((one) => one.farm === farm);
    const share = traps.count / farmTraps.get(farm)!;
    add('driving-hour', shareOf(drive?.hours, share));
    add('driving-km', shareOf(drive?.km, share));
  }
  return {
    currency: prices.currency,
    items,
    traps: [...designTraps].map(([design, needed]) => trapStock(design, needed, kept)),
    total: totalOf(items),
    byFarm: totalsBy(items, ({ farm }) => [farm]),
    byField: totalsBy(items, ({ fields }) => fields),
    byInsect: totalsBy(items, ({ insect }) => [insect]),
    missing: missingFrom(items),
  };
}

const wornOutOf = ({ traps, wornOut }: KeptTraps): number =>
  Math.min(traps, wornOut ?? Math.ceil(traps / SEASON_ASSUMPTIONS.trapLifeSeasons.value));
const fitTraps = (stock: KeptTraps): number => stock.traps - wornOutOf(stock);

function trapStock(design: TrapDesign | null, needed: number, kept: readonly KeptTraps[]): TrapStock {
  const stock = kept.find((one) => one.design === design);
  const [fit, wornOut] = stock ? [fitTraps(stock), wornOutOf(stock)] : [0, 0];
  return { design, needed, kept: Math.min(needed, fit), wornOut, bought: Math.max(0, needed - fit) };
}

/** Takes up to `wanted` from what is left under `key`, and says how many. */
function take<K>(left: Map<K, number>, key: K, wanted: number): number {
  const taken = Math.min(left.get(key) ?? 0, wanted);
  left.set(key, (left.get(key) ?? 0) - taken);
  return taken;
}

const shareOf = (whole: number | null | undefined, share: number): number | null =>
  whole === null || whole === undefined ? null : whole * share;

function sumBy<K>(lines: readonly LineLures[], key: (line: LineLures) => K): Map<K, number> {
  const sums = new Map<K, number>();
  for (const line of lines) sums.set(key(line), (sums.get(key(line)) ?? 0) + line.line.traps.count);
  return sums;
}

function totalOf(items: readonly CostItem[], share: (item: CostItem) => number = () => 1): Total {
  let [low, high, atLeast] = [0, 0, false];
  for (const item of items) {
    if (item.cost === null) atLeast = true;
    else {
      low += item.cost.low * share(item);
      high += item.cost.high * share(item);
    }
  }
  return { low, high, atLeast };
}

function totalsBy(items: readonly CostItem[], keys: (item: CostItem) => readonly string[]): Map<string, Total> {
  const groups = new Map<string, CostItem[]>();
  for (const item of items) for (const key of keys(item)) groups.set(key, [...(groups.get(key) ?? []), item]);
  return new Map([...groups].map(([key, group]) => [key, totalOf(group, (item) => 1 / keys(item).length)]));
}

function missingFrom(items: readonly CostItem[]): Budget['missing'] {
  const missing = new Map<string, Budget['missing'][number]>();
  for (const { kind, lineId, insect, farm, quantity, price } of items) {
    const of = kind === 'trap' ? lineId : kind === 'lure' ? insect : kind.startsWith('driving') ? farm : null;
    if (quantity === null) missing.set(`${kind}\n${of}\nquantity`, { kind, of, why: 'quantity' });
    if (price === null) missing.set(`${kind}\n${of}\nprice`, { kind, of, why: 'price' });
  }
  return [...missing.values()];
}
