/** Which counts are of one trap: one insect at one place, by the names that the sheet has for it. */
import { insectIn } from '@duskwatch/core';
import type { Sighting } from './sightings.ts';

/** The name of the place of a sighting's trap, told apart by its station or farm where the trap's own name does not. */
export function trapNamer(seen: readonly Sighting[]): (sighting: Sighting) => string {
  const sheets = new Set(seen.map(({ sheet }) => sheet));
  const groupOf = ({ names, sheet }: Sighting): string =>
    [names.station, names.field, names.farm].filter((name, index, all) => name !== '' && all.indexOf(name) === index).join(' ') ||
    (sheets.size > 1 && sheet !== null && isName(sheet) ? sheet : '');
  const bareName = ({ names, ...rest }: Sighting): string =>
    names.trap || names.station || names.field || names.farm || groupOf({ names, ...rest });
  const groups = new Map<string, Set<string>>();
  for (const sighting of seen) {
    const name = bareName(sighting);
    groups.set(name, (groups.get(name) ?? new Set()).add(groupOf(sighting)));
  }
  return (sighting) => {
    const name = bareName(sighting);
    const group = groupOf(sighting);
    return (groups.get(name)?.size ?? 0) > 1 && group !== '' && group !== name ? `${group} ${name}` : name;
  };
}

/** Names that programs give to sheets, years, insects and days name no place. */
const isName = (sheet: string): boolean => {
  const plain = sheet.trim();
  return (
    !/^(sheet|hoja|tabelle|data|datos|counts?|conteos?|moths?|traps?|trampas?|raw|season|all|summary)?[\s_-]*\d*$/i.test(plain) &&
    !/\b(19|20)\d{2}\b/.test(plain) &&
    insectIn(plain) === null
  );
};
