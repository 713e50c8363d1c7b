import { logGamma } from '../statistics/gamma-function.ts';
import type { Belief } from './belief.ts';
import { densityAt, densitySlopeAt, foreseenAt } from './expected-flights.ts';
import type { FlightPrior } from './flight-prior.ts';
import { normalCdf, normalDensity } from './normal.ts';
import type { PooledSpan } from './pooled-catch.ts';

/**
 * Unknowns of a season with G flights, 1 + 3G of them: ln stray moths per night, then for each flight ln moths per
 * trap, its peak (the first flight) or ln of the gap since the peak before (the others), and ln σ.
 */
export type FlightUnknowns = Float64Array;

export interface FlightCurve {
  /** Moths per trap over the whole flight. */
  readonly moths: number;
  /** Degree-days of peak and width (σ). */
  readonly peak: number;
  readonly width: number;
}

export const flightCount = (unknowns: FlightUnknowns): number => (unknowns.length - 1) / 3;

export function curvesOf(unknowns: FlightUnknowns): FlightCurve[] {
  let peak = 0;
  return Array.from({ length: flightCount(unknowns) }, (_, g) => {
    const place = unknowns[3 * g + 2]!;
    peak = g === 0 ? place : peak + Math.exp(place);
    return { moths: Math.exp(unknowns[3 * g + 1]!), peak, width: Math.exp(unknowns[3 * g + 3]!) };
  });
}

export function unknownsOf(stray: number, curves: readonly FlightCurve[]): FlightUnknowns {
  const place = ({ peak }: FlightCurve, g: number) => (g === 0 ? peak : Math.log(peak - curves[g - 1]!.peak));
  return Float64Array.of(
    Math.log(stray),
    ...curves.flatMap((curve, g) => [Math.log(curve.moths), place(curve, g), Math.log(curve.width)]),
  );
}

/** ∂ peak of flight g / ∂ unknowns: 1 for the first peak, and each gap up to g. */
export function peakGradient(unknowns: FlightUnknowns, g: number): Float64Array {
  const gradient = new Float64Array(unknowns.length);
  gradient[2] = 1;
  for (let h = 1; h <= g; h++) gradient[3 * h + 2] = Math.exp(unknowns[3 * h + 2]!);
  return gradient;
}

/** Log-likelihood less the penalty of the prior, with its gradient and expected curvature (row by row). */
export interface Evaluation {
  readonly value: number;
  readonly gradient: Float64Array;
  readonly information: Float64Array;
}

/** Beyond this many σ a flight adds nothing that a double could show. */
const FAR = 8;

/**
 * The count of a span is negative binomial with the dispersion of the span about exposure ×
 * (stray·nights + Σ moths·[Φ((to − peak)/σ) − Φ((from − peak)/σ)]): the flight curves integrated over its heat.
 */
export function evaluateFlights(spans: readonly PooledSpan[], prior: FlightPrior, unknowns: FlightUnknowns): Evaluation {
  const size = unknowns.length;
  const curves = curvesOf(unknowns);
  const gradient = new Float64Array(size);
  const information = new Float64Array(size * size);
  const slope = new Float64Array(size);
  const stray = Math.exp(unknowns[0]!);
  let value = 0;
  for (const { from, to, nights, count, exposure, k, weight } of spans) {
    slope.fill(0);
    let expected = exposure * stray * nights;
    slope[0] = expected;
    let byLaterPeaks = 0;
    for (let g = curves.length - 1; g >= 0; g--) {
      const { moths, peak, width } = curves[g]!;
      const low = (from - peak) / width;
      const high = (to - peak) / width;
      if (low < FAR && high > -FAR) {
        const [atLow, atHigh] = [normalDensity(low), normalDensity(high)];
        const caught = exposure * moths * shareBetween(low, high, atLow, atHigh);
        expected += caught;
        slope[3 * g + 1] = caught;
        byLaterPeaks += (exposure * moths * (atLow - atHigh)) / width;
        slope[3 * g + 3] = exposure * moths * (low * atLow - high * atHigh);
      }
      slope[3 * g + 2] = g === 0 ? byLaterPeaks : byLaterPeaks * Math.exp(unknowns[3 * g + 2]!);
    }
    const variance = k === null ? expected : expected + (expected * expected) / k;
    value += weight * (count * Math.log(expected) - (k === null ? expected : (count + k) * Math.log(expected + k)));
    const residual = (weight * (count - expected)) / variance;
    for (let i = 0; i < size; i++) {
      const s = slope[i]!;
      if (s === 0) continue;
      gradient[i]! += residual * s;
      const weighted = (weight * s) / variance;
      for (let j = 0; j <= i; j++) information[i * size + j]! += weighted * slope[j]!;
    }
  }
  for (let i = 0; i < size; i++) for (let j = 0; j < i; j++) information[j * size + i] = information[i * size + j]!;
  return { value: value + penalise(spans, prior, unknowns, curves, gradient, information), gradient, information };
}

/** Φ(high) − Φ(low), taken in the tail that keeps its digits. */
const shareBetween = (low: number, high: number, atLow: number, atHigh: number): number =>
  low > 0 ? normalCdf(-low, atLow) - normalCdf(-high, atHigh) : normalCdf(high, atHigh) - normalCdf(low, atLow);

/** Adds the prior's gradient and curvature and returns its (negative) value. */
function penalise(
  spans: readonly PooledSpan[],
  prior: FlightPrior,
  unknowns: FlightUnknowns,
  curves: readonly FlightCurve[],
  gradient: Float64Array,
  information: Float64Array,
): number {
  if (curves.length === 0 && !prior.strayKnown) return 0;
  const size = unknowns.length;
  let value = 0;
  const believe = (i: number, { mean, sd }: Belief) => {
    const z = (unknowns[i]! - mean) / sd;
    value -= 0.5 * z * z;
    gradient[i]! -= z / sd;
    information[i * size + i]! += 1 / (sd * sd);
  };
  believe(0, prior.logStray);
  /** A pull on a peak: its slope and curvature per degree-day. */
  const lean = (towards: Float64Array, slope: number, curvature: number) => {
    for (let i = 0; i < size; i++) {
      gradient[i]! += slope * towards[i]!;
      for (let j = 0; j < size; j++) information[i * size + j]! += towards[i]! * towards[j]! * curvature;
    }
  };
  const [first, last] = seenHeat(spans);
  for (const [g, { peak }] of curves.entries()) {
    const foreseen = foreseenAt(prior.expected, peak);
    const [logMoths, logWidth] = [foreseen?.logMoths ?? prior.logMoths, foreseen?.logWidth ?? prior.logWidth];
    believe(3 * g + 1, logMoths);
    if (g > 0) believe(3 * g + 2, prior.logGap);
    believe(3 * g + 3, logWidth);
    if (foreseen) {
      // Against what BIC stands for: how much likelier this peak is than one anywhere, and how much narrower the beliefs.
      value += Math.log(1 + densityAt(prior.expected, peak) / prior.anywhere);
      value += Math.log(prior.logMoths.sd / logMoths.sd) + Math.log(prior.logWidth.sd / logWidth.sd);
      const { slope, trust } = densitySlopeAt(prior.expected, peak, prior.anywhere);
      lean(peakGradient(unknowns, g), slope, trust);
    }
    const beyond = peak > last ? peak - last : peak < first ? peak - first : 0;
    if (beyond === 0) continue;
    const z = beyond / prior.outside;
    value -= 0.5 * z * z;
    lean(peakGradient(unknowns, g), -z / prior.outside, 1 / prior.outside ** 2);
  }
  return value;
}

/** The heat from the first night seen to the last. */
export function seenHeat(spans: readonly PooledSpan[]): [first: number, last: number] {
  let [first, last] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const { from, to } of spans) {
    if (from < first) first = from;
    if (to > last) last = to;
  }
  return [first, last];
}

/** The part of the log-likelihood that does not depend on the unknowns. */
export function likelihoodConstant(spans: readonly PooledSpan[]): number {
  let sum = 0;
  for (const { count, k, weight } of spans) {
    sum -= weight * logGamma(count + 1);
    if (k !== null) sum += weight * (logGamma(count + k) - logGamma(k) + k * Math.log(k));
  }
  return sum;
}
