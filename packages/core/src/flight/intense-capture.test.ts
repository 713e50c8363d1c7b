import { describe, expect, it } from 'vitest';
import { season } from '../catch/season.testing.ts';
import { logGamma } from '../statistics/gamma-function.ts';
import { randomFrom } from '../statistics/random.testing.ts';
import { captureByNight } from './intense-capture.ts';

const rule = { kind: 'intense-capture', moths: 9, nights: 2 } as const;
const small = { kind: 'intense-capture', moths: 3, nights: 2 } as const;
type Visits = Parameters<typeof season>[0];
const chance = (which: typeof rule | typeof small, visits: Visits, k: number) =>
  captureByNight(which, season(visits).history.intervals, k).at(-1)!.reached;

/** Every way in which `moths` can fall on `nights` nights, with its Dirichlet-multinomial probability. */
function* ways(moths: number, nights: number, k: number): Generator<{ counts: number[]; probability: number }> {
  const log = (x: number, shape: number) => logGamma(x + shape) - logGamma(shape) - logGamma(x + 1);
  const whole = log(moths, nights * k);
  const counts: number[] = [];
  function* fill(left: number, night: number, weight: number): Generator<{ counts: number[]; probability: number }> {
    if (night === nights - 1) {
      yield { counts: [...counts, left], probability: Math.exp(weight + log(left, k) - whole) };
      return;
    }
    for (let x = 0; x <= left; x++) {
      counts.push(x);
      yield* fill(left - x, night + 1, weight + log(x, k));
      counts.pop();
    }
  }
  yield* fill(moths, 0, 0);
}

const isReached = (counts: readonly number[], moths: number) =>
  counts.some((count, i) => count >= moths || (i > 0 && counts[i - 1]! + count >= moths));

describe('the probability of an intense capture within an interval', () => {
  it.each([
    [2, 3, 1],
    [3, 4, 2],
    [5, 4, 0.7],
    [6, 5, 2],
    [7, 6, 4.5],
  ])('of %i moths in %i nights is what all the ways they can fall add up to (k %d)', (moths, nights, k) => {
    let [all, reached] = [0, 0];
    for (const { counts, probability } of ways(moths, nights, k)) {
      all += probability;
      if (isReached(counts, 3)) reached += probability;
    }
    expect(all).toBeCloseTo(1, 10);
    expect(chance(small, [[nights, moths]], k)).toBeCloseTo(reached, 10);
  });

  it('across two visits is what all the ways of both add up to', () => {
    let reached = 0;
    for (const first of ways(3, 3, 2))
      for (const second of ways(3, 2, 2))
        if (isReached([...first.counts, ...second.counts], 3)) reached += first.probability * second.probability;
    const visits: Visits = [
      [3, 3],
      [5, 3],
    ];
    expect(chance(small, visits, 2)).toBeCloseTo(reached, 10);
  });

  it('is certain or impossible where every night was counted', () => {
    expect(
      chance(
        rule,
        [
          [1, 4],
          [2, 4],
          [3, 5],
        ],
        2,
      ),
    ).toBeCloseTo(1, 12);
    expect(
      chance(
        rule,
        [
          [1, 4],
          [2, 4],
          [3, 4],
        ],
        2,
      ),
    ).toBeCloseTo(0, 12);
  });

  it('of 9 or more moths in 2 of the 7 nights that brought 26 is high, and agrees with seeded draws', () => {
    // Draws: moths one by one, each night in proportion to its moths so far plus k (Polya's urn for the same distribution).
    const { uniform } = randomFrom(11);
    const draws = 20_000;
    let hits = 0;
    for (let draw = 0; draw < draws; draw++) {
      const counts = Array<number>(7).fill(0);
      for (let moth = 0; moth < 26; moth++) {
        let at = uniform() * (7 * 2 + moth);
        let night = 0;
        while (night < 6 && at >= counts[night]! + 2) {
          at -= counts[night]! + 2;
          night++;
        }
        counts[night]!++;
      }
      if (isReached(counts, 9)) hits++;
    }
    const exact = chance(rule, [[7, 26]], 2);
    expect(exact).toBeGreaterThan(0.9);
    // Four standard errors of that many draws.
    expect(Math.abs(hits / draws - exact)).toBeLessThan(4 * Math.sqrt((exact * (1 - exact)) / draws));
  });

  it('grows night by night and never falls', () => {
    const nights = captureByNight(
      rule,
      season([
        [7, 26],
        [10, 3],
      ]).history.intervals,
      2,
    ).map(({ reached }) => reached);
    for (const [i, reached] of nights.entries()) if (i > 0) expect(reached).toBeGreaterThanOrEqual(nights[i - 1]! - 1e-12);
  });
});
