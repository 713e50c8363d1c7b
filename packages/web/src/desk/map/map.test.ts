import { distanceKm, type StationPlace, type StationTrap, type TrapsView } from '@duskwatch/core';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { graticuleStep, mercator, placeOn, planOf, scaleBar } from '../../shared/places/projection.ts';
import { addressKind } from './base-map.ts';
import { marksOf, radiusOf } from './marks.ts';

const trapOf = (trapId: string, over: Partial<StationTrap> = {}): StationTrap => ({
  trapId,
  insect: { id: 'helicoverpa-zea', scientificName: 'Helicoverpa zea', commonName: { en: 'corn earworm', es: 'gusano' } },
  design: 'mesh-cone',
  state: 'hanging',
  hungOn: '2026-06-01',
  takenDownOn: null,
  latitude: 45,
  longitude: -63,
  informs: [],
  check: { due: '2026-07-20', state: 'not-due', daysLate: 0 },
  lure: null,
  lastVisit: null,
  newest: { from: '2026-07-07', to: '2026-07-14', nights: 7, perNight: 4 },
  seasons: [],
  ...over,
});
const placeOf = (station: string, traps: readonly StationTrap[], over: Partial<StationPlace> = {}): StationPlace => ({
  station,
  place: 1,
  places: 1,
  latitude: 45,
  longitude: -63,
  movedM: null,
  firstHungOn: '2026-06-01',
  inUse: true,
  due: false,
  traps,
  ...over,
});
const viewOf = (places: readonly StationPlace[]): TrapsView => ({
  program: { name: 'Small', invented: true },
  on: '2026-07-15',
  places,
  designs: [],
  practices: [],
});

describe('marks', () => {
  test('an unfit or overdue trap has no rate, whatever it once caught', () => {
    const state = (check: 'unfit' | 'overdue' | 'due') =>
      trapOf('T', { check: { due: '2026-07-10', state: check, daysLate: 5 } });
    const rate = (check: Parameters<typeof state>[0]) => marksOf(viewOf([placeOf('Oak', [state(check)])]), null).marks[0]!;
    expect(rate('unfit')).toMatchObject({ perNight: null, due: true });
    expect(rate('overdue').perNight).toBeNull();
    expect(rate('due').perNight).toBe(4);
  });

  test('a station shows the highest of its traps that tell something, of the insect chosen', () => {
    const borer = { id: 'ostrinia-nubilalis', scientificName: 'O. nubilalis', commonName: { en: 'borer', es: 'barrenador' } };
    const view = viewOf([
      placeOf('Oak', [trapOf('A'), trapOf('B', { insect: borer, newest: { ...trapOf('A').newest!, perNight: 9 } })]),
    ]);
    expect(marksOf(view, null).marks[0]).toMatchObject({ perNight: 9, lead: { trapId: 'B' } });
    expect(marksOf(view, 'helicoverpa-zea').marks[0]).toMatchObject({ perNight: 4, lead: { trapId: 'A' } });
  });

  test('what was taken down stands on no map, and what has no place is counted', () => {
    const view = viewOf([
      placeOf('Gone', [trapOf('A', { state: 'taken-down' })]),
      placeOf('Nowhere', [trapOf('B')], { latitude: null, longitude: null }),
    ]);
    expect(marksOf(view, null)).toMatchObject({ marks: [], highest: 0, unplaced: [{ station: 'Nowhere' }] });
  });

  test('area, not radius, grows with the rate', () => {
    const area = (rate: number) => radiusOf(rate, 100) ** 2 - radiusOf(0, 100) ** 2;
    expect(area(80) / area(40)).toBeCloseTo(2, 9);
  });
});

describe('the address of a base map', () => {
  test('is a style, tiles or an archive; anything else is refused', () => {
    expect(addressKind('https://maps.example/style.json')).toBe('style');
    expect(addressKind('https://maps.example/{z}/{x}/{y}.png?key=1')).toBe('tiles');
    expect(addressKind('/maps/county.pmtiles')).toBe('pmtiles');
    expect(addressKind('http://127.0.0.1:8080/{z}/{x}/{y}.png')).toBe('tiles');
    for (const wrong of [
      'http://maps.example/style.json',
      'http://localhost.maps.example/a',
      '//maps.example/a',
      'javascript:alert(1)',
      'maps',
      '',
    ])
      expect(addressKind(wrong)).toBeNull();
  });
});

describe('the plan', () => {
  test('agrees with the corners of the Web Mercator square (EPSG:3857)', () => {
    // The square ends where the latitude is atan(sinh π) = 85.0511°; https://epsg.io/3857
    expect(mercator({ latitude: 0, longitude: 0 })).toEqual([0.5, 0.5]);
    expect(mercator({ latitude: 0, longitude: -180 })[0]).toBe(0);
    expect(mercator({ latitude: (Math.atan(Math.sinh(Math.PI / 2)) * 180) / Math.PI, longitude: 0 })[1]).toBeCloseTo(0.25, 12);
  });

  test('keeps every place inside the frame, north up and east to the right', () => {
    const place = fc.record({
      latitude: fc.double({ min: 40, max: 46, noNaN: true }),
      longitude: fc.double({ min: -70, max: -60, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(place, { minLength: 1, maxLength: 30 }), (places) => {
        const plan = planOf(places, { width: 390, height: 500, margin: 30 });
        for (const each of places) {
          const [x, y] = plan.project(each);
          expect(x).toBeGreaterThanOrEqual(29.99);
          expect(x).toBeLessThanOrEqual(360.01);
          expect(y).toBeGreaterThanOrEqual(29.99);
          expect(y).toBeLessThanOrEqual(470.01);
        }
      }),
    );
  });

  test('finds the place under a pixel again, however the plan was moved', () => {
    const places = [
      { latitude: 44.2, longitude: -64.1 },
      { latitude: 45.1, longitude: -62.9 },
    ];
    const plan = planOf(places, { width: 700, height: 500, margin: 20 }, 4, [130, -75]);
    for (const place of places) {
      const found = placeOn(plan, ...plan.project(place));
      expect(found.latitude).toBeCloseTo(place.latitude, 9);
      expect(found.longitude).toBeCloseTo(place.longitude, 9);
    }
  });

  test('measures the ground as the great circle does, over a county', () => {
    const [west, east] = [
      { latitude: 45, longitude: -63.3 },
      { latitude: 45, longitude: -63 },
    ];
    const plan = planOf([west, east], { width: 800, height: 600, margin: 0 });
    const pixels = plan.project(east)[0] - plan.project(west)[0];
    // The ellipsoid's equator against the mean radius: a fifth of a percent.
    expect((pixels * plan.metresPerPixel) / 1000 / distanceKm(west, east)!).toBeCloseTo(1, 2);
  });

  test('has a scale and a graticule in round figures', () => {
    expect(scaleBar(13.7, 120)).toEqual({ metres: 1000, pixels: 1000 / 13.7 });
    expect(graticuleStep(0.33)).toBeCloseTo(0.1, 12);
    expect(graticuleStep(12)).toBe(5);
  });
});
