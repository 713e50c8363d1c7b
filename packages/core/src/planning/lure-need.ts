/** How many lures a season takes, when, and what is left to order. */

import { addDays, type Day, day, formatDay, type IsoDay } from '../base/day.ts';
import type { Shape } from '../base/shape.ts';
import type { Sourced } from '../catalogue/types.ts';
import { SEASON_ASSUMPTIONS } from './assumptions.ts';
import type { lureMonthSchema, lureNeedSchema, lureOrderSchema, lureStockSchema, stockUseSchema } from './schema.ts';

/** Lures to be placed on one day. */
export interface LureUse {
  readonly insect: string;
  readonly on: IsoDay;
  readonly lures: number;
}

export type LureMonth = Shape<typeof lureMonthSchema>;

export type LureStock = Shape<typeof lureStockSchema>;

export interface LureShares {
  /** Lures kept in reserve, as a share of those placed. */
  readonly spares?: number | undefined;
  /** Lures lost with their traps, as a share of those placed. */
  readonly losses?: number | undefined;
}

export type LureNeed = Shape<typeof lureNeedSchema>;

/** Need by insect, in the order in which insects first need a lure; months by the day of placing. */
export function lureNeeds(uses: readonly LureUse[], shares: LureShares = {}): LureNeed[] {
  const { spares = SEASON_ASSUMPTIONS.spareLures.value, losses = SEASON_ASSUMPTIONS.lostTraps.value } = shares;
  const byInsect = new Map<string, Map<string, number>>();
  for (const { insect, on, lures } of inOrder(uses)) {
    const months = byInsect.get(insect) ?? new Map<string, number>();
    const month = on.slice(0, 7);
    byInsect.set(insect, months.set(month, (months.get(month) ?? 0) + lures));
  }
  return [...byInsect].map(([insect, months]) => {
    const placed = [...months.values()].reduce((sum, lures) => sum + lures, 0);
    return {
      insect,
      placed,
      reserve: Math.ceil(placed * (spares + losses) - 1e-9),
      months: [...months].map(([month, lures]) => ({ insect, month, lures })),
    };
  });
}

export type StockUse = Shape<typeof stockUseSchema>;

export type LureOrder = Shape<typeof lureOrderSchema>;

export interface OrderOptions extends LureShares {
  readonly today: Day;
  readonly leadDays?: number | undefined;
  /** Days that ordered lures keep, stored as their package says; null: a whole season, so that one order is enough. */
  readonly keepsDays?: number | null | undefined;
}

export interface LureOrders {
  readonly orders: readonly LureOrder[];
  readonly stock: readonly StockUse[];
  /** Unopened lures are kept cold or frozen, as their package says (common practice, no source). */
  readonly storage: Sourced & { readonly practiceId: 'lure-storage' };
}

/**
 * What to order, and by when, after the stock that lasts until it is placed.
 *
 * Stock is used up in the order in which it expires. The reserve is at hand from the first placing on, so it belongs to
 * the first order or stock. Orders are as few as the keeping time allows: each covers the placings within `keepsDays` of
 * its first.
 */
export function lureOrders(uses: readonly LureUse[], stock: readonly LureStock[], options: OrderOptions): LureOrders {
  const { today, leadDays = SEASON_ASSUMPTIONS.lureLeadDays.value, keepsDays = null } = options;
  const left = stock.map(({ lures, opened, expiresOn }) => (opened && expiresOn === null ? 0 : lures));
  const soonest = [...stock.keys()].sort((a, b) => lastDay(stock[a]!) - lastDay(stock[b]!));
  const orders: LureOrder[] = [];
  for (const { insect, placed, reserve } of lureNeeds(uses, options)) {
    const own = inOrder(uses).filter((use) => use.insect === insect && use.lures > 0);
    if (placed === 0) continue;
    const wanted = [...own, { insect, on: own[0]!.on, lures: reserve }].sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0));
    const missing: { on: Day; lures: number }[] = [];
    for (const { on, lures } of wanted) {
      let open = lures;
      for (const index of soonest) {
        if (stock[index]!.insect !== insect || lastDay(stock[index]!) < day(on)) continue;
        const taken = Math.min(open, left[index]!);
        left[index]! -= taken;
        open -= taken;
      }
      if (open > 0) missing.push({ on: day(on), lures: open });
    }
    orders.push(...batches(insect, missing, { today, leadDays, keepsDays }));
  }
  return { orders, stock: stock.map((item, index) => stockUse(item, left[index]!, uses)), storage: STORAGE };
}

const STORAGE = { practiceId: 'lure-storage', source: 'common practice, no source', standing: 'practice' } as const;

function batches(
  insect: string,
  missing: readonly { readonly on: Day; readonly lures: number }[],
  { today, leadDays, keepsDays }: { today: Day; leadDays: number; keepsDays: number | null },
): LureOrder[] {
  const orders: LureOrder[] = [];
  for (let i = 0; i < missing.length; ) {
    const first = missing[i]!.on;
    let lures = 0;
    for (; i < missing.length && (keepsDays === null || missing[i]!.on <= first + keepsDays); i++) lures += missing[i]!.lures;
    const orderBy = addDays(first, -leadDays);
    orders.push({
      insect,
      lures,
      neededOn: formatDay(first),
      orderBy: formatDay(orderBy),
      late: orderBy < today,
      ordinal: orders.length + 1,
    });
  }
  return orders;
}

function stockUse(item: LureStock, remaining: number, uses: readonly LureUse[]): StockUse {
  const unusable = item.opened && item.expiresOn === null;
  const left = unusable ? item.lures : remaining;
  const neededLater = uses.some(({ insect, on }) => insect === item.insect && day(on) > lastDay(item));
  const why = left === 0 ? null : unusable ? 'opened-without-date' : neededLater ? 'expires-before-use' : 'not-needed';
  return { ...item, used: item.lures - left, left, why };
}

const lastDay = ({ expiresOn }: LureStock): number => (expiresOn === null ? Infinity : day(expiresOn));

const inOrder = (uses: readonly LureUse[]): LureUse[] =>
  [...uses].sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : a.insect < b.insect ? -1 : 1));
