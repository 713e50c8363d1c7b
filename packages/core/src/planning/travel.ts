import { distanceKm } from '../base/distance.ts';
import { SEASON_ASSUMPTIONS } from './assumptions.ts';
import type { Matrix } from './path-search.ts';
import type { Stop } from './route.ts';

/** Minutes of driving that the user knows, between stations and, by their ids, the places where scouts start. */
export interface TravelTable {
  readonly ids: readonly string[];
  /** Minutes from the row's place to the column's. */
  readonly minutes: Matrix;
}

export interface Travel {
  /** Minutes of driving; null where neither table nor coordinates know. */
  readonly minutes: (from: Stop, to: Stop) => number | null;
  /** Road kilometres, estimated from the great circle; null without coordinates. */
  readonly km: (from: Stop, to: Stop) => number | null;
}

/** The user's table first; else great-circle kilometres, lengthened by the road factor, at the assumed speed. */
export function travelBy(table: TravelTable | null, speed: { kmPerHour?: number; roadFactor?: number } = {}): Travel {
  const { drivingKmPerHour, roadFactor: usualFactor } = SEASON_ASSUMPTIONS;
  const { kmPerHour = drivingKmPerHour.value, roadFactor = usualFactor.value } = speed;
  const place = new Map(table?.ids.map((id, index) => [id, index]));
  const km = (from: Stop, to: Stop): number | null => {
    const circle = distanceKm(from, to);
    return circle === null ? null : circle * roadFactor;
  };
  return {
    km,
    minutes: (from, to) => {
      const [row, column] = [place.get(from.id), place.get(to.id)];
      if (row !== undefined && column !== undefined) return table!.minutes[row]![column]!;
      const road = km(from, to);
      return road === null ? null : (road / kmPerHour) * 60;
    },
  };
}
