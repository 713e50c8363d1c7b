import { fromKilometres, fromMetres, type LengthUnit } from '@duskwatch/core';
import { scaleBar } from '../../shared/places/projection.ts';

/** A round length in the reader's unit, of at most so many pixels: `500 m`, `2 km`, `1000 ft`, `5 mi`. */
export function scaleBarIn(unit: LengthUnit, metresPerPixel: number, atMostPixels: number): { text: string; pixels: number } {
  const [small, large] = unit === 'm' ? (['m', 'km'] as const) : (['ft', 'mi'] as const);
  const largePerPixel = fromKilometres(metresPerPixel / 1000, unit);
  const isLarge = largePerPixel * atMostPixels >= 1;
  const { metres: length, pixels } = scaleBar(isLarge ? largePerPixel : fromMetres(metresPerPixel, unit), atMostPixels);
  return { text: `${length} ${isLarge ? large : small}`, pixels };
}
