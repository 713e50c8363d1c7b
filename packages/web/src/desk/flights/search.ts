import { type DaySearch, daySearch, oneOf, type RawSearch, textIn } from '../../browser/address.ts';

/** What the address of the flights says: the day, the rows, and the axis. */
export interface FlightsSearch extends DaySearch {
  readonly insect?: string | undefined;
  readonly farm?: string | undefined;
  /** Absent: the calendar. */
  readonly axis?: 'heat' | undefined;
}

export const flightsSearch = (raw: RawSearch): FlightsSearch => ({
  ...daySearch(raw),
  insect: textIn(raw.insect),
  farm: textIn(raw.farm),
  axis: oneOf(raw.axis, ['heat']),
});
