import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { after, season } from '../catch/season.testing.ts';
import { heatTrack } from '../heat/track.ts';
import type { HeatRule } from '../heat/types.ts';
import { fitFlights } from './fit-flights.ts';
import { curvesOf, evaluateFlights, flightCount } from './flight-likelihood.ts';
import { shareFlown } from './flight-moments.ts';
import { flightPrior } from './flight-prior.ts';
import { heatSpans, type SpannedCatch } from './heat-spans.ts';
import { normalCdf } from './normal.ts';
import reference from './reference/flights.json' with { type: 'json' };
import { inventedFlights, inventedHeat, inventedSeason, randomFrom } from './simulate.testing.ts';

const caughtIn = ({ from, to, nights, count }: Record<'from' | 'to' | 'nights' | 'count', readonly number[]>): SpannedCatch => ({
  spans: from.map((heat, i) => ({ from: heat, to: to[i]!, nights: nights[i]!, count: count[i]! })),
  traps: 1,
  leftOut: 0,
});
const season2 = caughtIn(reference.seasons[0]!);
const bestOf = (caught: SpannedCatch, k: number | null) => fitFlights(caught, { k, unit: 'F' }).fits[0]!;

describe('the flights of a season', () => {
  it.each(reference.seasons)('are where general-purpose optimisers in R put them: $name', (written) => {
    const { fits } = fitFlights(caughtIn(written), { k: written.k, unit: 'F' });
    for (const { flights, bic } of written.fits) {
      const fit = fits.find(({ unknowns }) => flightCount(unknowns) === flights)!;
      expect(fit.bic).toBeLessThan(bic + 1e-4);
    }
    const best = written.fits.at(-1)!;
    expect(fits[0]!.bic).toBeCloseTo(best.bic, 4);
    expect(Math.exp(fits[0]!.unknowns[0]!) / best.stray).toBeCloseTo(1, 2);
    const curves = curvesOf(fits[0]!.unknowns);
    expect(curves).toHaveLength(best.flights);
    for (const [g, { moths, peak, width }] of curves.entries()) {
      expect(moths / best.moths[g]!).toBeCloseTo(1, 3);
      expect(peak / best.peak[g]!).toBeCloseTo(1, 4);
      expect(width / best.width[g]!).toBeCloseTo(1, 3);
    }
  });

  it('of many moths counted night by night are those of a normal mixture of the single moths (mixtools)', () => {
    const { width, count, moths, peak, sigma } = reference.mixture;
    const spans = count.map((caught, i) => ({ from: i * width, to: (i + 1) * width, nights: 1, count: caught }));
    const curves = curvesOf(bestOf({ spans, traps: 1, leftOut: 0 }, null).unknowns);
    expect(curves).toHaveLength(2);
    for (const [g, curve] of curves.entries()) {
      expect(Math.abs(curve.peak - peak[g]!)).toBeLessThan(2);
      expect(Math.abs(curve.width - sigma[g]!)).toBeLessThan(3);
      expect(Math.abs(curve.moths / moths[g]! - 1)).toBeLessThan(0.01);
    }
  });

  it('are as many as BIC asks for, one more or one fewer standing behind', () => {
    const counts = reference.seasons.map((written) => flightCount(bestOf(caughtIn(written), written.k).unknowns));
    expect(counts).toEqual([2, 1, 3]);
  });

  it('of a trap that caught nothing are none, and nothing is fitted', () => {
    const empty = { ...season2, spans: season2.spans.map((span) => ({ ...span, count: 0 })) };
    expect(fitFlights(empty, { k: 2, unit: 'F' })).toMatchObject({ fits: [], moths: 0, intervals: 50 });
  });

  it('are the same whether heat is summed in °F or °C', () => {
    const celsius = { ...season2, spans: season2.spans.map((span) => ({ ...span, from: span.from / 1.8, to: span.to / 1.8 })) };
    const [f, c] = [bestOf(season2, 2), fitFlights(celsius, { k: 2, unit: 'C' }).fits[0]!];
    expect(c.bic).toBeCloseTo(f.bic, 6);
    curvesOf(c.unknowns).forEach(({ peak }, g) => {
      expect(peak * 1.8).toBeCloseTo(curvesOf(f.unknowns)[g]!.peak, 2);
    });
  });

  it('do not depend on the order of the visits', () => {
    const reversed = { ...season2, spans: [...season2.spans].reverse() };
    expect(bestOf(reversed, 2).bic).toBeCloseTo(bestOf(season2, 2).bic, 6);
  });

  it('are climbed towards along the true slope of the likelihood', () => {
    const unknown = fc.record({
      stray: fc.double({ min: -4, max: 0, noNaN: true }),
      moths: fc.double({ min: 1, max: 6, noNaN: true }),
      peak: fc.double({ min: -200, max: 3000, noNaN: true }),
      gap: fc.double({ min: 5.5, max: 7.5, noNaN: true }),
      width: fc.double({ min: 3.5, max: 6, noNaN: true }),
    });
    const prior = flightPrior('F', 300, 2);
    fc.assert(
      fc.property(unknown, fc.constantFrom(null, 2), ({ stray, moths, peak, gap, width }, k) => {
        const at = Float64Array.of(stray, moths, peak, width, moths, gap, width);
        const { gradient } = evaluateFlights(season2.spans, k, prior, at);
        for (let i = 0; i < at.length; i++) {
          const h = i === 2 ? 1e-3 : 1e-6;
          const [below, above] = [-h, h].map((step) => {
            const moved = at.slice();
            moved[i]! += step;
            return evaluateFlights(season2.spans, k, prior, moved).value;
          });
          const numeric = (above! - below!) / (2 * h);
          expect(Math.abs(gradient[i]! - numeric)).toBeLessThan(1e-4 * (1 + Math.abs(numeric)));
        }
      }),
      { numRuns: 50 },
    );
  });
});

describe('nights on the heat axis', () => {
  const rule: HeatRule = { method: 'simple-average', cutoff: 'none', lower: 10, upper: null, unit: 'C' };
  const tenADay = (days: number) =>
    heatTrack(rule, {
      sourceId: 'gauge',
      start: after(0),
      tminC: new Float64Array(days).fill(15),
      tmaxC: new Float64Array(days).fill(25),
    });
  const unfit = { condition: 'unfit' } as const;

  it('carry the heat of the days they follow', () => {
    const { history } = season([
      [3, 4],
      [7, 2],
    ]);
    expect(heatSpans([history], tenADay(20), after(0), after(20)).spans).toEqual([
      { from: 0, to: 30, nights: 3, count: 4 },
      { from: 30, to: 70, nights: 4, count: 2 },
    ]);
  });

  it('of an unfit visit add no zeros', () => {
    const { history } = season([
      [3, 4],
      [7, null, unfit],
      [10, 1],
    ]);
    const caught = heatSpans([history], tenADay(20), after(0), after(20));
    expect(caught.leftOut).toBe(1);
    expect(caught.spans.map(({ from, to }) => [from, to])).toEqual([
      [0, 30],
      [70, 100],
    ]);
  });

  it('without known heat are left out, and those after today are not known yet', () => {
    const { history } = season([
      [3, 4],
      [7, 2],
      [10, 1],
    ]);
    expect(heatSpans([history], tenADay(6), after(0), after(20))).toMatchObject({ spans: [{ count: 4 }], leftOut: 2 });
    expect(heatSpans([history], tenADay(20), after(0), after(7)).spans).toHaveLength(2);
  });
});

describe('seasons whose flights are known', () => {
  /** Full run with 500 seeds: bench/flight/simulate.mjs. */
  it('show two flights in nineteen seasons of twenty, and their peaks within 80 % intervals about as often as stated', () => {
    let [right, held, peaks, bias] = [0, 0, 0, 0];
    const SEASONS = 60;
    for (let seed = 1; seed <= SEASONS; seed++) {
      const random = randomFrom(seed);
      const heat = inventedHeat(random);
      const curves = inventedFlights(random, 2);
      const { unknowns, covariance } = bestOf(inventedSeason(random, heat, { curves, strayPerNight: 0.1, k: 2 }), 2);
      if (flightCount(unknowns) !== 2) continue;
      right++;
      const found = curvesOf(unknowns)[0]!;
      const spread = Math.sqrt(covariance[2 * unknowns.length + 2]!);
      bias += found.peak - curves[0]!.peak;
      peaks++;
      if (Math.abs(found.peak - curves[0]!.peak) < 1.2816 * spread) held++;
    }
    expect(right / SEASONS).toBeGreaterThanOrEqual(0.95);
    expect(held / peaks).toBeGreaterThan(0.65);
    expect(held / peaks).toBeLessThan(0.93);
    expect(Math.abs(bias / peaks)).toBeLessThan(15);
  });

  it('cut off in mid-flight hold the true share flown in their 80 % intervals eight times of ten or a little more', () => {
    let [held, running] = [0, 0];
    for (let seed = 1; running < 40; seed++) {
      const random = randomFrom(seed);
      const heat = inventedHeat(random);
      const [curve] = inventedFlights(random, 1);
      const through = 55 + Math.floor(40 * random.uniform());
      const now = heat.subarray(0, through).reduce((sum, one) => sum + one, 0);
      const truth = normalCdf((now - curve!.peak) / curve!.width);
      if (truth < 0.1 || truth > 0.95) continue;
      const fit = bestOf(inventedSeason(random, heat, { curves: [curve!], strayPerNight: 0.1, k: 2 }, { through }), 2);
      if (flightCount(fit.unknowns) !== 1) continue;
      running++;
      const { low, high } = shareFlown(fit, 0, now);
      if (low <= truth && truth <= high) held++;
    }
    expect(held / running).toBeGreaterThanOrEqual(0.75);
    expect(held / running).toBeLessThan(1);
  });

  it('without any flight show none in nineteen of twenty', () => {
    let none = 0;
    for (let seed = 1; seed <= 40; seed++) {
      const random = randomFrom(1000 + seed);
      const stray = inventedSeason(random, inventedHeat(random), { curves: [], strayPerNight: 0.5, k: 2 });
      if (flightCount(bestOf(stray, 2).unknowns) === 0) none++;
    }
    expect(none).toBeGreaterThanOrEqual(38);
  });
});

describe('the normal curve', () => {
  it('agrees with R from one far tail to the other', () => {
    reference.normal.z.forEach((z, i) => {
      const p = reference.normal.p[i]!;
      expect(Math.abs(normalCdf(z) - p)).toBeLessThan(1e-15);
      expect(Math.abs(normalCdf(z) / p - 1)).toBeLessThan(1e-8);
    });
  });
});
