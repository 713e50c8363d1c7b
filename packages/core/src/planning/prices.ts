/** What things cost: the user's prices before the catalogue's. A price that nobody knows stays unknown. */
import type { Shape } from '../base/shape.ts';
import { designFacts } from '../catalogue/index.ts';
import type { TrapDesign } from '../records/schema.ts';
import type { costKindSchema, priceShownSchema } from './schema.ts';

export interface PriceList {
  /** ISO 4217; the catalogue's figures are in USD and are used only where this is USD. */
  readonly currency: string;
  readonly traps?: Partial<Record<TrapDesign, number>> | undefined;
  /** For one lure, by insect. */
  readonly lures?: Readonly<Record<string, number>> | undefined;
  /** A pair. */
  readonly gloves?: number | undefined;
  readonly post?: number | undefined;
  readonly drivingHour?: number | undefined;
  readonly drivingKm?: number | undefined;
}

export type Price = Shape<typeof priceShownSchema>;

export type CostKind = Shape<typeof costKindSchema>;

export function priceOf(
  kind: CostKind,
  { design, insect }: { readonly design: TrapDesign | null; readonly insect: string },
  list: PriceList,
): Price | null {
  const own = ownPrice(kind, design, insect, list);
  if (own !== undefined) return { low: own, high: own, standing: 'user', source: null };
  const facts = kind === 'trap' && design !== null && list.currency === 'USD' ? designFacts(design) : null;
  if (!facts?.costUsd) return null;
  const [low, high] = facts.costUsd;
  return { low, high, standing: facts.standing, source: facts.source };
}

function ownPrice(kind: CostKind, design: TrapDesign | null, insect: string, list: PriceList): number | undefined {
  switch (kind) {
    case 'trap':
      return design === null ? undefined : list.traps?.[design];
    case 'lure':
      return list.lures?.[insect];
    case 'gloves':
      return list.gloves;
    case 'post':
      return list.post;
    case 'driving-hour':
      return list.drivingHour;
    case 'driving-km':
      return list.drivingKm;
  }
}
