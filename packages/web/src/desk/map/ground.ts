import type { ReactNode } from 'react';
import type { Place } from '../../shared/places/projection.ts';

/** The ground as it now lies under the marks. */
export interface GroundNow {
  readonly width: number;
  readonly height: number;
  /** True without a base map: then a graticule is drawn. */
  readonly plain: boolean;
  readonly metresPerPixel: number;
  readonly project: (place: Place) => readonly [number, number];
  readonly placeAt: (x: number, y: number) => Place;
}

export interface GroundProps {
  /** What must be in sight at first. */
  readonly places: readonly Place[];
  readonly label: string;
  readonly children: (now: GroundNow) => ReactNode;
}

/** Room that names want on both sides of what must be in sight. */
export const roomBeside = (width: number): number => Math.min(150, Math.max(56, width * 0.16));
