import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addDays,
  bearingDegrees,
  celsius,
  day,
  dayOf,
  degreeDaysC,
  degreeDaysIn,
  distanceKm,
  formatDay,
  fromCelsius,
  fromKilometres,
  fromMetres,
  parseDay,
  startOfYear,
} from './index.ts';

describe('calendar days', () => {
  it('exist or do not: 2024 has a 29 February, 2025 and 1900 have none', () => {
    expect([parseDay('2024-02-29'), parseDay('2000-02-29')]).not.toContain(null);
    expect([parseDay('2025-02-29'), parseDay('1900-02-29'), parseDay('2025-13-01'), parseDay('2025-04-31')]).toEqual([
      null,
      null,
      null,
      null,
    ]);
  });

  it('are written one way only', () => {
    for (const text of ['2025-7-1', '07/01/2025', '2025-07-01T00:00', ' 2025-07-01', '']) expect(parseDay(text)).toBeNull();
  });

  it('survive a round trip, and the next day is one more, for every day of 3,000 years', () => {
    const anyDay = fc.integer({ min: dayOf(1000, 1, 1), max: dayOf(3999, 12, 30) });
    fc.assert(
      fc.property(anyDay, (n) => {
        const text = formatDay(n as ReturnType<typeof day>);
        expect(day(text)).toBe(n);
        expect(formatDay(addDays(day(text), 1)) > text).toBe(true);
      }),
    );
  });

  it('begin their year on 1 January', () => expect(formatDay(startOfYear(day('2024-12-31')))).toBe('2024-01-01'));
});

describe('temperature', () => {
  it('has the fixed points of both scales', () => {
    expect([celsius(32, 'F'), celsius(212, 'F'), celsius(-40, 'F')]).toEqual([0, 100, -40]);
    expect(fromCelsius(100, 'F')).toBe(212);
  });
  it('differences carry no offset: 1 °C·d is 1.8 °F·d', () => {
    expect(degreeDaysIn(1, 'F')).toBe(1.8);
    expect(degreeDaysC(1.8, 'F')).toBe(1);
  });
});

describe('distance', () => {
  it('of one degree of latitude on a sphere of the mean radius is 111.195 km', () => {
    const place = (latitude: number, longitude = -30) => ({ latitude, longitude });
    expect(distanceKm(place(45), place(46))).toBeCloseTo((Math.PI / 180) * 6371.0088, 9);
    expect(distanceKm(place(0, 0), place(0, 180))).toBeCloseTo(Math.PI * 6371.0088, 6);
  });
  it('is not known without coordinates', () =>
    expect(distanceKm({ latitude: null, longitude: 1 }, { latitude: 1, longitude: 1 })).toBeNull());
});

describe('direction', () => {
  const place = (latitude: number, longitude: number) => ({ latitude, longitude });

  it('is that of the great circle at its outset: 1.150035 rad from Los Angeles to New York (Williams, Aviation Formulary, worked example)', () => {
    const from = place(33 + 57 / 60, -(118 + 24 / 60));
    const to = place(40 + 38 / 60, -(73 + 47 / 60));
    expect((bearingDegrees(from, to)! * Math.PI) / 180).toBeCloseTo(1.150035, 5);
  });

  it('goes round by the east, and is not known without coordinates', () => {
    const here = place(0, 10);
    expect([place(5, 10), place(0, 20), place(-5, 10), place(0, 0)].map((to) => bearingDegrees(here, to)!)).toEqual([
      0, 90, 180, 270,
    ]);
    expect(bearingDegrees(here, { latitude: null, longitude: 3 })).toBeNull();
  });
});

describe('length', () => {
  it('follows the international foot and the statute mile (NIST SP 811, appendix B.8: 1 mi = 1.609344 km)', () => {
    expect(fromMetres(0.3048, 'ft')).toBe(1);
    expect(fromKilometres(1.609344, 'ft')).toBeCloseTo(1, 12);
    expect([fromMetres(1.5, 'm'), fromKilometres(12, 'm')]).toEqual([1.5, 12]);
  });
});
