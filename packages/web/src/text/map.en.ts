/** Every string of the map in English. */
const plural = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;

export const mapEn = {
  title: 'Map',
  sub: (n: number, hidden: number) =>
    `${plural(n, 'station', 'stations')} with a place${hidden ? `, ${hidden} without: see the table` : ''}`,
  loading: 'Reading the stations …',
  insect: 'Insect',
  all: 'All insects',
  label: (insect: string) => `Stations for ${insect}: size is the rate, hollow is unfit, a ring is due`,
  noWebgl: 'This browser draws no map here (no WebGL), so the stations stand on a plain plan.',
  local: 'Catch is local: nothing is drawn between the traps.',
  zoomIn: 'Nearer',
  zoomOut: 'Farther',
  fit: 'Show all',
  north: 'N',
  noRateShort: 'no rate',
  key: {
    title: 'Marks',
    rate: 'rate: area grows with moths per trap per night',
    unfit: 'no information now: unfit, overdue or never counted',
    due: 'check or lure due',
    field: 'field',
  },
  table: 'Table behind the map',
  columns: { station: 'Station', insect: 'Insect', trap: 'Trap', rate: 'Moths a night', state: 'State', place: 'Place' },
  empty: 'No station has coordinates yet. Give traps a latitude and longitude, and they stand here.',

  base: {
    title: 'Base map',
    lead: 'Optional. Without one nothing is asked of any other server. What you name here stays in this browser.',
    none: 'None: plain paper',
    file: 'A PMTiles file of this device',
    fileHint: 'Read in place and never sent. Chosen anew at each visit.',
    address: 'An address',
    addressHint: 'A style (…/style.json), tiles (…/{z}/{x}/{y}.png) or a PMTiles file (….pmtiles).',
    attribution: 'Credit to show',
    attributionHint: 'As its provider asks.',
    use: 'Use it',
    faulty: 'That is no address that begins with https:// or with /. Plain http:// goes only to this machine.',
    refused: (origin: string) =>
      `This server does not let its pages ask ${origin}. Whoever runs it allows that by starting it with --map-origin ${origin}.`,
    failed: (why: string) => `The base map could not be read: ${why}`,
  },
};

export type MapWords = typeof mapEn;
