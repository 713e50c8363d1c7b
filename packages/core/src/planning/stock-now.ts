/** What lies in store today, by what was counted and what was taken since. */
import type { Prepared } from '../advice/prepare.ts';
import { addDays, formatDay } from '../base/day.ts';
import type { StockRecord, TrapDesign } from '../records/schema.ts';
import { SEASON_ASSUMPTIONS } from './assumptions.ts';
import type { KeptTraps } from './budget.ts';
import type { LureStock } from './lure-need.ts';

export interface PackageNow {
  readonly record: StockRecord;
  readonly lure: LureStock;
  /** Lures placed since it was counted, taken from it in the order in which packages expire. */
  readonly takenSince: number;
  /** Its last day has passed. */
  readonly expired: boolean;
}

/** Packages of lures, those that expire first at the front. Lures placed after a package was counted are taken off. */
export function stockNow({ program, traps, on }: Prepared): readonly PackageNow[] {
  const today = formatDay(on);
  const packages = program.stock
    .filter(({ item, countedOn }) => item === 'lure' && countedOn <= today)
    .sort((a, b) => (lastDay(a) < lastDay(b) ? -1 : lastDay(a) > lastDay(b) ? 1 : 0));
  const left = packages.map(({ onHand }) => onHand);
  for (const { trapId, placedOn } of program.lures) {
    if (placedOn > today) continue;
    const insect = traps.get(trapId)?.insect;
    const from = packages.findIndex(
      ({ of, countedOn, expiresOn }, index) =>
        of === insect && countedOn < placedOn && left[index]! > 0 && (expiresOn === null || expiresOn >= placedOn),
    );
    if (from >= 0) left[from]! -= 1;
  }
  return packages.map((record, index) => ({
    record,
    lure: { insect: record.of, lures: left[index]!, opened: record.openedOn !== null, expiresOn: record.expiresOn },
    takenSince: record.onHand - left[index]!,
    expired: record.expiresOn !== null && record.expiresOn < today,
  }));
}

/** Days as text stand in their order; without a last day a package stands behind all. */
const lastDay = ({ expiresOn }: StockRecord): string => expiresOn ?? '~';

export interface KeptNow extends KeptTraps {
  /** `hung-before`: nothing is written in store, so those that hang now or hung within a year are taken to be kept. */
  readonly from: 'stock' | 'hung-before';
}

const A_YEAR = 365;

/** Traps kept, by design. Where a part of a design's stock does not say what is worn out, the assumed share of it is. */
export function keptTraps({ program, traps, on }: Prepared): readonly KeptNow[] {
  const today = formatDay(on);
  const kept = new Map<TrapDesign, KeptNow>();
  for (const { item, of, onHand, wornOut, countedOn } of program.stock) {
    if (item !== 'trap' || countedOn > today) continue;
    const design = of as TrapDesign;
    const before = kept.get(design);
    const spent = wornOut ?? Math.ceil(onHand / SEASON_ASSUMPTIONS.trapLifeSeasons.value);
    kept.set(design, { design, traps: (before?.traps ?? 0) + onHand, wornOut: (before?.wornOut ?? 0) + spent, from: 'stock' });
  }
  const hung = new Map<TrapDesign, number>();
  const yearAgo = formatDay(addDays(on, -A_YEAR));
  for (const { design, takenDownOn } of traps.values())
    if (takenDownOn === null || takenDownOn > yearAgo) hung.set(design, (hung.get(design) ?? 0) + 1);
  for (const [design, count] of hung)
    if (!kept.has(design)) kept.set(design, { design, traps: count, wornOut: null, from: 'hung-before' });
  return [...kept.values()];
}
