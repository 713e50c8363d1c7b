/** The program's price records as a price list. */
import type { Program } from '../records/program.ts';
import { type PriceRecord, TRAP_DESIGNS, type TrapDesign } from '../records/schema.ts';
import { seasonRecord } from './from-records.ts';
import type { PriceList } from './prices.ts';

/** Where neither season nor prices name a currency: that of the catalogue's figures. */
const USUAL_CURRENCY = 'USD';

export interface RecordedPrices {
  readonly list: PriceList;
  /** What a season's traps replace, as the user sums it up. */
  readonly replaces: readonly PriceRecord[];
  /** Prices in another currency: shown, and left out of every sum. */
  readonly otherCurrency: readonly PriceRecord[];
}

/** A price for `any` design or insect holds for those without one of their own. */
export function pricesFor(program: Program, season: number): RecordedPrices {
  const currency = seasonRecord(program, season)?.currency ?? mostCommon(program.prices.map((price) => price.currency));
  const own = program.prices.filter((price) => price.currency === currency);
  const priceOf = (item: PriceRecord['item'], of: string): number | undefined =>
    (
      own.find((price) => price.item === item && price.of === of) ??
      own.find((price) => price.item === item && price.of === 'any')
    )?.price;
  const single = (item: PriceRecord['item']): number | undefined => own.find((price) => price.item === item)?.price;
  const insects = new Set([...program.traps, ...program.plans].map(({ insect }) => insect));
  for (const { insects: asked } of program.seasons) for (const insect of asked) insects.add(insect);
  for (const { item, of } of own) if (item === 'lure') insects.add(of);
  const known = <K extends string>(item: PriceRecord['item'], of: Iterable<K>) =>
    Object.fromEntries([...of].flatMap((one) => (priceOf(item, one) === undefined ? [] : [[one, priceOf(item, one)!]])));
  return {
    list: {
      currency,
      traps: known<TrapDesign>('trap', TRAP_DESIGNS) as Partial<Record<TrapDesign, number>>,
      lures: known('lure', insects),
      gloves: single('gloves'),
      post: single('post'),
      drivingHour: single('driving-hour'),
      drivingKm: single('driving-km'),
    },
    replaces: own.filter(({ item }) => item === 'replaces'),
    otherCurrency: program.prices.filter((price) => price.currency !== currency),
  };
}

function mostCommon(currencies: readonly string[]): string {
  const counts = new Map<string, number>();
  for (const currency of currencies) counts.set(currency, (counts.get(currency) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? USUAL_CURRENCY;
}
