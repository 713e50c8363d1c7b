/** A season's flights on heat and calendar, and how far each has come. */

import type { Day } from '../base/day.ts';
import type { TemperatureUnit } from '../base/temperature.ts';
import { type EventForecast, forecastEvent } from '../forecast/event-forecast.ts';
import type { HeatTrack } from '../heat/types.ts';
import type { ExpectedFlight } from './expected-flights.ts';
import type { RegionFit } from './fit-region.ts';
import { flightCount } from './flight-likelihood.ts';
import { FLIGHT_LEVEL, heatOfMoment, type Interval, middleCurve, mothsOf, shareFlown } from './flight-moments.ts';
import type { PossibleFlight } from './flight-posterior.ts';
import type { FlightShape } from './flight-shape.ts';
import type { Scatter } from './pooled-catch.ts';

/** A moment of a flight on the heat axis, with its 80 % interval, and on the calendar. */
export interface FlightMoment extends Interval {
  readonly heat: number;
  /** The dates of `heat` and of both ends of its interval: past, or forecast where they lie ahead. */
  readonly date: EventForecast;
  readonly earliest: EventForecast;
  readonly latest: EventForecast;
}

export interface Flight {
  /** 1 for the first flight of the season. */
  readonly number: number;
  /** Moths per trap over the whole flight, with its 80 % interval. */
  readonly moths: Interval & { readonly estimate: number };
  /** When 5, 50 and 95 % of the flight have flown. */
  readonly start: FlightMoment;
  readonly peak: FlightMoment;
  readonly end: FlightMoment;
  readonly flown: Flown;
  /** The curve in the middle of all it may be. */
  readonly curve: FlightShape;
  readonly status: 'to-come' | 'running' | 'over';
}

/** Share of a flight that has flown, with its 80 % interval. */
export interface Flown extends Interval {
  readonly share: number;
  /**
   * What may be said of it. `share`: the figure. `between`: only the interval, since the middle of it leans towards a half
   * of the flight wherever counts alone must tell. `cannot-tell`: not even that.
   */
  readonly told: 'share' | 'between' | 'cannot-tell';
}

export interface Generations {
  readonly unit: TemperatureUnit;
  /** Degree-days from the start of the axis through `knownThrough`. */
  readonly heatSoFar: number;
  readonly knownThrough: Day;
  readonly flights: readonly Flight[];
  /** Moths per trap and night that belong to no flight. */
  readonly strayPerNight: number;
  /** Numbers of flights tried, lowest BIC first: the first is the one shown. */
  readonly tried: readonly { readonly flights: number; readonly bic: number }[];
  /** True when the runner-up's BIC lies within 6 of the best. A flight that has hardly begun can be missed all the same. */
  readonly unsure: boolean;
  readonly level: typeof FLIGHT_LEVEL;
  readonly scatter: Scatter;
  /** The flights that model and past seasons led one to expect. */
  readonly expected: readonly ExpectedFlight[];
  readonly moths: number;
  readonly intervals: number;
  readonly leftOut: number;
}

/** Standard normal deviate exceeded one time in twenty. */
const Z_95 = 1.6448536269514722;
/**
 * From a difference in BIC of 6 on the evidence is strong: Raftery 1995, Sociol. Methodol. 25:111–163 (from memory). In
 * simulated seasons of up to two flights, numbers this sure were right in 96 cases of 100 or more.
 */
export const UNSURE_BELOW = 6;

/** An interval of the share wider than this says next to nothing, and wider than `TOLD` no figure stands for it. Own choices. */
const UNTOLD = 0.7;
const TOLD = 0.5;
/** Of this share at least: the flight is over, whatever led one to expect it. Own choice, by docs/flight-skill.md. */
const NEARLY_ALL = 0.97;
/** A flight this many standard deviations from an expected one is another. */
const FORESEEN = 3;

/**
 * Reads fitted flights as of the last measured day: starts, peaks, ends, and the share flown. Their intervals take the
 * number of flights as known: where `unsure`, they are too narrow. `measuredThrough` as in `forecastEvent`. `abundance`:
 * of the mean trap that the moths are told for, against that of the region.
 *
 * Null when heat since `start` is not known.
 */
export function readGenerations(
  fit: RegionFit,
  track: HeatTrack,
  start: Day,
  { abundance = 1, ...options }: { readonly measuredThrough?: Day | null; readonly abundance?: number } = {},
): Generations | null {
  const knownThrough = options.measuredThrough ?? track.end;
  if (knownThrough === null) return null;
  const soFar = track.total(start, knownThrough);
  if (!soFar.ok) return null;
  const tried = fit.fits.map(({ unknowns, bic }) => ({ flights: flightCount(unknowns), bic }));
  const { scatter, expected, moths, intervals, leftOut } = fit;
  const dateOf = (heat: number) => forecastEvent(track, start, heat, options);
  return {
    unit: track.rule.unit,
    heatSoFar: soFar.degreeDays,
    knownThrough,
    flights: fit.flights.map((possible, g) => readFlight(possible, g, soFar.degreeDays, abundance, expected, dateOf)),
    strayPerNight: abundance * (fit.fits[0] ? Math.exp(fit.fits[0].unknowns[0]!) : 0),
    tried,
    unsure: tried.length > 1 && tried[1]!.bic - tried[0]!.bic < UNSURE_BELOW,
    level: FLIGHT_LEVEL,
    scatter,
    expected,
    moths,
    intervals,
    leftOut,
  };
}

function readFlight(
  possible: readonly PossibleFlight[],
  g: number,
  heatSoFar: number,
  abundance: number,
  expected: readonly ExpectedFlight[],
  dateOf: (heat: number) => EventForecast,
): Flight {
  const moment = (deviate: number): FlightMoment => {
    const at = heatOfMoment(possible, deviate);
    return { ...at, date: dateOf(at.heat), earliest: dateOf(at.low), latest: dateOf(at.high) };
  };
  const flown = readFlown(possible, heatSoFar, expected);
  return {
    number: g + 1,
    moths: mothsOf(possible, abundance),
    start: moment(-Z_95),
    peak: moment(0),
    end: moment(Z_95),
    flown,
    curve: middleCurve(possible),
    status: statusOf(flown),
  };
}

export const statusOf = ({ share, low }: Flown): Flight['status'] =>
  share < 0.05 ? 'to-come' : low > NEARLY_ALL ? 'over' : 'running';

/**
 * Share flown at a heat, and what may be said of it. Counts of a flight that is not over give no figure by themselves, only
 * an interval: its middle leans towards a half (docs/flight-skill.md). They do where seasons before have had this flight, and
 * lead one to expect it to within its own width: the model dates a peak, but tells neither width nor form.
 */
export function readFlown(possible: readonly PossibleFlight[], heat: number, expected: readonly ExpectedFlight[]): Flown {
  const flown = shareFlown(possible, heat);
  const { low, high } = flown;
  if (high - low > UNTOLD) return { ...flown, told: 'cannot-tell' };
  if (low > NEARLY_ALL) return { ...flown, told: 'share' };
  const { peak, width } = middleCurve(possible);
  const foreseen = expected.some(
    (one) => one.seasons > 0 && one.peak.sd < width && Math.abs(one.peak.mean - peak) < FORESEEN * one.peak.sd,
  );
  return { ...flown, told: foreseen && high - low <= TOLD ? 'share' : 'between' };
}
