import type { Prepared } from '../advice/prepare.ts';
import {
  type CostItem,
  keptTraps,
  type LineLures,
  type PlannedSeason,
  plannedDriving,
  pricesFor,
  seasonBudget,
  seasonRecord,
} from '../planning/index.ts';
import type { PricedItem } from '../records/schema.ts';
import { fieldOf } from './season-field.ts';
import type { BudgetRow, SeasonBudgetView } from './season-schema.ts';

/** What the season takes and costs, summed by what is bought. */
export function seasonBudgetView(prepared: Prepared, { season, lines, lures }: PlannedSeason): SeasonBudgetView {
  const { list, replaces, otherCurrency } = pricesFor(prepared.program, season);
  const kept = keptTraps(prepared);
  const luresOnHand: Record<string, number> = {};
  for (const { insect, used } of lures.stock) luresOnHand[insect] = (luresOnHand[insect] ?? 0) + used;
  const budget = seasonBudget(lines, {
    prices: list,
    kept,
    driving: plannedDriving(prepared, lines),
    reserveShare: seasonRecord(prepared.program, season)?.reserveShare ?? undefined,
    luresOnHand,
  });
  const designOf = new Map(lines.map(({ line }) => [line.id, line.design.design]));
  const of = ({ kind, lineId, insect, farm }: CostItem): string | null =>
    kind === 'trap' ? designOf.get(lineId)! : kind === 'lure' ? insect : kind.startsWith('driving') ? farm : null;
  return {
    currency: budget.currency,
    rows: rowsOf(budget.items, of),
    total: budget.total,
    byFarm: [...budget.byFarm].map(([farm, total]) => ({ farm, ...total })),
    byField: [...budget.byField].map(([field, total]) => ({ ...fieldOf(prepared, field), ...total })),
    byInsect: [...budget.byInsect].map(([insect, total]) => ({ insect, ...total })),
    traps: budget.traps.map((stock) => ({ ...stock, from: kept.find(({ design }) => design === stock.design)?.from ?? null })),
    missing: distinct(
      budget.missing.map(({ kind, of: about, why }) => ({
        kind,
        of: kind === 'trap' ? (designOf.get(about ?? '') ?? null) : about,
        why,
      })),
    ),
    replaces,
    replacedTotal: replaces.length === 0 ? null : replaces.reduce((sum, { price }) => sum + price, 0),
    otherCurrency,
    askable: askable(lines),
  };
}

function rowsOf(items: readonly CostItem[], of: (item: CostItem) => string | null): BudgetRow[] {
  const rows = new Map<string, BudgetRow>();
  for (const item of items) {
    const about = item.kind.startsWith('driving') ? null : of(item);
    const key = `${item.kind}\n${about}`;
    const before = rows.get(key);
    const add = (sum: number | null | undefined, more: number | null) =>
      sum === null || more === null ? null : (sum ?? 0) + more;
    rows.set(key, {
      kind: item.kind,
      of: about,
      quantity: add(before?.quantity, item.quantity),
      price: item.price,
      low: add(before?.low, item.cost?.low ?? null),
      high: add(before?.high, item.cost?.high ?? null),
    });
  }
  return [...rows.values()].sort((a, b) => ORDER.indexOf(a.kind) - ORDER.indexOf(b.kind));
}

const ORDER: readonly CostItem['kind'][] = ['trap', 'post', 'lure', 'gloves', 'driving-hour', 'driving-km'];

const distinct = <T>(all: readonly T[]): T[] => [...new Map(all.map((one) => [JSON.stringify(one), one])).values()];

function askable(lines: readonly LineLures[]): SeasonBudgetView['askable'] {
  const asked = new Map<string, { item: PricedItem; of: string }>();
  const ask = (item: PricedItem, of: string) => asked.set(`${item} ${of}`, { item, of });
  for (const { line } of lines) if (line.design.design) ask('trap', line.design.design);
  for (const { line } of lines) ask('lure', line.insect);
  for (const item of ['gloves', 'post', 'driving-hour', 'driving-km'] as const) ask(item, 'any');
  return [...asked.values()];
}
