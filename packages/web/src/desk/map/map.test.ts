import {
  distanceKm,
  type FieldRecord,
  type StationPlace,
  type StationTrap,
  type TrapsView,
  type Verb,
  type WeekField,
  type WeekView,
} from '@duskwatch/core';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { graticuleStep, mercator, placeOn, planOf, scaleBar } from '../../shared/places/projection.ts';
import { addressKind } from './base-map.ts';
import { type Cluster, type Group, type Item, layOut } from './layout.ts';
import { fieldMarks, legendRates, mostPressingFirst, radiusOf, stationMarks } from './marks.ts';

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
  skipped: null,
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

const ALL = { insect: null, design: null };

describe('marks', () => {
  test('an unfit or overdue trap has no rate, whatever it once caught', () => {
    const state = (check: 'unfit' | 'overdue' | 'due') =>
      trapOf('T', { check: { due: '2026-07-10', state: check, daysLate: 5 } });
    const rate = (check: Parameters<typeof state>[0]) => stationMarks(viewOf([placeOf('Oak', [state(check)])]), ALL).marks[0]!;
    expect(rate('unfit')).toMatchObject({ perNight: null, due: true });
    expect(rate('overdue').perNight).toBeNull();
    expect(rate('due').perNight).toBe(4);
  });

  test('a station shows the highest of its traps that tell something, of the insect chosen', () => {
    const borer = { id: 'ostrinia-nubilalis', scientificName: 'O. nubilalis', commonName: { en: 'borer', es: 'barrenador' } };
    const view = viewOf([
      placeOf('Oak', [trapOf('A'), trapOf('B', { insect: borer, newest: { ...trapOf('A').newest!, perNight: 9 } })]),
    ]);
    expect(stationMarks(view, ALL).marks[0]).toMatchObject({ perNight: 9, lead: { trapId: 'B' } });
    expect(stationMarks(view, { ...ALL, insect: 'helicoverpa-zea' }).marks[0]).toMatchObject({
      perNight: 4,
      lead: { trapId: 'A' },
    });
  });

  test('what was taken down stands on no map, and what has no place is counted', () => {
    const view = viewOf([
      placeOf('Gone', [trapOf('A', { state: 'taken-down' })]),
      placeOf('Nowhere', [trapOf('B')], { latitude: null, longitude: null }),
    ]);
    expect(stationMarks(view, ALL)).toMatchObject({ marks: [], highest: 0, unplaced: [{ station: 'Nowhere' }] });
  });

  test('area, not radius, grows with the rate', () => {
    const area = (rate: number) => radiusOf(rate, 100) ** 2 - radiusOf(0, 100) ** 2;
    expect(area(80) / area(40)).toBeCloseTo(2, 9);
  });
});

describe('rates', () => {
  test('of one insect are shown for one design only', () => {
    const view = viewOf([
      placeOf('Oak', [trapOf('A'), trapOf('B', { design: 'bucket', newest: { ...trapOf('A').newest!, perNight: 9 } })]),
      placeOf('Elm', [trapOf('C', { design: 'bucket' })]),
    ]);
    const { marks, highest } = stationMarks(view, { insect: 'helicoverpa-zea', design: 'mesh-cone' });
    expect(marks.map(({ station, perNight }) => [station, perNight])).toEqual([['Oak', 4]]);
    expect(highest).toBe(4);
  });

  test('are explained by round figures up to the highest', () => {
    expect(legendRates(3.4)).toEqual([0.2, 0.5, 2]);
    expect(legendRates(200)).toEqual([20, 50, 200]);
    expect(legendRates(0.02)).toEqual([0.002, 0.005, 0.02]);
    expect(legendRates(0)).toEqual([]);
  });
});

describe('what presses', () => {
  const cell = (verb: Verb, by: string | null = null, dueSince: string | null = null) =>
    ({ advice: { verb, by, dueSince, rate: null, interval: null, confidence: null, reason: null }, line: null }) as const;
  const borer = { id: 'ostrinia-nubilalis', scientificName: 'O. nubilalis', commonName: { en: 'borer', es: 'barrenador' } };
  const insects = [trapOf('A').insect, borer];
  const fieldIn = (fieldId: string, cells: WeekField['cells']): WeekField => ({
    fieldId,
    name: fieldId,
    farm: 'Home',
    crop: 'sweet-corn',
    growthHabit: null,
    stage: null,
    cells,
  });
  const week: WeekView = {
    program: { name: 'Small', invented: true },
    on: '2026-07-15',
    countsTo: null,
    weatherTo: null,
    insects,
    due: { decisions: [], scouting: [], checks: [], lures: [] },
    fields: [
      fieldIn('calm', [cell('watch', '2026-07-18'), cell('none')]),
      fieldIn('today', [cell('watch', '2026-07-18'), cell('decide', '2026-07-15')]),
      fieldIn('late', [cell('decide', '2026-07-15', '2026-07-12'), cell('scout', '2026-07-16')]),
      fieldIn('nowhere', [cell('decide', '2026-07-15', '2026-07-01'), cell('none')]),
    ],
  };
  const places = new Map(
    ['calm', 'today', 'late', 'nowhere'].map((fieldId) => [
      fieldId,
      { fieldId, latitude: fieldId === 'nowhere' ? null : 45, longitude: -63 } as FieldRecord,
    ]),
  );

  test('is one verb a field, the latest first, and a field without a place is not on the map', () => {
    expect(fieldMarks(week, places, null).map(({ fieldId, verb, daysLate }) => [fieldId, verb, daysLate])).toEqual([
      ['late', 'decide', 3],
      ['today', 'decide', 0],
      ['calm', 'watch', 0],
    ]);
    expect(fieldMarks(week, places, 'helicoverpa-zea').map(({ fieldId, verb }) => [fieldId, verb])).toEqual([
      ['late', 'decide'],
      ['calm', 'watch'],
      ['today', 'watch'],
    ]);
  });

  test('orders the stations by the verbs that their own traps speak for', () => {
    const informs = (fieldId: string) => ({ informs: [{ fieldId, name: fieldId, farm: 'Home' }] });
    const view = viewOf([
      placeOf('Ash', [trapOf('A', informs('calm'))]),
      placeOf('Bay', [trapOf('B', informs('today'))]),
      placeOf('Cob', [trapOf('C', { insect: borer, ...informs('today') })]),
      placeOf('Dew', [trapOf('D', informs('late'))]),
    ]);
    const { marks } = stationMarks(view, ALL);
    expect(mostPressingFirst(marks, week).map(({ station }) => station)).toEqual(['Dew', 'Cob', 'Ash', 'Bay']);
  });
});

describe('the layout', () => {
  const item = (key: string, x: number, y: number, wide = 90): Item => ({ key, at: [x, y], half: 10, wide });
  const overlapping = (placed: ReturnType<typeof layOut>, keys: readonly string[]) => {
    const boxes = keys.flatMap((key) => placed.get(key)!.boxes.slice(0, -1));
    return boxes.filter((a, i) =>
      boxes.some((b, j) => j > i && a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom),
    ).length;
  };

  test('sets fields on the same spot apart, and on the other side the stations', () => {
    const cluster: Cluster = {
      heading: 70,
      labels: [item('a', 400, 300), item('b', 400, 300), item('c', 401, 300)],
      marks: [item('1', 400, 300, 0), item('2', 400, 301, 0)],
    };
    const placed = layOut([{ key: 'farm', ways: [cluster] }], null).get('farm')!;
    const ys = ['a', 'b', 'c'].map((key) => placed.items.get(key)!.y).sort((a, b) => a - b);
    expect(ys[1]! - ys[0]!).toBeGreaterThanOrEqual(20);
    expect(ys[2]! - ys[1]!).toBeGreaterThanOrEqual(20);
    const sides = (keys: readonly string[]) => keys.map((key) => Math.sign(placed.items.get(key)!.x - 400));
    expect(sides(['a', 'b', 'c'])).toEqual([1, 1, 1]);
    expect(sides(['1', '2'])).toEqual([-1, -1]);
  });

  test('turns a farm away from the edge and from its neighbour', () => {
    const farm = (key: string, x: number): Group => ({
      key,
      ways: [{ heading: 70, labels: [item(`${key}1`, x, 200), item(`${key}2`, x + 4, 206)], marks: [] }],
    });
    const placed = layOut([farm('east', 760), farm('middle', 700)], { left: 0, right: 800, top: 0, bottom: 400 });
    expect(placed.get('east')!.items.get('east1')!.anchor).toBe('end');
    expect(overlapping(placed, ['east', 'middle'])).toBe(0);
  });

  test('draws a crowd of 200 farms as fewer words, never as words over words', () => {
    const groups = Array.from({ length: 200 }, (_, n): Group => {
      const [x, y] = [60 + (n % 20) * 44, 60 + Math.floor(n / 20) * 60];
      const one = { heading: null, labels: [{ key: `f${n}`, at: [x, y] as const, half: 10, wide: 0 }], marks: [] };
      return { key: `f${n}`, ways: [{ heading: 80, labels: [item(`a${n}`, x, y), item(`b${n}`, x, y)], marks: [] }, one] };
    });
    const placed = layOut(groups, null);
    expect(placed.size).toBe(200);
    const full = [...placed].filter(([, { way }]) => way === 0).map(([key]) => key);
    expect(full.length).toBeGreaterThan(10);
    expect(full.length).toBeLessThan(200);
    expect(overlapping(placed, full)).toBe(0);
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
