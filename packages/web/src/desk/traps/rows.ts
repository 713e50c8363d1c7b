/** The traps of a program as rows: filtered, sorted, and as text for elsewhere. */
import type { StationPlace, StationsView, StationTrap } from '@duskwatch/core';
import { isDue } from '../../shared/traps/due.ts';
import { localName } from '../../text/names.ts';
import type { ColumnId, StateFilter, StationsSearch } from './search.ts';

export interface Row {
  readonly place: StationPlace;
  readonly trap: StationTrap;
}

export const allRows = (view: StationsView): Row[] =>
  view.places.flatMap((place) => place.traps.map((trap) => ({ place, trap })));

export function selectRows(view: StationsView, search: StationsSearch): Row[] {
  const state = search.state ?? 'hanging';
  const words = (search.find ?? '').toLocaleLowerCase().split(/\s+/).filter(Boolean);
  const kept = allRows(view).filter(({ place, trap }) => {
    if (!inState(trap, state)) return false;
    if (search.insect && trap.insect.id !== search.insect) return false;
    if (search.farm && !trap.informs.some(({ farm }) => farm === search.farm)) return false;
    const said = [place.station, trap.trapId, ...trap.informs.flatMap(({ name, farm }) => [name, farm])]
      .join(' ')
      .toLocaleLowerCase();
    return words.every((word) => said.includes(word));
  });
  return sorted(kept, search.sort ?? 'station', search.down === 'yes');
}

function inState(trap: StationTrap, state: StateFilter): boolean {
  if (state === 'all') return true;
  return state === 'due' ? isDue(trap) : trap.state === state;
}

/** What a column sorts by; null comes last either way. */
const VALUE: { readonly [C in ColumnId]: (row: Row) => string | number | null } = {
  station: ({ place }) => place.station,
  trap: ({ trap }) => trap.trapId,
  insect: ({ trap }) => localName(trap.insect.commonName),
  design: ({ trap }) => trap.design,
  informs: ({ trap }) => trap.informs[0]?.name ?? null,
  hung: ({ trap }) => trap.hungOn,
  check: ({ trap }) => trap.lastVisit?.on ?? null,
  rate: ({ trap }) => trap.newest?.perNight ?? null,
  due: ({ trap }) => trap.check?.due ?? null,
  lure: ({ trap }) => trap.lure?.placedOn ?? null,
};

function sorted(rows: readonly Row[], by: ColumnId, down: boolean): Row[] {
  const value = VALUE[by];
  const sign = down ? -1 : 1;
  return [...rows].sort((a, b) => {
    const [x, y] = [value(a), value(b)];
    if (x === null || y === null) return x === y ? byName(a, b) : x === null ? 1 : -1;
    const order = typeof x === 'number' ? x - (y as number) : x.localeCompare(y as string);
    return order === 0 ? byName(a, b) : sign * order;
  });
}

const byName = (a: Row, b: Row): number =>
  a.place.station.localeCompare(b.place.station) || b.place.place - a.place.place || a.trap.trapId.localeCompare(b.trap.trapId);

/** Text that a spreadsheet takes for a formula is made plain: an id may begin with = + - @. */
const quoted = (value: string | number | null): string => {
  const written = value === null ? '' : String(value);
  const text = typeof value === 'string' && /^[=+\-@\t\r]/.test(written) ? `'${written}` : written;
  return /[",\n\r]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
};

export const asCsv = (head: readonly string[], rows: readonly (readonly (string | number | null)[])[]): string =>
  [head, ...rows].map((cells) => cells.map(quoted).join(',')).join('\r\n');

/** Plain numbers and ISO days: a spreadsheet reads them in any language. */
export const csvCells = ({ place, trap }: Row): (string | number | null)[] => [
  place.station,
  trap.trapId,
  trap.insect.scientificName,
  trap.design,
  trap.informs.map(({ fieldId }) => fieldId).join('; '),
  trap.hungOn,
  trap.takenDownOn,
  trap.lastVisit?.on ?? null,
  trap.lastVisit?.count ?? null,
  trap.lastVisit?.condition ?? null,
  trap.newest === null ? null : Number(trap.newest.perNight.toPrecision(4)),
  trap.check?.due ?? null,
  trap.lure?.placedOn ?? null,
  trap.lure?.lifeDays ?? null,
  trap.latitude,
  trap.longitude,
];
