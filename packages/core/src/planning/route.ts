/** The order in which to drive past stations. */
import { distanceKm } from '../base/distance.ts';
import { longWay, type Plane } from './long-way.ts';
import { type Matrix, type PathOptions, shortPath } from './path-search.ts';
import { lowerBound } from './route-bound.ts';

export interface Stop {
  readonly id: string;
  readonly latitude: number | null;
  readonly longitude: number | null;
}

export interface Route<S extends Stop> {
  /** Stops with coordinates in driving order, then those without in the order given. */
  readonly order: readonly S[];
  /** Great-circle kilometres along the stops that have coordinates; roads are longer. */
  readonly lengthKm: number;
}

/** With more stops than this, a table of all their distances costs more time than the order is worth. */
const MOST_IN_A_TABLE = 60;

/** A short open path past all stops, from `startId` when given, else from whichever end makes it shortest. */
export function driveOrder<S extends Stop>(stops: readonly S[], startId: string | null = null): Route<S> {
  const placed = stops.filter(isPlaced);
  const unplaced = stops.filter((stop) => !isPlaced(stop));
  const options = openFrom(placed, startId);
  const path =
    placed.length > MOST_IN_A_TABLE
      ? longWay(onPlane(placed), { start: options.start })
      : shortPath(greatCircles(placed), options);
  const order = path.map((index) => placed[index]!);
  const lengthKm = order.slice(1).reduce((sum, stop, index) => sum + distanceKm(order[index]!, stop)!, 0);
  return { order: [...order, ...unplaced], lengthKm };
}

/**
 * A fair order to drive by, found at once: where an answer cannot wait for the shortest. Stops without coordinates come
 * last, in the order given.
 */
export function quickOrder<S extends Omit<Stop, 'id'>>(stops: readonly S[]): S[] {
  const placed = stops.filter(isPlaced);
  const path = placed.length < 4 ? [...placed.keys()] : longWay(onPlane(placed), { start: null, kicks: 0 });
  return [...path.map((index) => placed[index]!), ...stops.filter((stop) => !isPlaced(stop))];
}

/** Degrees as lengths that can be compared: meridians draw together towards the poles. */
function onPlane(placed: readonly Omit<Stop, 'id'>[]): Plane {
  const middle = placed.reduce((sum, { latitude }) => sum + latitude! / placed.length, 0);
  const narrow = Math.cos((middle * Math.PI) / 180);
  return {
    x: Float64Array.from(placed, ({ longitude }) => longitude! * narrow),
    y: Float64Array.from(placed, ({ latitude }) => latitude!),
  };
}

/**
 * Kilometres that no order of these stops can undercut: how far `order` may be from the shortest there is.
 * Stops without coordinates are passed over.
 */
export function driveBoundKm(order: readonly Stop[], startId: string | null = null): number {
  const placed = order.filter(isPlaced);
  return lowerBound(greatCircles(placed), openFrom(placed, startId), [...placed.keys()]);
}

export const isPlaced = (stop: Omit<Stop, 'id'>): boolean => stop.latitude !== null && stop.longitude !== null;

/** Great-circle kilometres between stops that all have coordinates. */
export function greatCircles(placed: readonly Omit<Stop, 'id'>[]): Matrix {
  return placed.map((a) => placed.map((b) => distanceKm(a, b)!));
}

function openFrom(placed: readonly Stop[], startId: string | null): PathOptions {
  const start = placed.findIndex(({ id }) => id === startId);
  return { start: start < 0 ? null : start, returns: false };
}
