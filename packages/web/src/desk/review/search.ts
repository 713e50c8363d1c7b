import { type DaySearch, daySearch } from '../../browser/address.ts';

export const PARTS = ['review', 'years', 'designs', 'lures', 'infestation'] as const;
export type Part = (typeof PARTS)[number];

/** What the address of the review says. */
export interface ReviewSearch extends DaySearch {
  readonly part?: Part | undefined;
  readonly farm?: string | undefined;
  readonly insect?: string | undefined;
  readonly axis?: 'heat' | undefined;
}

const text = (value: unknown) => (typeof value === 'string' && value !== '' ? value : undefined);

export const reviewSearch = (raw: Readonly<Record<string, unknown>>): ReviewSearch => ({
  ...daySearch(raw),
  part: PARTS.find((part) => part === raw.part),
  farm: text(raw.farm),
  insect: text(raw.insect),
  axis: raw.axis === 'heat' ? 'heat' : undefined,
});
