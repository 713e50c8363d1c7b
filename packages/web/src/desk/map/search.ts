import { type DaySearch, daySearch, oneOf, type RawSearch, textIn } from '../../browser/address.ts';

/** What the address of the map says: the day, what is shown, and what was pointed at. */
export interface MapSearch extends DaySearch {
  /** Absent: the verbs of the fields. */
  readonly show?: 'rates' | undefined;
  readonly insect?: string | undefined;
  readonly design?: string | undefined;
  /** The key of a station's mark; with it no field. */
  readonly station?: string | undefined;
  readonly field?: string | undefined;
}

export const mapSearch = (raw: RawSearch): MapSearch => {
  const station = textIn(raw.station);
  return {
    ...daySearch(raw),
    show: oneOf(raw.show, ['rates']),
    insect: textIn(raw.insect),
    design: textIn(raw.design),
    station,
    field: station === undefined ? textIn(raw.field) : undefined,
  };
};
