/** A season's flights on heat and calendar, and how far each has come. */

import type { Day } from '../base/day.ts';
import type { TemperatureUnit } from '../base/temperature.ts';
import { type EventForecast, forecastEvent } from '../forecast/event-forecast.ts';
import type { HeatTrack } from '../heat/types.ts';
import type { FlightFit, FlightFits } from './fit-flights.ts';
import { flightCount } from './flight-likelihood.ts';
import { FLIGHT_LEVEL, heatOfMoment, type Interval, mothsOf, shareFlown } from './flight-moments.ts';

/** A moment of a flight on the heat axis, with its 80 % interval, and on the calendar. */
export interface FlightMoment extends Interval {
  readonly heat: number;
  /** The date of `heat`: past, or forecast when it lies ahead. The interval of `heat` is not in it. */
  readonly date: EventForecast;
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
  /** Share of the flight that has flown, with its 80 % interval. */
  readonly flown: Interval & { readonly share: number };
  readonly status: 'to-come' | 'running' | 'over';
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
  /** Dispersion per visit that was taken as given; null: Poisson. */
  readonly k: number | null;
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

/**
 * Reads fitted flights as of the last measured day: starts, peaks, ends, and the share flown. Their intervals take the
 * number of flights as known: where `unsure`, they are too narrow. `measuredThrough` as in `forecastEvent`.
 *
 * Null when heat since `start` is not known.
 */
export function readGenerations(
  fits: FlightFits,
  track: HeatTrack,
  start: Day,
  options: { readonly measuredThrough?: Day | null } = {},
): Generations | null {
  const knownThrough = options.measuredThrough ?? track.end;
  if (knownThrough === null) return null;
  const soFar = track.total(start, knownThrough);
  if (!soFar.ok) return null;
  const tried = fits.fits.map(({ unknowns, bic }) => ({ flights: flightCount(unknowns), bic }));
  const best = fits.fits[0];
  const { k, moths, intervals, leftOut } = fits;
  return {
    unit: track.rule.unit,
    heatSoFar: soFar.degreeDays,
    knownThrough,
    flights: best ? readFlights(best, soFar.degreeDays, (heat) => forecastEvent(track, start, heat, options)) : [],
    strayPerNight: best ? Math.exp(best.unknowns[0]!) : 0,
    tried,
    unsure: tried.length > 1 && tried[1]!.bic - tried[0]!.bic < UNSURE_BELOW,
    level: FLIGHT_LEVEL,
    k,
    moths,
    intervals,
    leftOut,
  };
}

function readFlights(fit: FlightFit, heatSoFar: number, dateOf: (heat: number) => EventForecast): Flight[] {
  const moment = (g: number, deviate: number): FlightMoment => {
    const at = heatOfMoment(fit, g, deviate);
    return { ...at, date: dateOf(at.heat) };
  };
  return Array.from({ length: flightCount(fit.unknowns) }, (_, g): Flight => {
    const flown = shareFlown(fit, g, heatSoFar);
    return {
      number: g + 1,
      moths: mothsOf(fit, g),
      start: moment(g, -Z_95),
      peak: moment(g, 0),
      end: moment(g, Z_95),
      flown,
      status: flown.share < 0.05 ? 'to-come' : flown.share < 0.95 ? 'running' : 'over',
    };
  });
}
