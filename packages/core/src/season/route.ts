/** The order in which to drive past stations. */
import { distanceKm } from '../units/distance.ts';

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

/**
 * A short open path past all stops, from `startId` when given, else from whichever end makes it shortest.
 *
 * Nearest neighbour from several starts, each improved by 2-opt (turn a stretch around) and Or-opt (move a stretch of up to
 * three stops) until neither helps. Exhaustive for up to 8 stops. Sources: Croes 1958, Oper. Res. 6:791–812 (2-opt);
 * Or 1976, thesis, Northwestern University (Or-opt); both from memory.
 */
export function driveOrder<S extends Stop>(stops: readonly S[], startId: string | null = null): Route<S> {
  const placed = stops.filter((stop) => stop.latitude !== null && stop.longitude !== null);
  const unplaced = stops.filter((stop) => stop.latitude === null || stop.longitude === null);
  const n = placed.length;
  if (n < 2) return { order: [...placed, ...unplaced], lengthKm: 0 };
  const km = placed.map((a) => placed.map((b) => distanceKm(a, b)!));
  const fixed = startId === null ? -1 : placed.findIndex((stop) => stop.id === startId);
  const starts = fixed >= 0 ? [fixed] : placed.map((_, index) => index);
  const better = n <= EXHAUSTIVE ? shortest(km, starts) : improveFrom(km, starts.slice(0, STARTS), fixed >= 0);
  return { order: [...better.map((index) => placed[index]!), ...unplaced], lengthKm: pathLength(km, better) };
}

const EXHAUSTIVE = 8;
const STARTS = 12;
type Matrix = readonly (readonly number[])[];

function pathLength(km: Matrix, path: readonly number[]): number {
  let sum = 0;
  for (let i = 1; i < path.length; i++) sum += km[path[i - 1]!]![path[i]!]!;
  return sum;
}

/** Depth-first over all orders, cut where a path is already longer than the best. */
function shortest(km: Matrix, starts: readonly number[]): number[] {
  let best: number[] = [];
  let bestKm = Infinity;
  const extend = (path: number[], length: number) => {
    if (length >= bestKm) return;
    if (path.length === km.length) {
      best = [...path];
      bestKm = length;
      return;
    }
    for (let next = 0; next < km.length; next++) {
      if (path.includes(next)) continue;
      path.push(next);
      extend(path, length + km[path.at(-2)!]![next]!);
      path.pop();
    }
  };
  for (const start of starts) extend([start], 0);
  return best;
}

function improveFrom(km: Matrix, starts: readonly number[], fixedStart: boolean): number[] {
  const paths = starts.map((start) => improve(km, nearestNeighbour(km, start), fixedStart));
  return paths.reduce((best, path) => (pathLength(km, path) < pathLength(km, best) ? path : best));
}

function nearestNeighbour(km: Matrix, start: number): number[] {
  const left = new Set(km.keys());
  const path = [start];
  left.delete(start);
  while (left.size > 0) {
    const from = km[path.at(-1)!]!;
    const next = [...left].reduce((best, stop) => (from[stop]! < from[best]! ? stop : best));
    path.push(next);
    left.delete(next);
  }
  return path;
}

/** Applies improving moves until none is left. The first stop stays when it is fixed. */
function improve(km: Matrix, path: number[], fixedStart: boolean): number[] {
  const first = fixedStart ? 1 : 0;
  const step = (i: number, j: number) => (i < 0 || j >= path.length ? 0 : km[path[i]!]![path[j]!]!);
  for (let moved = true; moved; ) {
    moved = false;
    for (let i = first; i < path.length - 1; i++) {
      for (let j = i + 1; j < path.length; j++) {
        const before = step(i - 1, i) + step(j, j + 1);
        const after = (i === 0 ? 0 : km[path[i - 1]!]![path[j]!]!) + (j === path.length - 1 ? 0 : km[path[i]!]![path[j + 1]!]!);
        if (after < before - 1e-9) {
          path.splice(i, j - i + 1, ...path.slice(i, j + 1).reverse());
          moved = true;
        }
      }
    }
    moved = moveStretches(km, path, first) || moved;
  }
  return path;
}

function moveStretches(km: Matrix, path: number[], first: number): boolean {
  for (let size = 1; size <= 3; size++) {
    for (let i = first; i + size <= path.length; i++) {
      const without = [...path.slice(0, i), ...path.slice(i + size)];
      const stretch = path.slice(i, i + size);
      const now = pathLength(km, path);
      for (let at = first; at <= without.length; at++) {
        if (at === i) continue;
        for (const turned of [stretch, [...stretch].reverse()]) {
          const tried = [...without.slice(0, at), ...turned, ...without.slice(at)];
          if (pathLength(km, tried) < now - 1e-9) {
            path.splice(0, path.length, ...tried);
            return true;
          }
        }
      }
    }
  }
  return false;
}
