/** Names that sheets have for insects and trap designs, as the catalogue's own. */
import {
  CellFault,
  catalogue,
  insectIn,
  nearestFew,
  ownInsectIn,
  plainName,
  TRAP_DESIGNS,
  type TrapDesign,
} from '@duskwatch/core';

/** The catalogue's slug for an insect named in any way it knows; of another its own, by its scientific name. */
export function insectNamed(text: string): string | CellFault {
  const known = new Set(catalogue.insects.map(({ id }) => id));
  const slug = known.has(text) ? text : insectIn(text)?.slug;
  if (slug !== undefined && known.has(slug)) return slug;
  const own = ownInsectIn(text, [...known]);
  if (own !== null) return own;
  const names = new Map(
    catalogue.insects.flatMap(({ id, scientificName, commonName }) =>
      [id, scientificName, ...[commonName.en, commonName.es].flatMap((names) => names.split('/'))].map(
        (name) => [plainName(name), id] as const,
      ),
    ),
  );
  const close = [...new Set(nearestFew(plainName(text), names.keys()).map((name) => names.get(name)!))];
  const fix = close.length > 0 ? `Did you mean ${close.join(' or ')}?` : `Use one of ${[...known].join(', ')}.`;
  return new CellFault(
    'an insect of the catalogue, by its slug, scientific or common name, or another by its scientific name',
    fix,
  );
}

export function designNamed(text: string): TrapDesign | CellFault {
  return (
    designWritten(text) ??
    new CellFault(`one of ${TRAP_DESIGNS.join(', ')}`, 'Use one of these words; other stands for any other design.')
  );
}

/** What people write for a design besides its own word (common practice, no source). */
const DESIGNS: readonly (readonly [TrapDesign, RegExp])[] = [
  ['wire-cone', /\b(wire|metal|hardware cloth|alambre)\b/],
  ['mesh-cone', /\b(mesh|net|nylon|cone|malla|cono)\b/],
  ['bucket', /\b(bucket|funnel|universal|uni ?trap|cubeta|balde|embudo)\b/],
  ['delta', /\b(delta|wing|sticky|diamond|ala|pegajosa|adhesiva)\b/],
];

/** The design that a text names, or null. */
export function designWritten(text: string): TrapDesign | null {
  const plain = plainName(text);
  if (plain === '') return null;
  const own = TRAP_DESIGNS.find((design) => plainName(design) === plain);
  return own ?? DESIGNS.find(([, words]) => words.test(plain))?.[0] ?? null;
}
