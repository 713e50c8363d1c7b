/** What a season's watching cost for each decision it led to. */
import type { Shape } from '../base/shape.ts';
import type { seasonWorkSchema } from './review-schema.ts';

/** In one currency; null where nobody gave a price. */
export interface Prices {
  readonly currency: string;
  /** One season's share of a trap. */
  readonly trap: number | null;
  readonly lure: number | null;
  /** One visit to one trap, with the way to it. */
  readonly visit: number | null;
  readonly sample: number | null;
}

export type SeasonWork = Shape<typeof seasonWorkSchema>;

export type SeasonCost =
  | {
      readonly known: true;
      readonly currency: string;
      readonly total: number;
      /** Null in a season without a decision. */
      readonly perDecision: number | null;
    }
  /** Prices nobody gave, of things that were used. */
  | { readonly known: false; readonly missing: readonly ('trap' | 'lure' | 'visit' | 'sample')[] };

export function seasonCost(work: SeasonWork, prices: Prices | null): SeasonCost {
  const used = { trap: work.traps, lure: work.lures, visit: work.visits, sample: work.samples };
  const kinds = (['trap', 'lure', 'visit', 'sample'] as const).filter((kind) => used[kind] > 0);
  const missing = kinds.filter((kind) => (prices?.[kind] ?? null) === null);
  if (prices === null || missing.length > 0) return { known: false, missing };
  const total = kinds.reduce((sum, kind) => sum + used[kind] * prices[kind]!, 0);
  return { known: true, currency: prices.currency, total, perDecision: work.decisions === 0 ? null : total / work.decisions };
}
