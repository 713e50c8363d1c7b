/** Where a fitted flight stands, with 80 % intervals by the delta method. */
import type { FlightFit } from './fit-flights.ts';
import { curvesOf, peakGradient } from './flight-likelihood.ts';
import { normalCdf } from './normal.ts';

export interface Interval {
  readonly low: number;
  readonly high: number;
}

export const FLIGHT_LEVEL = 0.8;
/** Standard normal deviate exceeded one time in ten. */
const Z_90 = 1.2815515655446004;
/**
 * A real flight is no exact normal curve: it may run ahead or behind by this share of σ at its peak, and by (1 + 0.7·z²)
 * times as much z widths away from it. With it the 80 % intervals for the share of running log-logistic flights held in
 * 65 to 75 cases of 100, without it in 34 to 56; those of normal flights in 88 to 95 (bench/flight/simulate.mjs). Own
 * choice.
 */
const SHAPE_DOUBT = 0.1;
/** Widths from the peak beyond which the doubt grows no more: a flight long over is over. */
const TAIL = 3;

/** The heat `deviate` widths after the peak of flight `g` (0 for the first). */
export function heatOfMoment(fit: FlightFit, g: number, deviate: number): Interval & { readonly heat: number } {
  const { peak, width } = curvesOf(fit.unknowns)[g]!;
  const heat = peak + deviate * width;
  const reach = Z_90 * Math.hypot(spreadOf(fit, quantileGradient(fit, g, deviate, width)), doubtAt(deviate) * width);
  return { heat, low: heat - reach, high: heat + reach };
}

/** Share of flight `g` flown at `heat`; its interval is taken on the probit scale, z = (heat − peak)/σ. */
export function shareFlown(fit: FlightFit, g: number, heat: number): Interval & { readonly share: number } {
  const { peak, width } = curvesOf(fit.unknowns)[g]!;
  const deviate = (heat - peak) / width;
  const reach = Z_90 * Math.hypot(spreadOf(fit, quantileGradient(fit, g, deviate, width)) / width, doubtAt(deviate));
  return { share: normalCdf(deviate), low: normalCdf(deviate - reach), high: normalCdf(deviate + reach) };
}

/** Moths per trap over the whole of flight `g`; the interval is taken on the logarithm. */
export function mothsOf(fit: FlightFit, g: number): Interval & { readonly estimate: number } {
  const { moths } = curvesOf(fit.unknowns)[g]!;
  const gradient = new Float64Array(fit.unknowns.length);
  gradient[3 * g + 1] = 1;
  const factor = Math.exp(Z_90 * spreadOf(fit, gradient));
  return { estimate: moths, low: moths / factor, high: moths * factor };
}

const doubtAt = (deviate: number): number => SHAPE_DOUBT * (1 + 0.7 * Math.min(Math.abs(deviate), TAIL) ** 2);

/** ∂(peak + deviate·σ)/∂ unknowns; over σ, it is (but for its sign) the gradient of the deviate of a given heat. */
function quantileGradient({ unknowns }: FlightFit, g: number, deviate: number, width: number): Float64Array {
  const gradient = peakGradient(unknowns, g);
  gradient[3 * g + 3]! += deviate * width;
  return gradient;
}

/** Standard error of a function of the unknowns with this gradient. */
function spreadOf({ covariance }: FlightFit, gradient: Float64Array): number {
  const size = gradient.length;
  let variance = 0;
  for (let i = 0; i < size; i++)
    for (let j = 0; j < size; j++) variance += gradient[i]! * gradient[j]! * covariance[i * size + j]!;
  return Math.sqrt(variance);
}
