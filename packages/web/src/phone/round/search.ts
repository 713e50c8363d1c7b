/** What the address of the round says, so that a reload and the phone's back button keep the place. */
export interface RoundSearch {
  readonly station?: string | undefined;
  readonly trap?: string | undefined;
  readonly show?: 'unsent' | undefined;
  /** Stations of a planned round in driving order, with `;` between. */
  readonly stops?: string | undefined;
}

const text = (value: unknown) => (typeof value === 'string' && value !== '' ? value : undefined);

export const roundSearch = (raw: Readonly<Record<string, unknown>>): RoundSearch => ({
  station: text(raw.station),
  trap: text(raw.trap),
  stops: text(raw.stops),
  show: raw.show === 'unsent' ? 'unsent' : undefined,
});
