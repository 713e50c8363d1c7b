/** Where rules were made for, as the catalogue writes it and as people read it. */
import type { Shape } from '../base/shape.ts';
import type { localTextSchema } from './schema.ts';

type LocalName = Shape<typeof localTextSchema>;

export const REGIONS = {
  Delaware: { en: 'Delaware', es: 'Delaware' },
  Indiana: { en: 'Indiana', es: 'Indiana' },
  Maine: { en: 'Maine', es: 'Maine' },
  'New Hampshire': { en: 'New Hampshire', es: 'Nuevo Hampshire' },
  'South Dakota': { en: 'South Dakota', es: 'Dakota del Sur' },
  Wisconsin: { en: 'Wisconsin', es: 'Wisconsin' },
  'Midwestern United States': { en: 'Midwestern United States', es: 'medio oeste de los Estados Unidos' },
  'Northeastern United States': { en: 'Northeastern United States', es: 'noreste de los Estados Unidos' },
} as const satisfies Record<string, LocalName>;

export type Region = keyof typeof REGIONS;

const WITHIN: Readonly<Partial<Record<Region, Region>>> = {
  Indiana: 'Midwestern United States',
  'South Dakota': 'Midwestern United States',
  Wisconsin: 'Midwestern United States',
  Maine: 'Northeastern United States',
  'New Hampshire': 'Northeastern United States',
};

/**
 * How far a rule's region is from the program's own: 0 the same, 1 a wider one that holds it, 2 tied to none (or the
 * program names no region), 3 another.
 */
export function regionDistance(region: Region | '', own: string | null): 0 | 1 | 2 | 3 {
  if (own === null || region === '') return 2;
  if (region === own) return 0;
  return WITHIN[own as Region] === region ? 1 : 3;
}

/** The region that somebody names, by any of its names and in any case; null when the catalogue has none such. */
export function regionCalled(written: string): Region | null {
  const plain = (name: string) => name.trim().toLowerCase();
  const wanted = plain(written);
  const named = Object.entries(REGIONS).find(([id, { en, es }]) => [id, en, es].some((name) => plain(name) === wanted));
  return (named?.[0] as Region | undefined) ?? null;
}

/** A region's name; one that a program wrote itself is read as it stands. */
export const regionName = (region: string): LocalName =>
  (REGIONS as Record<string, LocalName>)[region] ?? { en: region, es: region };
