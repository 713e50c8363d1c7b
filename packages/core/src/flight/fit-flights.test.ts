import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { after, season } from '../catch/season.testing.ts';
import { heatTrack } from '../heat/track.ts';
import type { HeatRule } from '../heat/types.ts';
import { expectedFlights } from './expected-flights.ts';
import { fitFlights } from './fit-flights.ts';
import { curvesOf, evaluateFlights, flightCount } from './flight-likelihood.ts';
import { flightPrior } from './flight-prior.ts';
import { heatSpans } from './heat-spans.ts';
import { normalCdf } from './normal.ts';
import type { PooledSpan } from './pooled-catch.ts';
import reference from './reference/flights.json' with { type: 'json' };

type Written = Record<'from' | 'to' | 'nights' | 'count', readonly number[]>;

/** One trap's spans with a dispersion that is taken as given, as in the reference. */
const spansIn = ({ from, to, nights, count }: Written, k: number | null): PooledSpan[] =>
  from.map((heat, i) => ({ from: heat, to: to[i]!, nights: nights[i]!, count: count[i]!, exposure: 1, k, weight: 1 }));
const fitted = (spans: readonly PooledSpan[], unit: 'C' | 'F' = 'F') => {
  const moths = spans.reduce((sum, { count }) => sum + count, 0);
  return fitFlights(spans, flightPrior(unit, moths, moths / spans.reduce((sum, { nights }) => sum + nights, 0)));
};
const season2 = spansIn(reference.seasons[0]!, 2);
const bestOf = (spans: readonly PooledSpan[]) => fitted(spans)[0]!;

describe('the flights of a season', () => {
  it.each(reference.seasons)('are where general-purpose optimisers in R put them: $name', (written) => {
    const fits = fitted(spansIn(written, written.k));
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
    const from = count.map((_, i) => i * width);
    const spans = spansIn({ from, to: from.map((heat) => heat + width), nights: from.map(() => 1), count }, null);
    const curves = curvesOf(bestOf(spans).unknowns);
    expect(curves).toHaveLength(2);
    for (const [g, curve] of curves.entries()) {
      expect(Math.abs(curve.peak - peak[g]!)).toBeLessThan(2);
      expect(Math.abs(curve.width - sigma[g]!)).toBeLessThan(3);
      expect(Math.abs(curve.moths / moths[g]! - 1)).toBeLessThan(0.01);
    }
  });

  it('are as many as BIC asks for, one more or one fewer standing behind', () => {
    const counts = reference.seasons.map((written) => flightCount(bestOf(spansIn(written, written.k)).unknowns));
    expect(counts).toEqual([2, 1, 3]);
  });

  it('are the same whether heat is summed in °F or °C', () => {
    const celsius = season2.map((span) => ({ ...span, from: span.from / 1.8, to: span.to / 1.8 }));
    const [f, c] = [bestOf(season2), fitted(celsius, 'C')[0]!];
    expect(c.bic).toBeCloseTo(f.bic, 6);
    curvesOf(c.unknowns).forEach(({ peak }, g) => {
      expect(peak * 1.8).toBeCloseTo(curvesOf(f.unknowns)[g]!.peak, 2);
    });
  });

  it('do not depend on the order of the visits', () => {
    expect(bestOf([...season2].reverse()).bic).toBeCloseTo(bestOf(season2).bic, 6);
  });

  it('are climbed towards along the true slope of the likelihood', () => {
    const unknown = fc.record({
      stray: fc.double({ min: -4, max: 0, noNaN: true }),
      moths: fc.double({ min: 1, max: 6, noNaN: true }),
      peak: fc.double({ min: -200, max: 3000, noNaN: true }),
      gap: fc.double({ min: 5.5, max: 7.5, noNaN: true }),
      width: fc.double({ min: 3.5, max: 6, noNaN: true }),
    });
    const expected = expectedFlights([], [500, 1500], { unit: 'F', width: flightPrior('F', 1, 1).logWidth });
    const unforeseen = flightPrior('F', 300, 2);
    const foreseen = flightPrior('F', 300, 2, { expected, stray: { mean: -2, sd: 1.2 } });
    fc.assert(
      fc.property(unknown, fc.constantFrom(null, 2), fc.boolean(), ({ stray, moths, peak, gap, width }, k, known) => {
        const prior = known ? foreseen : unforeseen;
        const spans = season2.map((span, i) => ({ ...span, k, exposure: 1 + (i % 3), weight: i % 2 === 0 ? 1 : 0.6 }));
        const at = Float64Array.of(stray, moths, peak, width, moths, gap, width);
        const { gradient } = evaluateFlights(spans, prior, at);
        for (let i = 0; i < at.length; i++) {
          const h = i === 2 ? 1e-3 : 1e-6;
          const [below, above] = [-h, h].map((step) => {
            const moved = at.slice();
            moved[i]! += step;
            return evaluateFlights(spans, prior, moved).value;
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
      { trap: 0, begins: after(0), from: 0, to: 30, nights: 3, count: 4 },
      { trap: 0, begins: after(3), from: 30, to: 70, nights: 4, count: 2 },
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

describe('the normal curve', () => {
  it('agrees with R from one far tail to the other', () => {
    reference.normal.z.forEach((z, i) => {
      const p = reference.normal.p[i]!;
      expect(Math.abs(normalCdf(z) - p)).toBeLessThan(1e-15);
      expect(Math.abs(normalCdf(z) / p - 1)).toBeLessThan(1e-8);
    });
  });
});
