import { describe, expect, it } from 'vitest';
import { day, daysBetween } from '../base/day.ts';
import { groupBy } from '../base/group-by.ts';
import { type InventedSeason, inventedSeason } from './invented-season.testing.ts';
import { expectedFrom, oddlyHigh, oddlyLow, VISITS_TOLD } from './next-count.ts';

/** Visits of sound seasons, each with what the ones before it lead one to expect. */
const looks = (seed: number, season: InventedSeason = {}) =>
  Array.from({ length: 10 }, (_, i) => inventedSeason(seed + i, season)).flatMap(({ checks }) =>
    [...groupBy(checks, ({ trapId }) => trapId).values()].flatMap((own) => {
      const visits = own.slice(1).map((check, i) => ({
        count: check.targetCount!,
        nights: daysBetween(day(own[i]!.checkedOn), day(check.checkedOn)),
      }));
      return visits.slice(1).map((visit, i) => ({
        ...visit,
        expected: expectedFrom(visits.slice(Math.max(0, i + 1 - VISITS_TOLD), i + 1)),
      }));
    }),
  );
const sound = looks(7001);
const share = <T>(of: readonly T[], which: (each: T) => boolean) => of.filter(which).length / of.length;

describe('a count at the trap', () => {
  it('is asked about in one of 300 sound visits or fewer; in one of 100 where places, designs, lures and scatter make it hard', () => {
    const hard = looks(8001, { designs: true, lures: true, placeLogSd: 0.95, driftLogSd: 0.5, k: 1.2 });
    const inVain = (of: typeof sound) => share(of, ({ expected, nights, count }) => oddlyHigh(expected, nights, count));
    expect(sound.length).toBeGreaterThan(4_000);
    expect(inVain(sound)).toBeLessThan(1 / 300);
    expect(inVain(hard)).toBeLessThan(1 / 100);
  });

  it('is asked about for being so low in one of 300 sound visits or fewer, in one of 200 where it is hard', () => {
    const hard = looks(9501, { designs: true, lures: true, placeLogSd: 0.95, driftLogSd: 0.5, k: 1.2 });
    const inVain = (of: typeof sound) => share(of, ({ expected, nights, count }) => oddlyLow(expected, nights, count));
    expect(inVain(looks(9001))).toBeLessThan(1 / 300);
    expect(inVain(hard)).toBeLessThan(1 / 200);
  });

  it('of nothing is asked about where forty were to be expected, and taken where the flight may just have ended', () => {
    const many = sound.filter(({ expected, nights }) => expected.perNight * nights >= 40);
    expect(many.length).toBeGreaterThan(200);
    expect(share(many, ({ expected, nights }) => oddlyLow(expected, nights, 0))).toBe(1);
    const [sixty, twelve] = [60, 12].map((count) => expectedFrom([{ count, nights: 3 }]));
    expect([0, 2, 20, 60].map((count) => oddlyLow(sixty!, 3, count))).toEqual([true, false, false, false]);
    expect(oddlyLow(twelve!, 3, 0)).toBe(false);
  });

  it('with a nought too many is asked about more often than not', () => {
    const caught = sound.filter(({ count }) => count >= 10);
    expect(share(caught, ({ expected, nights, count }) => oddlyHigh(expected, nights, 10 * count))).toBeGreaterThan(0.6);
  });

  it('of 412 after 12 in as many nights is asked about, and one of 40 is not', () => {
    const expected = expectedFrom([{ count: 12, nights: 3 }]);
    expect([412, 40].map((count) => oddlyHigh(expected, 3, count))).toEqual([true, false]);
  });

  it('at the first moths of a flight is taken without a question', () => {
    const quiet = expectedFrom([
      { count: 0, nights: 4 },
      { count: 0, nights: 3 },
    ]);
    expect([0, 1, 3, 7, 500].map((count) => oddlyHigh(quiet, 3, count))).toEqual([false, false, false, false, true]);
  });
});
