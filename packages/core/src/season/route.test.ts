import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distanceKm } from '../units/distance.ts';
import { driveOrder, type Stop } from './route.ts';

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
