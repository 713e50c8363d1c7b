import type { IsoDay } from '@duskwatch/core';
import { daySearch } from '../../browser/address.ts';

export const PARTS = ['plan', 'numbers', 'lures', 'budget', 'truth'] as const;
export type Part = (typeof PARTS)[number];

/** What the address of the season says. */
export interface SeasonSearch {
  readonly on?: IsoDay | undefined;
  readonly year?: number | undefined;
  readonly part?: Part | undefined;
}

export const seasonSearch = (raw: Readonly<Record<string, unknown>>): SeasonSearch => {
  const year = Number(raw.year);
  return {
    ...daySearch(raw),
    year: Number.isInteger(year) && year >= 1900 && year <= 2200 ? year : undefined,
    part: PARTS.find((part) => part === raw.part),
  };
};
