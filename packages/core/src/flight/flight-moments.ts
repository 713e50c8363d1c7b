/** Where a flight stands: quantiles over the flights it may be. */
import type { PossibleFlight } from './flight-posterior.ts';
import { type FlightShape, flownBy, widthsAt } from './flight-shape.ts';

export interface Interval {
  readonly low: number;
  readonly high: number;
}

export const FLIGHT_LEVEL = 0.8;
/** Standard normal deviate exceeded one time in ten. */
const Z_90 = 1.2815515655446004;
const TAIL = (1 - FLIGHT_LEVEL) / 2;

/** The heat by which the flight has flown up to the normal deviate: 0 for its peak (half), −1.64 for its first twentieth. */
export function heatOfMoment(flights: readonly PossibleFlight[], deviate: number): Interval & { readonly heat: number } {
  const [low, heat, high] = quantiles(flights, ({ peak, width, skew }) => peak + width * widthsAt(deviate, skew));
  return { heat, low, high };
}

/** Share flown at `heat`. */
export function shareFlown(flights: readonly PossibleFlight[], heat: number): Interval & { readonly share: number } {
  const [low, share, high] = quantiles(flights, ({ peak, width, skew }) => flownBy((heat - peak) / width, skew));
  return { share, low, high };
}

/** Moths per trap over the whole flight, for a trap that catches `abundance` times as much as the mean one. */
export function mothsOf(flights: readonly PossibleFlight[], abundance = 1): Interval & { readonly estimate: number } {
  let [mean, square] = [0, 0];
  for (const { weight, logMoths } of flights) {
    mean += weight * logMoths.mean;
    square += weight * (logMoths.mean ** 2 + logMoths.sd ** 2);
  }
  const factor = Math.exp(Z_90 * Math.sqrt(Math.max(0, square - mean * mean)));
  const estimate = abundance * Math.exp(mean);
  return { estimate, low: estimate / factor, high: estimate * factor };
}

/** The curve in the middle of all it may be, to draw. */
export function middleCurve(flights: readonly PossibleFlight[]): FlightShape {
  let [peak, logWidth, skew] = [0, 0, 0];
  for (const one of flights) {
    peak += one.weight * one.peak;
    logWidth += one.weight * Math.log(one.width);
    skew += one.weight * one.skew;
  }
  return { peak, width: Math.exp(logWidth), skew };
}

/** Tenth, middle and ninetieth hundredth of a figure by weight, between neighbours in a straight line. */
function quantiles(
  flights: readonly PossibleFlight[],
  figure: (flight: PossibleFlight) => number,
): [low: number, middle: number, high: number] {
  const values = flights.map((flight) => ({ value: figure(flight), weight: flight.weight })).sort((a, b) => a.value - b.value);
  let before = 0;
  const at = values.map(({ weight }) => {
    before += weight;
    return before - weight / 2;
  });
  const quantile = (share: number) => {
    const i = at.findIndex((reached) => reached >= share);
    if (i <= 0) return values.at(i)!.value;
    const part = (share - at[i - 1]!) / (at[i]! - at[i - 1]!);
    return values[i - 1]!.value + part * (values[i]!.value - values[i - 1]!.value);
  };
  return [quantile(TAIL), quantile(0.5), quantile(1 - TAIL)];
}
