/** Where rules were made for, as the catalogue writes it and as people read it. */
import type { LocalName } from './types.ts';

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

/** A region's name; one that a program wrote itself is read as it stands. */
export const regionName = (region: string): LocalName =>
  (REGIONS as Record<string, LocalName>)[region] ?? { en: region, es: region };
