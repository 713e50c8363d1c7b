/** How many flights a season's catch shows, and where: the cut-up of counts into normal curves on the heat axis. */

import { cholesky, invertCholesky, solveCholesky } from '../statistics/linear-algebra.ts';
import {
  curvesOf,
  type Evaluation,
  evaluateFlights,
  type FlightCurve,
  type FlightUnknowns,
  flightCount,
  likelihoodConstant,
  seenHeat,
  unknownsOf,
} from './flight-likelihood.ts';
import type { FlightPrior } from './flight-prior.ts';
import { normalCdf } from './normal.ts';
import type { PooledSpan } from './pooled-catch.ts';

/** A season's catch with one number of flights. */
export interface FlightFit {
  readonly unknowns: FlightUnknowns;
  /** Covariance of the unknowns, row by row: the inverse of the expected information. */
  readonly covariance: Float64Array;
  readonly bic: number;
}

const MAX_FLIGHTS = 4;
const MAX_STEPS = 60;
/** Steps after which only the best start climbs on. */
const RACE_STEPS = 8;
/** Log-likelihood gained by the last step. */
const SETTLED = 1e-7;
/** Places tried for one more flight. */
const PLACES = 40;
const STARTS = 2;

/**
 * Fits 0, 1, 2 … flights and orders them by BIC, taken at the penalised estimate (Fraley & Raftery 2007, J. Classif.
 * 24:155–181, from memory). One more flight is started at the places where the counts most exceed those expected, by the
 * gradient function of Lindsay 1983 (Ann. Stat. 11:86–94, from memory). Some moth must have been caught. `from`: fits of
 * much the same catch, to go on from.
 */
export function fitFlights(
  spans: readonly PooledSpan[],
  prior: FlightPrior,
  { maxFlights = MAX_FLIGHTS, from = [] }: { readonly maxFlights?: number; readonly from?: readonly FlightFit[] } = {},
): FlightFit[] {
  const nights = spans.reduce((sum, span) => sum + span.nights * span.exposure, 0);
  const moths = spans.reduce((sum, { count }) => sum + count, 0);
  const constant = likelihoodConstant(spans);
  const size = spans.reduce((sum, { weight }) => sum + weight, 0);
  const fits: FlightFit[] = [];
  let unknowns: FlightUnknowns = Float64Array.of(Math.log(moths / nights));
  for (let flights = 0; flights <= maxFlights; flights++) {
    const known = from.find((fit) => flightCount(fit.unknowns) === flights);
    const starts = known ? [known.unknowns] : startsOf(spans, prior, flights, unknowns);
    const ahead = starts
      .map((start) => climb(spans, prior, start, RACE_STEPS))
      .reduce((a, b) => (b.at.value > a.at.value ? b : a));
    const best = climb(spans, prior, ahead.unknowns, MAX_STEPS);
    unknowns = best.unknowns;
    const bic = -2 * (best.at.value + constant) + unknowns.length * Math.log(size);
    fits.push({ unknowns, covariance: covarianceOf(best.at), bic });
    if (flights >= 3 && bic > fits[flights - 1]!.bic && fits[flights - 1]!.bic > fits[flights - 2]!.bic) break;
  }
  return fits.sort((a, b) => a.bic - b.bic);
}

/** Fisher scoring, damped after Levenberg and Marquardt so that no step loses likelihood. */
function climb(spans: readonly PooledSpan[], prior: FlightPrior, from: FlightUnknowns, steps: number) {
  let unknowns = from;
  let at = evaluateFlights(spans, prior, unknowns);
  let damping = 1e-3;
  for (let step = 0; step < steps && damping < 1e9; step++) {
    const factor = cholesky(damped(at.information, unknowns.length, damping), unknowns.length);
    const move = factor && solveCholesky(factor, at.gradient);
    const next = move && unknowns.map((value, i) => value + move[i]!);
    const there = next && evaluateFlights(spans, prior, next);
    if (!there || !(there.value > at.value - SETTLED)) {
      damping *= 8;
      continue;
    }
    const gain = there.value - at.value;
    if (gain > 0) [unknowns, at] = [next, there];
    if (gain < SETTLED) break;
    damping = Math.max(1e-9, damping / 8);
  }
  return { unknowns, at };
}

function damped(information: Float64Array, size: number, damping: number): Float64Array {
  const matrix = information.slice();
  for (let i = 0; i < size; i++) matrix[i * size + i]! *= 1 + damping;
  return matrix;
}

function covarianceOf({ information, gradient }: Evaluation): Float64Array {
  const size = gradient.length;
  const factor = cholesky(information, size);
  return factor ? invertCholesky(factor, size) : new Float64Array(size * size).fill(Number.POSITIVE_INFINITY);
}

function startsOf(spans: readonly PooledSpan[], prior: FlightPrior, flights: number, fewer: FlightUnknowns): FlightUnknowns[] {
  if (flights === 0) return [fewer];
  return [sharedOut(spans, flights, prior), ...withOneMore(spans, prior, fewer)];
}

/** The season's moths shared out to flights of equally many, one after another on the heat axis. */
function sharedOut(spans: readonly PooledSpan[], flights: number, prior: FlightPrior): FlightUnknowns {
  const inOrder = [...spans].sort((a, b) => a.from + a.to - b.from - b.to);
  const moths = spans.reduce((sum, { count }) => sum + count, 0) / flights;
  const groups = Array.from({ length: flights }, () => ({ moths: 0, heat: 0, squares: 0 }));
  let before = 0;
  for (const { from, to, count } of inOrder) {
    const group = groups[Math.min(flights - 1, Math.floor((before + count / 2) / moths))]!;
    const middle = (from + to) / 2;
    group.moths += count;
    group.heat += count * middle;
    group.squares += count * middle ** 2;
    before += count;
  }
  const least = Math.exp(prior.logWidth.mean) / 2;
  const curves = groups
    .filter((group) => group.moths > 0)
    .map(({ moths, heat, squares }) => ({
      moths,
      peak: heat / moths,
      width: Math.max(least, Math.sqrt(Math.max(0, squares / moths - (heat / moths) ** 2))),
    }));
  while (curves.length < flights) curves.push({ ...curves.at(-1)!, moths: 1 });
  return start(Math.exp(prior.logStray.mean), curves, prior);
}

/** The same flights with one more, at each of the places where a narrow flight would gain most. */
function withOneMore(spans: readonly PooledSpan[], prior: FlightPrior, unknowns: FlightUnknowns): FlightUnknowns[] {
  const stray = Math.exp(unknowns[0]!);
  const curves = curvesOf(unknowns);
  const width = Math.exp(prior.logWidth.mean);
  const [first, last] = seenHeat(spans);
  const foreseen = prior.expected
    .map(({ peak, logWidth }) => ({ peak: peak.mean, width: Math.exp((logWidth ?? prior.logWidth).mean) }))
    .filter((one) => one.peak - 2 * one.width < last && curves.every((curve) => Math.abs(curve.peak - one.peak) > one.width))
    .map((one) => ({ ...one, ...gainAt(spans, stray, curves, one.peak, one.width) }))
    .filter(({ gain }) => gain > 0);
  const places = Array.from({ length: PLACES }, (_, i) => {
    const peak = first + ((last + width - first) * i) / (PLACES - 1);
    return { peak, width, ...gainAt(spans, stray, curves, peak, width) };
  });
  const tops = places.filter(({ gain }, i) => gain >= (places[i - 1]?.gain ?? 0) && gain >= (places[i + 1]?.gain ?? 0));
  return [...tops.sort((a, b) => b.gain - a.gain).slice(0, STARTS), ...foreseen].map((one) =>
    start(flightCount(unknowns) === 0 ? Math.exp(prior.logStray.mean) : stray, [...curves, one], prior),
  );
}

/** Flights in order, pulled apart where two would begin on one spot. */
function start(stray: number, curves: FlightCurve[], prior: FlightPrior): FlightUnknowns {
  const leastGap = Math.exp(prior.logGap.mean) / 4;
  const apart: FlightCurve[] = [];
  for (const curve of curves.sort((a, b) => a.peak - b.peak)) {
    const before = apart.at(-1);
    apart.push(before && curve.peak - before.peak < leastGap ? { ...curve, peak: before.peak + leastGap } : curve);
  }
  return unknownsOf(stray, apart);
}

/** What a flight at `peak` would gain to first order, and the moths it would need. */
function gainAt(
  spans: readonly PooledSpan[],
  stray: number,
  curves: readonly FlightCurve[],
  peak: number,
  width: number,
): { gain: number; moths: number } {
  let [excess, weight] = [0, 0];
  for (const span of spans) {
    const { k } = span;
    const share = span.exposure * shareWithin(span, peak, width);
    const expected = expectedIn(span, stray, curves);
    const variance = (k === null ? expected : expected + (expected * expected) / k) / span.weight;
    excess += (share * (span.count - expected)) / variance;
    weight += (share * share) / variance;
  }
  return excess > 0 ? { gain: (excess * excess) / weight, moths: Math.max(1, excess / weight) } : { gain: 0, moths: 1 };
}

/** Moths expected in a span of stray moths and flights. */
export function expectedIn(span: PooledSpan, stray: number, curves: readonly FlightCurve[]): number {
  const perTrap = curves.reduce(
    (sum, { moths, peak, width }) => sum + moths * shareWithin(span, peak, width),
    stray * span.nights,
  );
  return span.exposure * perTrap;
}

const shareWithin = ({ from, to }: PooledSpan, peak: number, width: number): number =>
  normalCdf((to - peak) / width) - normalCdf((from - peak) / width);
