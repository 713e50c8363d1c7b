import type { Verb } from '@duskwatch/core';
import { type DaySearch, daySearch, oneOf, type RawSearch, textIn } from '../../browser/address.ts';
import { VERBS } from '../../shared/advice/verbs.ts';

export const SORTS = ['farm', 'urgency', 'name', 'crop'] as const;
type Sort = (typeof SORTS)[number];

/** What the address of This week says: the day, the filters, and the one cell whose evidence is open. */
export interface WeekSearch extends DaySearch {
  readonly farm?: string | undefined;
  readonly crop?: string | undefined;
  readonly insect?: string | undefined;
  readonly verb?: Verb | undefined;
  readonly sort?: Sort | undefined;
  readonly open?: string | undefined;
}

export const weekSearch = (raw: RawSearch): WeekSearch => ({
  ...daySearch(raw),
  farm: textIn(raw.farm),
  crop: textIn(raw.crop),
  insect: textIn(raw.insect),
  verb: oneOf(raw.verb, VERBS),
  sort: oneOf(raw.sort, SORTS),
  open: textIn(raw.open),
});
