/** What is known of one flight once its counts are in: peak, width, skew and size weighed together, not one best guess. */
import { logGamma } from '../statistics/gamma-function.ts';
import type { Belief } from './belief.ts';
import { deviateAt, type FlightShape } from './flight-shape.ts';
import { normalCdf, normalDensity } from './normal.ts';
import type { PooledSpan } from './pooled-catch.ts';
import { SKEWS } from './skew.ts';

/** One flight it may be, and how likely. */
export interface PossibleFlight extends FlightShape {
  /** Weights of all add up to 1. */
  readonly weight: number;
  /** Of ln moths per trap, the rest given. */
  readonly logMoths: Belief;
}

export interface FlightBeliefs {
  readonly logWidth: Belief;
  readonly logMoths: Belief;
  /** Weights of the skews. */
  readonly skews: readonly number[];
  /** Log density of a peak, but for a constant. */
  readonly logPeak: (heat: number) => number;
}

/** Scatter as estimated, or less or more of it: three points of a belief with log-sd 0.65. */
const SCATTERS = [
  { times: 0.4, weight: 0.25 },
  { times: 1, weight: 0.5 },
  { times: 2.5, weight: 0.25 },
] as const;

/** A first look, and a second one where flights are likely. */
const FIRST = { peaks: 22, widths: 5 };
const SECOND = { peaks: 22, widths: 9 };
/** Widths are looked for this many standard deviations of their belief to either side. */
const WIDTH_REACH = 2.4;
/** Part of the step of the first look by which the second reaches beyond it. */
const BEYOND = 0.7;
/** Log density below the best from which on a flight is left out: a thousandth. */
const NEGLIGIBLE = 7;

/**
 * Bayes' theorem on a grid of peaks, widths, skews and scatters, the size of the flight integrated by Laplace's method
 * (Tierney & Kadane 1986, J. Am. Stat. Assoc. 81:82–86, from memory). Jeffreys' density for the place of the peak is
 * part of it, which keeps flights from being put where their counts could not tell (Firth 1993, Biometrika 80:27–38, from
 * memory).
 *
 * `others`: moths expected in each span without this flight. `within`: heats between which the peak is looked for.
 */
export function possibleFlights(
  spans: readonly PooledSpan[],
  others: Float64Array,
  within: readonly [low: number, high: number],
  beliefs: FlightBeliefs,
): PossibleFlight[] {
  const { mean, sd } = beliefs.logWidth;
  const counts = new WeighedCounts(spans, others, beliefs);
  const rough: { peak: number; logWidth: number; value: number }[] = [];
  for (const peak of middles(within, FIRST.peaks))
    for (const logWidth of ends([mean - WIDTH_REACH * sd, mean + WIDTH_REACH * sd], FIRST.widths)) {
      counts.shape(peak, Math.exp(logWidth), SKEWS[1]);
      rough.push({ peak, logWidth, value: counts.weigh(1).value });
    }
  const best = rough.reduce((most, { value }) => Math.max(most, value), Number.NEGATIVE_INFINITY);
  const likely = rough.filter(({ value }) => value > best - NEGLIGIBLE);
  const [low, high] = around(
    likely.map(({ peak }) => peak),
    (within[1] - within[0]) / FIRST.peaks,
  );
  const widths = around(
    likely.map(({ logWidth }) => logWidth),
    (BEYOND * 2 * WIDTH_REACH * sd) / (FIRST.widths - 1),
  );

  const found: { value: number; flight: Omit<PossibleFlight, 'weight'> }[] = [];
  let top = Number.NEGATIVE_INFINITY;
  for (const peak of middles([Math.max(low, within[0]), Math.min(high, within[1])], SECOND.peaks))
    for (const logWidth of ends(widths, SECOND.widths))
      for (const [i, skew] of SKEWS.entries()) {
        const width = Math.exp(logWidth);
        const weight = beliefs.skews[i]!;
        counts.shape(peak, width, skew);
        for (const { times, weight: share } of SCATTERS) {
          const { value: ofShape, logMoths } = counts.weigh(times);
          const value = ofShape + Math.log(weight * share);
          if (value < top - NEGLIGIBLE) continue;
          if (value > top) top = value;
          found.push({ value, flight: { peak, width, skew, logMoths } });
        }
      }
  const kept = found.filter(({ value }) => value >= top - NEGLIGIBLE);
  const total = kept.reduce((sum, { value }) => sum + Math.exp(value - top), 0);
  return kept.map(({ value, flight }) => ({ ...flight, weight: Math.exp(value - top) / total }));
}

type Reach = readonly [low: number, high: number];

/** The middles of `count` equal parts. */
const middles = ([low, high]: Reach, count: number): number[] =>
  Array.from({ length: count }, (_, i) => low + ((high - low) * (i + 0.5)) / count);

/** `count` values evenly from end to end. */
const ends = ([low, high]: Reach, count: number): number[] =>
  Array.from({ length: count }, (_, i) => low + ((high - low) * i) / (count - 1));

const around = (values: readonly number[], step: number): Reach => [Math.min(...values) - step, Math.max(...values) + step];

/** Counts against which one shape of a flight after another is weighed. */
class WeighedCounts {
  private readonly spans: readonly PooledSpan[];
  private readonly others: Float64Array;
  private readonly beliefs: FlightBeliefs;
  /** Share of the flight in each span, and its slope against the place of the peak, in widths. */
  private readonly shares: Float64Array;
  private readonly slopes: Float64Array;
  private readonly without = new Map<number, { readonly sum: number; readonly terms: Float64Array }>();
  /** Spans in which the flight flies. */
  private readonly reached: Int32Array;
  private reachedCount = 0;
  private flown = 0;
  private density = 0;
  private logPrior = 0;
  private startLogMoths: number;

  constructor(spans: readonly PooledSpan[], others: Float64Array, beliefs: FlightBeliefs) {
    this.spans = spans;
    this.others = others;
    this.beliefs = beliefs;
    this.shares = new Float64Array(spans.length);
    this.slopes = new Float64Array(spans.length);
    this.reached = new Int32Array(spans.length);
    this.startLogMoths = beliefs.logMoths.mean;
  }

  shape(peak: number, width: number, skew: number): void {
    let known = Number.NaN;
    this.reachedCount = 0;
    for (let i = 0; i < this.spans.length; i++) {
      const { from, to } = this.spans[i]!;
      if (from !== known) this.goTo(from, peak, width, skew);
      const [before, densityBefore] = [this.flown, this.density];
      this.goTo(to, peak, width, skew);
      known = to;
      const share = this.flown - before;
      if (share < NO_SHARE) continue;
      this.shares[i] = share;
      this.slopes[i] = this.density - densityBefore;
      this.reached[this.reachedCount++] = i;
    }
    const { logWidth, logPeak } = this.beliefs;
    this.logPrior = -0.5 * ((Math.log(width) - logWidth.mean) / logWidth.sd) ** 2 + logPeak(peak);
  }

  /** Share flown by a heat, and the slope there. */
  private goTo(heat: number, peak: number, width: number, skew: number): void {
    const z = (heat - peak) / width;
    const deviate = deviateAt(z, skew);
    if (deviate < -FAR || deviate > FAR) {
      this.flown = deviate < 0 ? 0 : 1;
      this.density = 0;
      return;
    }
    const density = normalDensity(deviate);
    this.flown = normalCdf(deviate, density);
    this.density = density / (1 + skew * z);
  }

  /** Log density of the shape, `times` the scatter as estimated, and the size of the flight that goes with it. */
  weigh(times: number): { value: number; logMoths: Belief } {
    const { mean, sd } = this.beliefs.logMoths;
    const logMoths = this.bestSize(times);
    const moths = Math.exp(logMoths);
    const { sum, terms } = this.withoutFlight(times);
    let [value, ofSize, ofBoth, ofPlace] = [sum, 1 / (sd * sd), 0, 0];
    for (let n = 0; n < this.reachedCount; n++) {
      const i = this.reached[n]!;
      const { count, exposure, k, weight } = this.spans[i]!;
      const caught = exposure * moths * this.shares[i]!;
      const slope = exposure * moths * this.slopes[i]!;
      const expected = this.others[i]! + caught;
      const trust = weight / varianceOf(expected, k, times);
      ofSize += trust * caught * caught;
      ofBoth += trust * caught * slope;
      ofPlace += trust * slope * slope;
      value += logLikelihood(count, expected, k, times, weight) - terms[i]!;
    }
    value += this.logPrior - 0.5 * ((logMoths - mean) / sd) ** 2 - 0.5 * Math.log(ofSize);
    value += 0.5 * Math.log(Math.max(0, ofPlace - (ofBoth * ofBoth) / ofSize) + HARDLY_TOLD);
    return { value, logMoths: { mean: logMoths, sd: 1 / Math.sqrt(ofSize) } };
  }

  /** ln moths at which the shape fits best, by Fisher scoring from the one found last. */
  private bestSize(times: number): number {
    const { mean, sd } = this.beliefs.logMoths;
    let logMoths = this.startLogMoths;
    for (let step = 0; step < MOST_STEPS; step++) {
      const moths = Math.exp(logMoths);
      let [gradient, information] = [(mean - logMoths) / (sd * sd), 1 / (sd * sd)];
      for (let n = 0; n < this.reachedCount; n++) {
        const i = this.reached[n]!;
        const share = this.shares[i]!;
        const { count, exposure, k, weight } = this.spans[i]!;
        const caught = exposure * moths * share;
        const expected = this.others[i]! + caught;
        const trust = (weight * caught) / varianceOf(expected, k, times);
        gradient += trust * (count - expected);
        information += trust * caught;
      }
      const move = Math.max(-LONGEST_STEP, Math.min(LONGEST_STEP, gradient / information));
      logMoths += move;
      if (Math.abs(move) < SETTLED) break;
    }
    this.startLogMoths = logMoths;
    return logMoths;
  }

  /** Log-likelihood of the counts without the flight, and its terms. */
  private withoutFlight(times: number): { readonly sum: number; readonly terms: Float64Array } {
    const known = this.without.get(times);
    if (known) return known;
    const terms = Float64Array.from(this.spans, ({ count, k, weight }, i) =>
      logLikelihood(count, this.others[i]!, k, times, weight),
    );
    let sum = terms.reduce((total, term) => total + term, 0);
    for (const { count, k, weight } of this.spans) {
      if (k === null) continue;
      const shape = k / times;
      sum += weight * (logGamma(count + shape) - logGamma(shape) + shape * Math.log(shape));
    }
    const found = { sum, terms };
    this.without.set(times, found);
    return found;
  }
}

/** Information on the place of a peak, per squared width, that is as good as none. */
const HARDLY_TOLD = 0.01;
const MOST_STEPS = 8;
const LONGEST_STEP = 2;
const SETTLED = 0.01;
const NO_SHARE = 1e-9;
/** Deviate beyond which nothing flies that a double could show. */
const FAR = 8.5;

/** Of a count, but for a constant. */
const logLikelihood = (count: number, expected: number, k: number | null, times: number, weight: number): number =>
  weight * (count * Math.log(expected) - (k === null ? expected : (count + k / times) * Math.log(expected + k / times)));

const varianceOf = (expected: number, k: number | null, times: number): number =>
  k === null ? expected : expected + (expected * expected * times) / k;
