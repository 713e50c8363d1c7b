/** Which counts are of one trap: one insect at one place, by the names that the sheet has for it. */
import { insectIn } from '@duskwatch/core';
import type { Sighting } from './sightings.ts';

/** The name of the place of a sighting's trap, told apart by its station or farm where the trap's own name does not. */
export function trapNamer(seen: readonly Sighting[]): (sighting: Sighting) => string {
  const sheets = new Set(seen.map(({ sheet }) => sheet));
  const groupOf = ({ names, sheet }: Sighting): string =>
    joined(names) || (sheets.size > 1 && sheet !== null && isName(sheet) ? sheet : '');
  const bareName = (sighting: Sighting): string => {
    const { trap, station, field, farm } = sighting.names;
    return trap || station || field || farm || groupOf(sighting);
  };
  const groups = new Map<string, Set<string>>();
  for (const sighting of seen) {
    const name = bareName(sighting);
    const known = groups.get(name);
    if (known === undefined) groups.set(name, new Set([groupOf(sighting)]));
    else known.add(groupOf(sighting));
  }
  return (sighting) => {
    const name = bareName(sighting);
    const group = groupOf(sighting);
    return (groups.get(name)?.size ?? 0) > 1 && group !== '' && group !== name ? `${group} ${name}` : name;
  };
}

const joined = ({ station, field, farm }: Sighting['names']): string =>
  station === '' && field === '' && farm === ''
    ? ''
    : [...new Set([station, field, farm])].filter((name) => name !== '').join(' ');

/** Names that programs give to sheets, years, insects and days name no place. */
const isName = (sheet: string): boolean => {
  const plain = sheet.trim();
  return (
    !/^(sheet|hoja|tabelle|data|datos|counts?|conteos?|moths?|traps?|trampas?|raw|season|all|summary)?[\s_-]*\d*$/i.test(plain) &&
    !/\b(19|20)\d{2}\b/.test(plain) &&
    insectIn(plain) === null
  );
};
