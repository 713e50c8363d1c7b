/** The flights of a region: peaks and widths shared by its traps on the heat axis, abundance each trap's own. */

import type { TemperatureUnit } from '../base/temperature.ts';
import { type CaughtCurve, caughtCurve } from './caught-curve.ts';
import { densityAt, type ExpectedFlight, nearestTo } from './expected-flights.ts';
import { expectedIn, type FlightFit, fitFlights } from './fit-flights.ts';
import { curvesOf, type FlightCurve, peakGradient, seenHeat } from './flight-likelihood.ts';
import { type FlightBeliefs, type PossibleFlight, possibleFlights } from './flight-posterior.ts';
import { type FlightPrior, type Foreknowledge, flightPrior, SCATTER_BELIEF } from './flight-prior.ts';
import type { SpannedCatch } from './heat-spans.ts';
import { normalCdf } from './normal.ts';
import { abundances, nightGroups, type PooledSpan, pooledSpans, type Scatter, scatterAbout } from './pooled-catch.ts';

/** A region's catch with each number of flights tried, lowest BIC first, and what is known of the flights of the first. */
export interface RegionFit {
  /** Empty when nothing was caught. */
  readonly fits: readonly FlightFit[];
  /** For each flight of the first fit, in order, the flights it may be. */
  readonly flights: readonly (readonly PossibleFlight[])[];
  /** For each flight of the first fit, its moths as they were caught. */
  readonly caught: readonly (CaughtCurve | null)[];
  /** How many times as much as the mean trap of the region each trap catches, in the order of the catch. */
  readonly abundance: Float64Array;
  readonly scatter: Scatter;
  readonly expected: readonly ExpectedFlight[];
  readonly moths: number;
  readonly intervals: number;
  readonly leftOut: number;
}

/**
 * Fits 0, 1, 2 … flights to the traps of a region together, twice: about the first fit the scatter is measured that the
 * second takes as given. `expected`: flights that the model and past seasons lead one to expect.
 */
export function fitRegion(
  caught: SpannedCatch,
  { unit, ...known }: { readonly unit: TemperatureUnit } & Partial<Foreknowledge>,
): RegionFit {
  const { spans, leftOut } = caught;
  const moths = spans.reduce((sum, { count }) => sum + count, 0);
  const abundance = abundances(caught);
  const { expected = [] } = known;
  const read = { abundance, expected, moths, intervals: spans.length, leftOut };
  if (moths === 0) return { fits: [], flights: [], caught: [], scatter: SCATTER_BELIEF, ...read };
  const groups = nightGroups(spans, abundance);
  const trapNights = groups.reduce((sum, { nights, exposure }) => sum + nights * exposure, 0);
  const prior = flightPrior(unit, moths / abundance.reduce((sum, one) => sum + one, 0), moths / trapNights, known);

  const roughly = pooledSpans(groups, SCATTER_BELIEF, null);
  const rough = fitFlights(roughly, prior);
  const { unknowns } = rough[0]!;
  const means = roughly.map((span) => expectedIn(span, Math.exp(unknowns[0]!), curvesOf(unknowns)));
  const scatter = scatterAbout(groups, abundance, means, unknowns.length, SCATTER_BELIEF);

  const pooled = pooledSpans(groups, scatter, means);
  const fits = fitFlights(pooled, prior, { from: rough });
  const curves = curvesOf(fits[0]!.unknowns);
  const stray = Math.exp(fits[0]!.unknowns[0]!);
  const flights = curves.map((_, g) => possibleFlights(pooled, ...flightIn(pooled, fits[0]!, g, prior, expected)));
  const asCaught = curves.map((curve) =>
    caughtCurve(
      pooled,
      (span) => expectedIn(span, 0, [curve]) / expectedIn(span, stray, curves),
      (heat) => curve.moths * normalCdf((heat - curve.peak) / curve.width),
    ),
  );
  return { fits, flights, caught: asCaught, scatter, ...read };
}

/** A flight that is running may peak far beyond the best guess: reach of the search in standard errors, and in widths. */
const BEFORE = { errors: 4, widths: 0.5 };
const AFTER = { errors: 8, widths: 1 };
/** Least and greatest standard error of a peak that the search goes by, in widths. */
const ERRORS = { least: 0.15, most: 1.5 };

/** The moths of all but flight `g`, between which heats its peak is looked for, and what is believed of it beforehand. */
function flightIn(
  spans: readonly PooledSpan[],
  fit: FlightFit,
  g: number,
  prior: FlightPrior,
  expected: readonly ExpectedFlight[],
): [others: Float64Array, within: [low: number, high: number], beliefs: FlightBeliefs] {
  const { unknowns } = fit;
  const curves = curvesOf(unknowns);
  const stray = Math.exp(unknowns[0]!);
  const others = Float64Array.from(spans, (span) => expectedIn(span, stray, curves.toSpliced(g, 1)));
  const [before, { peak, width }, after] = [curves[g - 1], curves[g]!, curves[g + 1]];
  const error = Math.min(ERRORS.most * width, Math.max(ERRORS.least * width, peakError(fit, g)));
  const running = peak > seenHeat(spans)[1] - 2 * width;
  const reach = ({ errors, widths }: typeof BEFORE) => (running ? errors * error + widths * width : BEFORE.errors * error);
  const low = Math.max(before ? (before.peak + peak) / 2 : Number.NEGATIVE_INFINITY, peak - reach(BEFORE));
  const high = Math.min(after ? (after.peak + peak) / 2 : Number.POSITIVE_INFINITY, peak + reach(AFTER));
  return [
    others,
    [low, high],
    beliefsOf(curves[g]!.peak, before?.peak ?? null, seenMoths(spans, others, curves[g]!), prior, expected),
  ];
}

function peakError({ unknowns, covariance }: FlightFit, g: number): number {
  const gradient = peakGradient(unknowns, g);
  const size = unknowns.length;
  let variance = 0;
  for (let i = 0; i < size; i++)
    for (let j = 0; j < size; j++) variance += gradient[i]! * gradient[j]! * covariance[i * size + j]!;
  return Math.sqrt(variance);
}

/** Moths of a flight that a mean trap of the region has caught so far. */
function seenMoths(spans: readonly PooledSpan[], others: Float64Array, curve: FlightCurve): number {
  let seen = 0;
  spans.forEach((span, i) => {
    const own = expectedIn(span, 0, [curve]);
    seen += (span.weight * own * span.count) / (span.exposure * (own + others[i]!));
  });
  return seen;
}

/**
 * A flight that was to be expected is believed to be like those of past seasons; one that was not may peak on any heat,
 * a generation after the flight before it, and is met anywhere in its course.
 */
function beliefsOf(
  peak: number,
  before: number | null,
  seen: number,
  prior: FlightPrior,
  expected: readonly ExpectedFlight[],
): FlightBeliefs {
  const nearest = nearestTo(expected, peak);
  const unheard = { mean: Math.log(seen + 1) + 1, sd: prior.anySize };
  if (nearest)
    return {
      logWidth: nearest.logWidth ?? prior.logWidth,
      logMoths: nearest.logMoths ?? unheard,
      skews: prior.skews,
      logPeak: (heat) => Math.log(prior.surprise * prior.anywhere + densityAt(expected, heat)),
    };
  const met = { mean: Math.log(seen + 1) + prior.yetToCome.mean, sd: prior.yetToCome.sd };
  const { mean, sd } = prior.logGap;
  const logPeak = (heat: number) => (before === null ? 0 : -0.5 * ((Math.log(heat - before) - mean) / sd) ** 2);
  return { logWidth: prior.logWidth, logMoths: met, skews: prior.skews, logPeak };
}
