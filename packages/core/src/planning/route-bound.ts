import { type ClosedTour, closedTour, type Matrix, type PathOptions, pathCost } from './path-search.ts';

const ROUNDS = 600;

/**
 * A length that no way through all points can undercut, whatever its order.
 *
 * A tour less one point is a tree, so no tour is shorter than the least 1-tree: the least tree over all points but one,
 * and the two shortest edges of that one. Adding a weight to every edge at a point changes all tours alike, but not all
 * 1-trees: weights are raised where the tree has many branches and lowered where it ends, in steps that grow smaller.
 * Every round gives a bound, and the best is kept. Where the matrix differs both ways, the cheaper way counts. `known`
 * is any such way; its cost sets the size of the first step.
 *
 * Sources: Held & Karp 1970, Oper. Res. 18:1138–1162; Volgenant & Jonker 1982, Eur. J. Oper. Res. 9:83–89 (the steps);
 * both from memory. The first step, three mean legs, was found by trial on stations in clusters: they need weights as
 * large as the way between clusters.
 */
export function lowerBound(cost: Matrix, options: PathOptions, known: readonly number[]): number {
  const n = cost.length;
  if (n < 2) return 0;
  const length = pathCost(cost, known, options.returns);
  if (n === 2 && options.returns) return length;
  const { tour, pull } = tourToBound(cost, options, length);
  const weight = new Float64Array(tour.cost.length);
  const firstStep = (3 * length) / weight.length;
  let best = 0;
  let lastDegree: Int32Array | null = null;
  for (let round = 0; round < ROUNDS; round++) {
    const { length: treeLength, degree } = leastOneTree(tour.cost, tour.anchor, weight);
    best = Math.max(best, treeLength + pull);
    const step = firstStep * (1 - round / ROUNDS) ** 2;
    const last = lastDegree ?? degree;
    for (let i = 0; i < weight.length; i++) weight[i]! += step * (0.6 * (degree[i]! - 2) + 0.4 * (last[i]! - 2));
    if (degree.every((d) => d === 2)) break;
    lastDegree = degree;
  }
  return Math.min(best, length);
}

/**
 * An open way from a start is bound as one with both ends open, and the start drawn to the point that joins the ends by
 * `pull`, so that every short tour takes that edge.
 */
function tourToBound(cost: Matrix, { start, returns }: PathOptions, length: number): { tour: ClosedTour; pull: number } {
  if (returns || start === null) return { tour: closedTour(cost, { start, returns }), pull: 0 };
  const open = closedTour(cost, { start: null, returns });
  const joined = open.cost.with(open.anchor, open.cost[open.anchor]!.with(start, -length));
  return { tour: { cost: joined, anchor: open.anchor }, pull: length };
}

/** Prim's tree over all points but `apart`, then two edges to it; its length less twice the weights. */
function leastOneTree(cost: Matrix, apart: number, weight: Float64Array): { length: number; degree: Int32Array } {
  const n = cost.length;
  const edge = (i: number, j: number) => Math.min(cost[i]![j]!, cost[j]![i]!) + weight[i]! + weight[j]!;
  const degree = new Int32Array(n);
  const nearest = new Float64Array(n).fill(Infinity);
  const parent = new Int32Array(n).fill(-1);
  const inTree = new Uint8Array(n);
  inTree[apart] = 1;
  let length = 0;
  for (let added = 1, at = apart === 0 ? 1 : 0; added < n; added++) {
    inTree[at] = 1;
    if (parent[at]! >= 0) {
      length += nearest[at]!;
      degree[at]!++;
      degree[parent[at]!]!++;
    }
    let next = -1;
    for (let j = 0; j < n; j++) {
      if (inTree[j]) continue;
      const length = edge(at, j);
      if (length < nearest[j]!) [nearest[j], parent[j]] = [length, at];
      if (next < 0 || nearest[j]! < nearest[next]!) next = j;
    }
    at = next;
  }
  const [first, second] = [...cost.keys()].filter((point) => point !== apart).sort((a, b) => edge(apart, a) - edge(apart, b)) as [
    number,
    number,
  ];
  degree[apart] = 2;
  degree[first]!++;
  degree[second]!++;
  length += edge(apart, first) + edge(apart, second);
  for (const w of weight) length -= 2 * w;
  return { length, degree };
}
