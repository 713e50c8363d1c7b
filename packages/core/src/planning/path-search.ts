/**
 * A short way through all points of a matrix: the shortest for few points, else found by iterated local search.
 *
 * Every question is turned into a closed tour from an anchor, so that ends need no care of their own.
 */

import { randomSteps } from './random-steps.ts';

/** Cost from row to column; need not be the same both ways. */
export type Matrix = readonly (readonly number[])[];

export interface PathOptions {
  /** The point the way begins at; null: wherever it is shortest. */
  readonly start: number | null;
  /** True when the way ends where it began. */
  readonly returns: boolean;
}

/** A tour through all points of `cost` that begins and ends at `anchor`. */
export interface ClosedTour {
  readonly cost: Matrix;
  readonly anchor: number;
}

/** Cost along a path, and back to its start when it returns. */
export function pathCost(cost: Matrix, path: readonly number[], returns = false): number {
  let sum = 0;
  for (let i = 1; i < path.length; i++) sum += cost[path[i - 1]!]![path[i]!]!;
  return returns && path.length > 1 ? sum + cost[path.at(-1)!]![path[0]!]! : sum;
}

/**
 * An open way from a start is a tour whose last leg is free; one with both ends open is a tour through one more point
 * that is no distance from any.
 */
export function closedTour(cost: Matrix, { start, returns }: PathOptions): ClosedTour {
  if (returns) return { cost, anchor: start ?? 0 };
  if (start !== null) return { cost: cost.map((row) => row.with(start, 0)), anchor: start };
  const nowhere = new Array<number>(cost.length + 1).fill(0);
  return { cost: [...cost.map((row) => [...row, 0]), nowhere], anchor: cost.length };
}

/** Up to this many points of the tour the shortest is found for certain. */
const EXACT_POINTS = 11;
/** Kicks in a row without gain before the search ends. */
const IDLE_KICKS = 60;
/** A kick cuts the tour within a stretch this long: neighbours change places, and the rest stays good. */
const KICK_REACH = 30;

/** All points once, in a short order. The same input gives the same order. */
export function shortPath(cost: Matrix, options: PathOptions): number[] {
  if (cost.length < 2) return [...cost.keys()];
  const tour = closedTour(cost, options);
  const order = tour.cost.length <= EXACT_POINTS ? shortestTour(tour) : kickedTour(tour);
  return order.filter((point) => point < cost.length);
}

/**
 * The shortest tour, by the cheapest way to have seen each set of points and stand at each of them.
 * Source: Held & Karp 1962, J. SIAM 10:196–210 (from memory). Time n²·2ⁿ.
 */
function shortestTour({ cost, anchor }: ClosedTour): number[] {
  const others = [...cost.keys()].filter((point) => point !== anchor);
  const m = others.length;
  const sets = 1 << m;
  const least = new Float64Array(sets * m).fill(Infinity);
  const before = new Int8Array(sets * m).fill(-1);
  for (let j = 0; j < m; j++) least[(1 << j) * m + j] = cost[anchor]![others[j]!]!;
  for (let set = 1; set < sets; set++) {
    for (let j = 0; j < m; j++) {
      const here = least[set * m + j]!;
      if (here === Infinity) continue;
      for (let next = 0; next < m; next++) {
        if (set & (1 << next)) continue;
        const state = (set | (1 << next)) * m + next;
        const reached = here + cost[others[j]!]![others[next]!]!;
        if (reached < least[state]!) {
          least[state] = reached;
          before[state] = j;
        }
      }
    }
  }
  let set = sets - 1;
  let at = 0;
  const whole = (j: number) => least[set * m + j]! + cost[others[j]!]![anchor]!;
  for (let j = 1; j < m; j++) if (whole(j) < whole(at)) at = j;
  const order: number[] = [];
  while (at >= 0) {
    order.unshift(others[at]!);
    const last = before[set * m + at]!;
    set &= ~(1 << at);
    at = last;
  }
  return [anchor, ...order];
}

/**
 * Nearest neighbour, improved; then the best tour is cut at three places, the two stretches between change places, and
 * the result is improved again, as long as that gains. Source: Martin, Otto & Felten 1991, Complex Systems 5:299–326
 * (the double bridge as a kick; from memory).
 */
function kickedTour({ cost, anchor }: ClosedTour): number[] {
  const n = cost.length;
  const random = randomSteps();
  const place = (from: number, to: number) => from + Math.floor(random() * (to - from));
  let best = improveTour(cost, nearestNeighbour(cost, anchor));
  let least = pathCost(cost, best, true);
  for (let idle = 0; idle < IDLE_KICKS; idle++) {
    const from = place(1, Math.max(2, n - KICK_REACH));
    const to = Math.min(n, from + KICK_REACH);
    const [a, b, c] = [place(from, to), place(from, to), place(from, to)].sort((x, y) => x - y) as [number, number, number];
    const swapped = [...best.slice(0, a), ...best.slice(b, c), ...best.slice(a, b), ...best.slice(c)];
    const tour = improveTour(cost, swapped);
    const length = pathCost(cost, tour, true);
    if (length < least - ROUNDING) {
      [best, least] = [tour, length];
      idle = -1;
    }
  }
  return best;
}

function nearestNeighbour(cost: Matrix, anchor: number): number[] {
  const left = new Set(cost.keys());
  left.delete(anchor);
  const tour = [anchor];
  while (left.size > 0) {
    const from = cost[tour.at(-1)!]!;
    const next = [...left].reduce((best, point) => (from[point]! < from[best]! ? point : best));
    tour.push(next);
    left.delete(next);
  }
  return tour;
}

const ROUNDING = 1e-9;

/**
 * 2-opt (turn a stretch around) and Or-opt (move a stretch of up to three, either way round) until neither helps. The
 * first point stays where it is. Sources: Croes 1958, Oper. Res. 6:791–812; Or 1976, thesis, Northwestern University
 * (both from memory).
 */
function improveTour(cost: Matrix, from: readonly number[]): number[] {
  const tour = [...from];
  for (let moved = true; moved; ) {
    moved = turnStretches(cost, tour);
    moved = moveStretches(cost, tour) || moved;
  }
  return tour;
}

function turnStretches(cost: Matrix, tour: number[]): boolean {
  const n = tour.length;
  let moved = false;
  for (let i = 1; i < n - 1; i++) {
    // A stretch may cost more one way than the other.
    let [forwards, backwards] = [0, 0];
    for (let j = i + 1; j < n; j++) {
      const [before, first, last, after] = [tour[i - 1]!, tour[i]!, tour[j]!, tour[(j + 1) % n]!];
      forwards += cost[tour[j - 1]!]![last]!;
      backwards += cost[last]![tour[j - 1]!]!;
      const now = cost[before]![first]! + forwards + cost[last]![after]!;
      if (cost[before]![last]! + backwards + cost[first]![after]! < now - ROUNDING) {
        reverse(tour, i, j);
        [forwards, backwards] = [backwards, forwards];
        moved = true;
      }
    }
  }
  return moved;
}

function reverse(tour: number[], from: number, to: number): void {
  for (let [i, j] = [from, to]; i < j; i++, j--) [tour[i], tour[j]] = [tour[j]!, tour[i]!];
}

function moveStretches(cost: Matrix, tour: number[]): boolean {
  const n = tour.length;
  let moved = false;
  for (let size = 1; size <= Math.min(3, n - 2); size++) {
    for (let i = 1; i + size <= n; i++) {
      const stretch = tour.slice(i, i + size);
      const [before, first, last, after] = [tour[i - 1]!, stretch[0]!, stretch.at(-1)!, tour[(i + size) % n]!];
      const freed = cost[before]![first]! + cost[last]![after]! - cost[before]![after]!;
      const turning = pathCost(cost, stretch.toReversed()) - pathCost(cost, stretch);
      // `k` is the place that the stretch would follow.
      for (let k = 0; k < n; k++) {
        if (k >= i - 1 && k < i + size) continue;
        const [left, right] = [tour[k]!, tour[(k + 1) % n]!];
        const straight = cost[left]![first]! + cost[last]![right]! - cost[left]![right]!;
        const turned = cost[left]![last]! + cost[first]![right]! - cost[left]![right]! + turning;
        if (Math.min(straight, turned) >= freed - ROUNDING) continue;
        tour.splice(i, size);
        tour.splice(k < i ? k + 1 : k + 1 - size, 0, ...(straight <= turned ? stretch : stretch.toReversed()));
        moved = true;
        break;
      }
    }
  }
  return moved;
}
