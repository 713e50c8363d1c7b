/** Seasons whose flights are known, for tests and benches. */
import { type Random, randomFrom } from '../statistics/random.testing.ts';
import type { FlightCurve } from './flight-likelihood.ts';
import type { HeatSpan, SpannedCatch } from './heat-spans.ts';
import { normalCdf } from './normal.ts';

export interface TrueSeason {
  readonly curves: readonly FlightCurve[];
  readonly strayPerNight: number;
  /** Dispersion of one visit; Infinity: Poisson. */
  readonly k: number;
  /** Share of a flight flown at `z` widths after its middle; the normal curve unless said otherwise. */
  readonly shape?: (z: number) => number;
}

/** A log-logistic flight: as steep as the normal one at its middle, sooner begun than done. */
export const skewedFlight = (z: number): number => (z <= -4 ? 0 : 1 / (1 + (1 + z / 4) ** -6.383));

/** Heat (°F·d) of each day of an invented warm season: 184 days from 1 April, cool, hot, cool. */
export function inventedHeat(random: Random, days = 184): Float64Array {
  return Float64Array.from({ length: days }, (_, i) => {
    const season = 4 + 18 * Math.sin((Math.PI * (i + 10)) / 200) ** 2;
    return Math.max(0, season + 4 * random.normal());
  });
}

/** Flights like those of the catalogue's insects: one to three, a generation apart, of uneven size and width. */
export function inventedFlights(random: Random, flights: number): FlightCurve[] {
  let peak = 350 + 250 * random.uniform();
  return Array.from({ length: flights }, (_, g) => {
    if (g > 0) peak += 850 + 350 * random.uniform();
    return { moths: 40 * 10 ** (1.2 * random.uniform()), peak, width: 90 + 110 * random.uniform() };
  });
}

/**
 * One trap over a season: visits 3 or 4 nights apart (or 7), one in twenty without information, until the day `through`.
 */
export function inventedSeason(
  random: Random,
  heat: Float64Array,
  { curves, strayPerNight, k, shape = normalCdf }: TrueSeason,
  { weekly = false, through = heat.length }: { readonly weekly?: boolean; readonly through?: number } = {},
): SpannedCatch {
  const spans: HeatSpan[] = [];
  let leftOut = 0;
  let [day, from] = [0, 0];
  for (let visit = 0; ; visit++) {
    const nights = weekly ? 7 : visit % 2 === 0 ? 3 : 4;
    if (day + nights > through) break;
    let to = from;
    for (let i = 0; i < nights; i++) to += heat[day++]!;
    const expected = curves.reduce(
      (sum, { moths, peak, width }) => sum + moths * (shape((to - peak) / width) - shape((from - peak) / width)),
      strayPerNight * nights,
    );
    const count = random.negativeBinomial(expected, k);
    if (random.uniform() < 0.05) leftOut++;
    else spans.push({ from, to, nights, count });
    from = to;
  }
  return { spans, traps: 1, leftOut };
}

export { randomFrom };
