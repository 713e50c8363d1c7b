import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distanceKm } from '../base/distance.ts';
import { randomFrom } from '../statistics/random.testing.ts';
import { type Matrix, pathCost, shortPath } from './path-search.ts';
import { driveBoundKm, driveOrder, type Stop } from './route.ts';
import { lowerBound } from './route-bound.ts';

const place = fc.record({
  latitude: fc.double({ min: 44.9, max: 45.1, noNaN: true }),
  longitude: fc.double({ min: -30.1, max: -29.9, noNaN: true }),
});
const stopsOf = (places: { latitude: number; longitude: number }[]): Stop[] =>
  places.map((at, index) => ({ id: `S${index}`, ...at }));
const length = (path: readonly Stop[]) => path.slice(1).reduce((sum, stop, index) => sum + distanceKm(path[index]!, stop)!, 0);

function orders<T>(items: readonly T[]): T[][] {
  return items.length < 2
    ? [[...items]]
    : items.flatMap((item, i) => orders(items.filter((_, j) => j !== i)).map((rest) => [item, ...rest]));
}

function leastOverAllOrders(cost: Matrix, fromFirst: boolean, returns: boolean): number {
  let least = Infinity;
  const points = [...cost.keys()];
  const permute = (at: number) => {
    if (at === points.length) least = Math.min(least, pathCost(cost, points, returns));
    for (let i = at; i < points.length; i++) {
      [points[at], points[i]] = [points[i]!, points[at]!];
      permute(at + 1);
      [points[at], points[i]] = [points[i]!, points[at]!];
    }
  };
  permute(fromFirst ? 1 : 0);
  return least;
}

describe('driving order', () => {
  it('is the shortest there is for up to seven stops, by trying every order', () => {
    fc.assert(
      fc.property(fc.array(place, { minLength: 2, maxLength: 7 }), (places) => {
        const stops = stopsOf(places);
        const best = Math.min(...orders(stops).map(length));
        expect(driveOrder(stops).lengthKm).toBeCloseTo(best, 9);
      }),
      { numRuns: 15 },
    );
  });

  it('is the shortest for nine stops too, in times that differ both ways, open or back to the start', () => {
    const minutes = fc.integer({ min: 1, max: 60 });
    const matrix = (n: number) => fc.array(fc.array(minutes, { minLength: n, maxLength: n }), { minLength: n, maxLength: n });
    fc.assert(
      fc.property(fc.oneof(matrix(8), matrix(9)), fc.boolean(), fc.boolean(), (cost, fromFirst, returns) => {
        const path = shortPath(cost, { start: fromFirst ? 0 : null, returns });
        if (fromFirst) expect(path[0]).toBe(0);
        expect(pathCost(cost, path, returns)).toBe(leastOverAllOrders(cost, fromFirst, returns));
      }),
      { numRuns: 6 },
    );
  });

  it('of a hundred stations is within 5 % of a length that no order can undercut', () => {
    const random = randomFrom(7);
    const stops = stopsOf(
      Array.from({ length: 100 }, () => ({ latitude: 44.9 + 0.2 * random.uniform(), longitude: -30.1 + 0.2 * random.uniform() })),
    );
    const { order, lengthKm } = driveOrder(stops);
    const bound = driveBoundKm(order);
    expect(bound).toBeLessThanOrEqual(lengthKm);
    expect(lengthKm / bound).toBeLessThan(1.05);
  });

  it('never undercuts its bound, and on a straight road the bound is the road', () => {
    fc.assert(
      fc.property(fc.array(place, { minLength: 2, maxLength: 7 }), fc.boolean(), (places, fixed) => {
        const stops = stopsOf(places);
        const startId = fixed ? 'S0' : null;
        const best = Math.min(
          ...orders(stops)
            .filter((path) => !fixed || path[0] === stops[0])
            .map(length),
        );
        expect(driveBoundKm(stops, startId)).toBeLessThanOrEqual(best + 1e-9);
      }),
      { numRuns: 15 },
    );
    const road = Array.from({ length: 12 }, (_, i) => i * 5);
    const minutes = road.map((a) => road.map((b) => Math.abs(a - b)));
    expect(lowerBound(minutes, { start: null, returns: false }, [...road.keys()])).toBeCloseTo(55, 1);
  });

  it('passes every station once, and says how far it is', () => {
    fc.assert(
      fc.property(fc.array(place, { maxLength: 30 }), (places) => {
        const stops = stopsOf(places);
        const { order, lengthKm } = driveOrder(stops);
        expect(order.map(({ id }) => id).sort()).toEqual(stops.map(({ id }) => id).sort());
        expect(length(order)).toBeCloseTo(lengthKm, 9);
      }),
      { numRuns: 30 },
    );
  });

  it('follows a road of stations from end to end however they are listed', () => {
    const road = Array.from({ length: 25 }, (_, i) => ({ id: `S${i}`, latitude: 45, longitude: -30 + ((i * 7) % 25) * 0.01 }));
    const path = driveOrder(road).order.map((stop) => stop.longitude!);
    const sorted = [...path].sort((a, b) => a - b);
    expect([sorted, sorted.toReversed()]).toContainEqual(path);
  });

  it('begins where the driver stands', () => {
    const stops = stopsOf(
      Array.from({ length: 12 }, (_, i) => ({ latitude: 45 + (i % 4) * 0.01, longitude: -30 + (i % 3) * 0.01 })),
    );
    expect(driveOrder(stops, 'S7').order[0]!.id).toBe('S7');
  });

  it('puts stations without coordinates last, in the order given', () => {
    const stops = [
      { id: 'A', latitude: null, longitude: null },
      { id: 'B', latitude: 45, longitude: -30 },
      { id: 'C', latitude: null, longitude: 3 },
    ];
    expect(driveOrder(stops).order.map(({ id }) => id)).toEqual(['B', 'A', 'C']);
  });
});

describe('the driving order past very many stops', () => {
  const scattered = (n: number, seed: number): Stop[] => {
    const { uniform } = randomFrom(seed);
    return Array.from({ length: n }, (_, i) => ({ id: `S${i}`, latitude: 44 + uniform(), longitude: -63 + uniform() }));
  };
  const ids = (stops: readonly Stop[]) => stops.map(({ id }) => id);

  it('is close to the shortest there can be', () => {
    for (const seed of [1, 2]) {
      const stops = scattered(150, seed);
      const { order, lengthKm } = driveOrder(stops);
      expect(ids(order).sort()).toEqual(ids(stops).sort());
      expect(lengthKm).toBeCloseTo(length(order), 9);
      expect(lengthKm / driveBoundKm(order)).toBeLessThan(1.05);
    }
  });

  it('begins where it is said to begin, and is the same each time', () => {
    const stops = scattered(300, 3);
    const first = driveOrder(stops, 'S7');
    expect(first.order[0]!.id).toBe('S7');
    expect(ids(driveOrder(stops, 'S7').order)).toEqual(ids(first.order));
    expect(new Set(ids(first.order)).size).toBe(300);
  });

  it('loses no stop where many stand on one spot, or all along one road', () => {
    const spot = Array.from({ length: 90 }, (_, i) => ({ id: `S${i}`, latitude: 45, longitude: i < 80 ? -63 : -63 + i / 100 }));
    const road = Array.from({ length: 90 }, (_, i) => ({ id: `S${i}`, latitude: 45, longitude: -63 + ((i * 37) % 90) / 100 }));
    for (const stops of [spot, road]) expect(ids(driveOrder(stops).order).sort()).toEqual(ids(stops).sort());
    expect(driveOrder(road).lengthKm).toBeCloseTo(distanceKm(road[0]!, { latitude: 45, longitude: -62.11 })!, 2);
  });

  it('grows about as the root of their number times their area, as theory says of the shortest way', () => {
    // Beardwood, Halton & Hammersley 1959; the constant 0.7124 from Johnson, McGeoch & Rothberg 1996 (both from memory).
    const stops = scattered(1_000, 5);
    const areaKm2 = 111.195 ** 2 * Math.cos((44.5 * Math.PI) / 180);
    const shortest = 0.7124 * Math.sqrt(1_000 * areaKm2);
    expect(driveOrder(stops).lengthKm / shortest).toBeGreaterThan(0.95);
    expect(driveOrder(stops).lengthKm / shortest).toBeLessThan(1.12);
  });
});
