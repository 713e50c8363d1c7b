/** The traps of a program as rows: filtered, sorted, and as text for elsewhere. */
import type { StationPlace, StationTrap, TrapsView } from '@duskwatch/core';
import { isDue } from '../../shared/traps/due.ts';
import { localName } from '../../text/names.ts';
import { sorted } from '../../ui/table/cells.ts';
import type { ColumnId, StateFilter, StationsSearch } from './search.ts';

export interface Row {
  readonly place: StationPlace;
  readonly trap: StationTrap;
}

export const allRows = (view: TrapsView): Row[] => view.places.flatMap((place) => place.traps.map((trap) => ({ place, trap })));

export function selectRows(view: TrapsView, search: StationsSearch): Row[] {
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
  return sorted(kept.sort(byName), VALUE[search.sort ?? 'station'], search.down === 'yes');
}

function inState(trap: StationTrap, state: StateFilter): boolean {
  if (state === 'all') return true;
  return state === 'due' ? isDue(trap) : trap.state === state;
}

/** What a column sorts by; null comes last either way. */
export const VALUE: { readonly [C in ColumnId]: (row: Row) => string | number | null } = {
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

const byName = (a: Row, b: Row): number =>
  a.place.station.localeCompare(b.place.station) || b.place.place - a.place.place || a.trap.trapId.localeCompare(b.trap.trapId);

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
