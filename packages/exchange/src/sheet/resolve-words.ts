import { CellFault, catalogue, nearestFew, TRAP_DESIGNS, type TrapDesign } from '@duskwatch/core';

const plain = (text: string): string =>
  text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');

/** Every name by itself: common names list several with commas or slashes between. */
const insectNames = new Map(
  catalogue.insects.flatMap(({ id, scientificName, commonName }) =>
    [id, scientificName, ...[commonName.en, commonName.es].flatMap((names) => names.split(/[,/()]| or | o /))].map(
      (name) => [plain(name), id] as const,
    ),
  ),
);

/** The catalogue's slug for an insect named in any way it knows. */
export function insectNamed(text: string): string | CellFault {
  const slug = insectNames.get(plain(text));
  if (slug !== undefined) return slug;
  const close = nearestFew(plain(text), insectNames.keys()).map((name) => insectNames.get(name)!);
  const fix =
    close.length > 0
      ? `Did you mean ${[...new Set(close)].join(' or ')}?`
      : `Use one of ${catalogue.insects.map(({ id }) => id).join(', ')}.`;
  return new CellFault('an insect of the catalogue, by its slug, scientific or common name', fix);
}

export function designNamed(text: string): TrapDesign | CellFault {
  const found = TRAP_DESIGNS.find((design) => design === plain(text));
  return (
    found ?? new CellFault(`one of ${TRAP_DESIGNS.join(', ')}`, 'Use one of these words; other stands for any other design.')
  );
}
