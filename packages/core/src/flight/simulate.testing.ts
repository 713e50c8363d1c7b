/** Seasons whose flights are known, for tests and benches. */
import { type Random, randomFrom } from '../statistics/random.testing.ts';
import type { EarlierFlight } from './expected-flights.ts';
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

/** How flights of one region differ from year to year, as standard deviations: peak in °F·d, ln width, ln moths. */
export interface Years {
  readonly peak: number;
  readonly width: number;
  readonly moths: number;
}

/** The same flights in another year. */
export const inAnotherYear = (random: Random, curves: readonly FlightCurve[], years: Years): FlightCurve[] =>
  curves.map(({ moths, peak, width }) => ({
    moths: moths * Math.exp(years.moths * random.normal()),
    peak: peak + years.peak * random.normal(),
    width: width * Math.exp(years.width * random.normal()),
  }));

/** Past years of flights, as whole seasons are read back: the peak to 15 °F·d, width and moths to a tenth. */
export const inventedPast = (random: Random, usual: readonly FlightCurve[], years: Years, seasons: number): EarlierFlight[][] =>
  Array.from({ length: seasons }, () =>
    inAnotherYear(random, inAnotherYear(random, usual, years), { peak: 15, width: 0.1, moths: 0.1 }),
  );

export interface Visits {
  readonly weekly?: boolean;
  /** Nights that the trap goes unvisited before its first visit. */
  readonly late?: number;
  /** Days of the season that are over; all of them by default. */
  readonly through?: number;
  /** How many times as many moths as the mean trap's. */
  readonly abundance?: number;
  /** A factor on the moths of each night, for all traps alike; none by default. */
  readonly weather?: Float64Array | null;
}

/** One trap over a season: visits 3 or 4 nights apart (or 7), one in twenty without information. */
export function inventedSeason(
  random: Random,
  heat: Float64Array,
  { curves, strayPerNight, k, shape = normalCdf }: TrueSeason,
  { weekly = false, late = 0, through = heat.length, abundance = 1, weather = null }: Visits = {},
): SpannedCatch {
  const spans: HeatSpan[] = [];
  const flown = (at: number) => curves.reduce((sum, { moths, peak, width }) => sum + moths * shape((at - peak) / width), 0);
  let leftOut = 0;
  let day = 0;
  let from = 0;
  while (day < late) from += heat[day++]!;
  for (let visit = 0; ; visit++) {
    const nights = weekly ? 7 : visit % 2 === 0 ? 3 : 4;
    if (day + nights > through) break;
    const begins = day;
    let to = from;
    let expected = 0;
    for (; day < begins + nights; day++) {
      const before = to;
      to += heat[day]!;
      expected += (weather?.[day] ?? 1) * (strayPerNight + flown(to) - flown(before));
    }
    const count = random.negativeBinomial(abundance * expected, k);
    if (random.uniform() < 0.05) leftOut++;
    else spans.push({ trap: 0, begins, nights, from, to, count });
    from = to;
  }
  return { spans, traps: spans.length > 0 ? 1 : 0, leftOut };
}

/** A factor with mean 1 and this log-sd for each night. */
export const nightWeather = (random: Random, nights: number, logSd: number): Float64Array =>
  Float64Array.from({ length: nights }, () => Math.exp(logSd * random.normal() - (logSd * logSd) / 2));

/** z up to which a share of a flight of this shape has flown, by bisection. */
export function whenFlown(share: number, shape: (z: number) => number): number {
  let [low, high] = [-4, 8];
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2;
    if (shape(middle) < share) low = middle;
    else high = middle;
  }
  return low;
}

export { randomFrom };
