import { describe, expect, it } from 'vitest';
import { addDays } from '../base/day.ts';
import { type Random, randomFrom } from '../statistics/random.testing.ts';
import { dispersionBetweenVisits, priorDispersion } from './dispersion.ts';
import reference from './reference/rate.json' with { type: 'json' };
import { HUNG, season } from './season.testing.ts';

const PRIOR = { median: 3, logSd: 0.8 };
const visitsOf = (counts: readonly number[], nights = 4, trapId = 'T1') =>
  season(
    counts.map((count, i) => [nights * (i + 1), count] as const),
    { trapId },
  ).history.intervals;

/** A trap's season under one flight, visited twice a week. */
function flightSeason(random: Random, k: number, perNight: number, trapId: string) {
  const place = Math.exp(0.6 * random.normal());
  const peak = 30 + 40 * random.uniform();
  const visits: [number, number][] = [];
  for (let to = 3, from = 0; to < 100; from = to, to += random.uniform() < 0.5 ? 3 : 4) {
    let mean = 0;
    for (let night = from; night < to; night++)
      mean += place * perNight * (0.03 + Math.exp(-(((night + 0.5 - peak) / 14) ** 2) / 2));
    visits.push([to, random.negativeBinomial(mean, k)]);
  }
  return season(visits, { trapId }).history.intervals;
}

describe('what is known of the scatter of one visit’s count', () => {
  it('is the prior where the program has no visits yet', () => {
    const { median, low, high, visits, weight } = priorDispersion(PRIOR);
    expect(visits).toBe(0);
    expect(median).toBeCloseTo(3, 9);
    expect(low).toBeCloseTo(3 * Math.exp(-1.2816 * 0.8), 1);
    expect(high).toBeCloseTo(3 * Math.exp(1.2816 * 0.8), 0);
    expect(weight.reduce((sum, one) => sum + one)).toBeCloseTo(1, 12);
  });

  it('agrees with R, which integrates level and slope of each stretch by brute force', () => {
    const { stretches, meanLogK, sdLogK } = reference.dispersion;
    const found = dispersionBetweenVisits(
      stretches.map((counts, i) => visitsOf(counts, 4, `T${i}`)),
      PRIOR,
    );
    expect(found).toMatchObject({ visits: 4 * stretches.length, traps: stretches.length });
    expect(Math.log(found.median)).toBeCloseTo(meanLogK, 1);
    expect(Math.log(found.high / found.low) / (2 * 1.28155)).toBeCloseTo(sdLogK, 1);
  });

  it.each([0.7, 2, 8])('is found again from four traps’ seasons whose flights rise and fall: k = %d', (k) => {
    const seasons = Array.from({ length: 40 }, (_, seed) => {
      const random = randomFrom(seed + 1);
      return dispersionBetweenVisits(
        ['T1', 'T2', 'T3', 'T4'].map((trapId) => flightSeason(random, k, 5, trapId)),
        PRIOR,
      );
    });
    const bias = seasons.reduce((sum, { median }) => sum + Math.log(median / k), 0) / seasons.length;
    expect(Math.abs(bias)).toBeLessThan(0.3);
    const held = seasons.filter(({ low, high }) => low <= k && k <= high).length;
    expect(held).toBeGreaterThanOrEqual(24);
  });

  it('is not moved by the level of the flight, only by the scatter about it', () => {
    const low = dispersionBetweenVisits([visitsOf([20, 44, 18, 36])], PRIOR);
    const high = dispersionBetweenVisits([visitsOf([2000, 4400, 1800, 3600])], PRIOR);
    expect(high.median / low.median).toBeGreaterThan(0.8);
    expect(high.median / low.median).toBeLessThan(1.25);
    const smooth = dispersionBetweenVisits([visitsOf([2000, 2600, 3400, 4400])], PRIOR);
    expect(smooth.median).toBeGreaterThan(1.5 * high.median);
  });

  it('reads no stretch across a visit without information, under a spent lure, or of hardly any moths', () => {
    const whole = [9, 14, 22, 30];
    const broken = season([
      [4, 9],
      [8, 14],
      [12, null, { condition: 'unfit' }],
      [16, 22],
      [20, 30],
    ]).history.intervals;
    const spent = visitsOf(whole).map((visit) => ({ ...visit, lurePastLife: true }));
    expect(dispersionBetweenVisits([visitsOf(whole)], PRIOR).visits).toBe(4);
    for (const none of [broken, spent, visitsOf([0, 0, 1, 2])])
      expect(dispersionBetweenVisits([none], PRIOR)).toMatchObject({ visits: 0, median: priorDispersion(PRIOR).median });
  });

  it('reads the newest stretches where there are more than enough', () => {
    const late = visitsOf([9, 40, 3, 30]).map((visit) => ({
      ...visit,
      from: addDays(visit.from, 60),
      to: addDays(visit.to, 60),
    }));
    const newest = dispersionBetweenVisits([visitsOf([20, 21, 22, 23]), late], PRIOR, 1);
    expect(newest.median).toBeCloseTo(dispersionBetweenVisits([late], PRIOR).median, 9);
    expect(HUNG).toBeLessThan(late[0]!.from);
  });
});
