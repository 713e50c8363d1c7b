/** Where a flight stands: quantiles over the flights it may be. */
import type { PossibleFlight } from './flight-posterior.ts';
import { deviateAt, type FlightShape, widthsAt } from './flight-shape.ts';
import { normalCdf } from './normal.ts';

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
  const [low, heat, high] = quantiles(flights, ({ peak, width, skew }) => peak + width * widthsAt(deviate, skew), [
    TAIL,
    0.5,
    1 - TAIL,
  ]);
  return { heat: heat!, low: low!, high: high! };
}

/** Deviates beyond this are all of the flight, or nothing. */
const ALL = 8;
/** Standard normal deviate of one σ: 15.9 % lie beyond it. */
const ONE_SIGMA = normalCdf(1);
/** Variance of the deviate, in squared widths, up to which a share is set right for it. */
const MOST_VARIANCE = 0.5;

/**
 * Share flown at `heat`. The middle of its interval would lean towards a half: of a share Φ(u) whose deviate u is known
 * with variance s², Φ of the middle u is too high on average where little has flown, too low where most has. Φ(u/√(1 − s²))
 * is right on average (the unbiased estimate of Φ from one normal deviate: Lieberman & Resnikoff 1955, J. Am. Stat. Assoc.
 * 50:457–516, from memory).
 */
export function shareFlown(flights: readonly PossibleFlight[], heat: number): Interval & { readonly share: number } {
  const deviate = ({ peak, width, skew }: PossibleFlight) =>
    Math.max(-ALL, Math.min(ALL, deviateAt((heat - peak) / width, skew)));
  const [low, less, middle, more, high] = quantiles(flights, deviate, [TAIL, 1 - ONE_SIGMA, 0.5, ONE_SIGMA, 1 - TAIL]);
  const spread = (more! - less!) / 2;
  const share = normalCdf(middle! / Math.sqrt(1 - Math.min(MOST_VARIANCE, spread * spread)));
  const [least, most] = [normalCdf(low!), normalCdf(high!)];
  return { share: Math.max(least, Math.min(most, share)), low: least, high: most };
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

/** Values of a figure below which these shares of the weight lie, between neighbours in a straight line. */
function quantiles(
  flights: readonly PossibleFlight[],
  figure: (flight: PossibleFlight) => number,
  shares: readonly number[],
): number[] {
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
  return shares.map(quantile);
}
