import { describe, expect, it } from 'vitest';
import { caughtCurve } from './caught-curve.ts';
import { experienceOf } from './earlier-season.ts';
import { expectedFlights } from './expected-flights.ts';
import { fitRegion } from './fit-region.ts';
import { shareFlown } from './flight-moments.ts';
import type { PossibleFlight } from './flight-posterior.ts';
import { flightPrior } from './flight-prior.ts';
import { readFlown, statusOf } from './generations.ts';
import { normalCdf } from './normal.ts';
import type { PooledSpan } from './pooled-catch.ts';
import { inventedHeat, inventedSeason, randomFrom, skewedFlight } from './simulate.testing.ts';
import { skewsAfter } from './skew.ts';

const width = flightPrior('F', 1, 1).logWidth;

/** One trap's whole season of one flight. */
function season(seed: number, shape: (z: number) => number, { peak = 700, moths = 400, through = 184 } = {}) {
  const random = randomFrom(seed);
  const curves = [{ moths, peak, width: 140 }];
  return inventedSeason(random, inventedHeat(random), { curves, strayPerNight: 0.1, k: 5, shape }, { through });
}
const fitsOf = (shape: (z: number) => number, seeds: readonly number[]) =>
  seeds.map((seed) => fitRegion(season(seed, shape), { unit: 'F' }));

describe('a flight as it was caught', () => {
  const spansOf = (step: number, caught: (from: number, to: number) => number): PooledSpan[] =>
    Array.from({ length: Math.ceil(1400 / step) }, (_, i) => {
      const [from, to] = [i * step, (i + 1) * step];
      return { from, to, nights: 3, count: caught(from, to), exposure: 1, k: null, weight: 1 };
    });
  const curve = (heat: number) => 300 * normalCdf((heat - 700) / 140);
  const whole = spansOf(50, (from, to) => curve(to) - curve(from));

  it('is half over at its middle, and as wide as its σ', () => {
    const { half, width: wide } = caughtCurve(whole, () => 1, curve)!;
    expect(half).toBeCloseTo(700, 0);
    expect(Math.abs(wide - 140)).toBeLessThan(3);
  });

  it('has the nights in which no trap was out from the fitted curve, also before the first and after the last', () => {
    const gaps = whole.filter(({ from }) => from >= 550 && from < 850 && from !== 700);
    expect(caughtCurve(gaps, () => 1, curve)!.half).toBeCloseTo(700, 0);
    expect(
      caughtCurve(
        gaps,
        () => 1,
        () => 0,
      )!.half,
    ).toBeLessThan(690);
  });

  it('counts traps that were out together as one, and not twice', () => {
    const early = whole.filter(({ from }) => from < 700);
    expect(caughtCurve([...whole, ...early], () => 1, curve)!.half).toBeCloseTo(700, 0);
  });

  it('of no moths is none', () => {
    expect(
      caughtCurve(
        spansOf(50, () => 0),
        () => 1,
        () => 0,
      ),
    ).toBeNull();
  });
});

describe('past seasons', () => {
  it('tell together whether flights take longer to end', () => {
    const even = experienceOf(fitsOf(normalCdf, [1, 2, 3]), 'F');
    const skewed = experienceOf(fitsOf(skewedFlight, [1, 2, 3]), 'F');
    expect(even.skews![0]!).toBeGreaterThan(0.8);
    expect(skewed.skews![0]!).toBeLessThan(0.2);
    expect(skewsAfter([[1, 1, 1]])).toEqual(skewsAfter([]));
  });

  it('place a skewed peak where half had flown, not where a normal curve would have it', () => {
    const { seasons } = experienceOf(fitsOf(skewedFlight, [1, 2, 3, 4, 5, 6]), 'F');
    const peaks = seasons.flatMap(({ flights }) => flights.map(({ peak }) => peak));
    expect(peaks).toHaveLength(6);
    expect(Math.abs(peaks.reduce((sum, one) => sum + one, 0) / 6 - 700)).toBeLessThan(15);
  });

  it('tell how many stray moths there are, and nothing where nothing flew', () => {
    const { stray } = experienceOf(fitsOf(normalCdf, [1, 2, 3]), 'F');
    expect(Math.exp(stray!.mean)).toBeGreaterThan(0.03);
    expect(Math.exp(stray!.mean)).toBeLessThan(0.3);
    expect(experienceOf([], 'F')).toEqual({ seasons: [], skews: null, stray: null });
  });

  it('show a flight that has hardly begun, which the same few moths alone do not', () => {
    const { seasons, skews, stray } = experienceOf(fitsOf(normalCdf, [1, 2, 3]), 'F');
    const expected = expectedFlights(
      seasons.map(({ flights }) => flights),
      [],
      { unit: 'F', width },
    );
    const seeds = Array.from({ length: 20 }, (_, i) => 50 + i);
    const found = (known: object) =>
      seeds.filter((seed) => {
        const random = randomFrom(seed);
        const heat = inventedHeat(random);
        let [through, now] = [0, 0];
        while (now < 700 - 140) now += heat[through++]!;
        return fitRegion(season(seed, normalCdf, { moths: 80, through }), { unit: 'F', ...known }).flights.length === 1;
      }).length;
    expect(found({ expected, skews, stray })).toBeGreaterThanOrEqual(found({}) + 5);
  });
});

describe('the share flown', () => {
  /** What is known of a flight whose deviate today is told as `middle`, give or take `spread`. */
  const told = (middle: number, spread: number): PossibleFlight[] =>
    Array.from({ length: 161 }, (_, i) => {
      const z = (i - 80) / 20;
      return { peak: -(middle + spread * z), width: 1, skew: 0, weight: Math.exp(-0.5 * z * z), logMoths: { mean: 4, sd: 0.2 } };
    }).map((flight, _, all) => ({ ...flight, weight: flight.weight / all.reduce((sum, { weight }) => sum + weight, 0) }));

  it('is right on average over readings that scatter about the truth, where Φ of the middle leans towards a half', () => {
    for (const truth of [-1, 0, 1.2]) {
      const spread = 0.4;
      let [share, plain, total] = [0, 0, 0];
      for (let z = -4; z <= 4; z += 0.1) {
        const weight = Math.exp(-0.5 * z * z);
        share += weight * shareFlown(told(truth + spread * z, spread), 0).share;
        plain += weight * normalCdf(truth + spread * z);
        total += weight;
      }
      expect(Math.abs(share / total - normalCdf(truth))).toBeLessThan(0.004);
      if (truth !== 0) expect(Math.abs(plain / total - normalCdf(truth))).toBeGreaterThan(0.01);
    }
  });

  it('lies within its interval however loosely it is known', () => {
    for (const spread of [0.1, 0.7, 3])
      for (const middle of [-2, -0.5, 0, 1, 3]) {
        const { share, low, high } = shareFlown(told(middle, spread), 0);
        expect(share).toBeGreaterThanOrEqual(low);
        expect(share).toBeLessThanOrEqual(high);
      }
  });

  it('of a flight that nothing led one to expect is no figure until nothing of it is to come', () => {
    const nearly = readFlown(told(2, 0.3), 0, []);
    expect(nearly.low).toBeGreaterThan(0.9);
    expect(nearly.told).toBe('between');
    expect(statusOf(nearly)).toBe('running');
    const over = readFlown(told(3.5, 0.3), 0, []);
    expect(over.told).toBe('share');
    expect(statusOf(over)).toBe('over');
  });
});
