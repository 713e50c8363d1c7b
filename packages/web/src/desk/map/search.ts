import { type DaySearch, daySearch } from '../../browser/address.ts';

/** What the address of the map says: the day and the insect. */
export interface MapSearch extends DaySearch {
  readonly insect?: string | undefined;
}

export const mapSearch = (raw: Readonly<Record<string, unknown>>): MapSearch => ({
  ...daySearch(raw),
  insect: typeof raw.insect === 'string' && raw.insect !== '' ? raw.insect : undefined,
});
