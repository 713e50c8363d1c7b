/** A season's flights on heat and calendar, and how far each has come. */
import { type EventForecast, forecastEvent } from '../forecast/event-forecast.ts';
import type { HeatTrack } from '../heat/types.ts';
import type { Day } from '../units/day.ts';
import type { TemperatureUnit } from '../units/temperature.ts';
import type { FlightFit, FlightFits } from './fit-flights.ts';
import { curvesOf, type FlightUnknowns, flightCount, peakGradient } from './flight-likelihood.ts';
import { normalCdf } from './normal.ts';

/** A moment of a flight on the heat axis, with its 80 % interval, and on the calendar. */
export interface FlightMoment {
  readonly heat: number;
  readonly low: number;
  readonly high: number;
  /** The date of `heat`: past, or forecast when it lies ahead. The interval of `heat` is not in it. */
  readonly date: EventForecast;
}

export interface Flight {
  /** 1 for the first flight of the season. */
  readonly number: number;
  /** Moths per trap over the whole flight, with its 80 % interval. */
  readonly moths: { readonly estimate: number; readonly low: number; readonly high: number };
  /** When 5, 50 and 95 % of the flight have flown. */
  readonly start: FlightMoment;
  readonly peak: FlightMoment;
  readonly end: FlightMoment;
  /** Share of the flight that has flown, with its 80 % interval. */
  readonly flown: { readonly share: number; readonly low: number; readonly high: number };
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
  /** True when the runner-up's BIC lies within 2 of the best. */
  readonly unsure: boolean;
  readonly level: typeof LEVEL;
  /** Dispersion per visit that was taken as given; null: Poisson. */
  readonly k: number | null;
  readonly moths: number;
  readonly intervals: number;
  readonly leftOut: number;
}

const LEVEL = 0.8;
/** Standard normal deviates exceeded one time in ten, and one in twenty. */
const Z_90 = 1.2815515655446004;
const Z_95 = 1.6448536269514722;
/** "Barely worth a mention" below this: Raftery 1995, Sociol. Methodol. 25:111–163 (from memory). */
export const UNSURE_BELOW = 2;

/**
 * Reads fitted flights as of the last day of the track: starts, peaks, ends, and the share flown. Intervals are by the
 * delta method, on ln moths, on heat, and for the share on the probit scale z = (heat so far − peak)/σ. They take the
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
    level: LEVEL,
    k,
    moths,
    intervals,
    leftOut,
  };
}

function readFlights(fit: FlightFit, heatSoFar: number, dateOf: (heat: number) => EventForecast): Flight[] {
  const { unknowns } = fit;
  return curvesOf(unknowns).map(({ moths, peak, width }, g): Flight => {
    const moment = (deviate: number): FlightMoment => {
      const heat = peak + deviate * width;
      const reach = Z_90 * spreadOf(fit, quantileGradient(unknowns, g, deviate, width));
      return { heat, low: heat - reach, high: heat + reach, date: dateOf(heat) };
    };
    const deviate = (heatSoFar - peak) / width;
    const spread = spreadOf(fit, quantileGradient(unknowns, g, deviate, width)) / width;
    const share = normalCdf(deviate);
    const factor = Math.exp(Z_90 * spreadOf(fit, unitVector(unknowns.length, 3 * g + 1)));
    return {
      number: g + 1,
      moths: { estimate: moths, low: moths / factor, high: moths * factor },
      start: moment(-Z_95),
      peak: moment(0),
      end: moment(Z_95),
      flown: { share, low: normalCdf(deviate - Z_90 * spread), high: normalCdf(deviate + Z_90 * spread) },
      status: share < 0.05 ? 'to-come' : share < 0.95 ? 'running' : 'over',
    };
  });
}

/** ∂(peak + deviate·σ)/∂ unknowns; over σ, it is (but for its sign) the gradient of the deviate of a given heat. */
function quantileGradient(unknowns: FlightUnknowns, g: number, deviate: number, width: number): Float64Array {
  const gradient = peakGradient(unknowns, g);
  gradient[3 * g + 3]! += deviate * width;
  return gradient;
}

function unitVector(size: number, at: number): Float64Array {
  const vector = new Float64Array(size);
  vector[at] = 1;
  return vector;
}

/** Standard error of a function of the unknowns with this gradient. */
function spreadOf({ covariance }: FlightFit, gradient: Float64Array): number {
  const size = gradient.length;
  let variance = 0;
  for (let i = 0; i < size; i++)
    for (let j = 0; j < size; j++) variance += gradient[i]! * gradient[j]! * covariance[i * size + j]!;
  return Math.sqrt(variance);
}
