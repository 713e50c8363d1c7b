/**
 * The dispersion k of one visit's count, as far as it is known: values of k with their probabilities.
 *
 * k is that between the visits of one trap: how a count scatters about the run of the trap's own flight, shared good and bad
 * nights included. What makes one place lastingly better than another is no part of it.
 */

import { logGamma, stirlingError } from '../statistics/gamma-function.ts';
import { goldenSection } from '../statistics/golden-section.ts';
import type { CatchInterval } from './types.ts';

export interface DispersionBelief {
  /** Values of k, rising. */
  readonly k: readonly number[];
  /** Probability of each; they add up to 1. */
  readonly weight: readonly number[];
  readonly median: number;
  /** k lies between `low` and `high` with a probability of 80 %. */
  readonly low: number;
  readonly high: number;
}

/** ln k is normal with this mean and standard deviation. */
export interface DispersionPrior {
  readonly median: number;
  readonly logSd: number;
}

/** What the program's own visits tell of k, and how many there are. */
export interface DispersionEstimate extends DispersionBelief {
  /** Visits and traps behind it; none where it is the prior alone. */
  readonly visits: number;
  readonly traps: number;
}

/** A k that is taken as known. */
export const knownDispersion = (k: number): DispersionBelief => ({ k: [k], weight: [1], median: k, low: k, high: k });

/**
 * The prior, updated by every stretch of visits in which a trap's own catch shows how it scatters.
 *
 * A stretch is `STRETCH` visits of one trap, one after the other without a gap. Its mean follows the flight as
 * nights × exp(a + b·t): a is free (its prior flat, so that a stretch says the same of k whatever its level), b normal
 * about 0. Both are integrated over by Laplace's method at each k, and the stretches multiply.
 *
 * @param seasons visits of one trap in one season each, in order; the newest `most` stretches of all are read
 */
export function dispersionBetweenVisits(
  seasons: Iterable<readonly CatchInterval[]>,
  prior: DispersionPrior,
  most = MOST_STRETCHES,
): DispersionEstimate {
  const stretches = [...seasons].flatMap(stretchesOf);
  stretches.sort((a, b) => b.at(-1)!.to - a.at(-1)!.to || (a[0]!.trapId < b[0]!.trapId ? -1 : 1));
  stretches.length = Math.min(stretches.length, most);
  const counted = stretches.map(countedStretch);
  const centre = Math.log(prior.median);
  const height = (logK: number): number => {
    const at = termsAt(Math.exp(logK));
    let sum = -(((logK - centre) / prior.logSd) ** 2) / 2;
    for (const stretch of counted) sum += logMarginal(stretch, at);
    return sum;
  };
  const visits = stretches.reduce((sum, { length }) => sum + length, 0);
  const traps = new Set(stretches.map(([first]) => first!.trapId)).size;
  return { ...beliefFrom(height, centre, prior.logSd, counted.length === 0), visits, traps };
}

/** What is known of k where a program has no records of its own. */
export const priorDispersion = (prior: DispersionPrior): DispersionEstimate => dispersionBetweenVisits([], prior);

const STRETCH = 4;
/** Over more nights a flight bends too much for a straight line. */
const MOST_NIGHTS = 35;
/** Fewer moths than this in a stretch say nothing that the sum would not. */
const LEAST_MOTHS = 5;
/** The newest speak; more cost time and hardly change the figure. */
const MOST_STRETCHES = 80;
/** Standard deviation of the flight's slope, in ln moths per night: a flight doubles or halves in about four nights. */
const SLOPE_SD = 0.15;

function stretchesOf(season: readonly CatchInterval[]): CatchInterval[][] {
  const found: CatchInterval[][] = [];
  let open: CatchInterval[] = [];
  for (let i = season.length - 1; i >= 0; i--) {
    const visit = season[i]!;
    if (visit.count === null || visit.lurePastLife === true) open = [];
    else if (open.length > 0 && open[0]!.from !== visit.to) open = [visit];
    else open.unshift(visit);
    if (open.length < STRETCH) continue;
    const nights = open.at(-1)!.to - open[0]!.from;
    const moths = open.reduce((sum, { count }) => sum + count!, 0);
    if (nights > MOST_NIGHTS) open.pop();
    else {
      if (moths >= LEAST_MOTHS) found.push(open);
      open = [];
    }
  }
  return found;
}

interface Stretch {
  readonly counts: Float64Array;
  readonly nights: Float64Array;
  /** Night in the middle of each visit, counted from the middle of the stretch. */
  readonly at: Float64Array;
  /** Moths of the first half of its visits and of the second. */
  readonly halves: readonly [number, number];
  /** Where the search for the mean starts: the last found. */
  readonly found: { level: number; slope: number };
}

function countedStretch(visits: readonly CatchInterval[]): Stretch {
  const [from, to] = [visits[0]!.from, visits.at(-1)!.to];
  const mothsOf = (some: readonly CatchInterval[]) => some.reduce((sum, { count }) => sum + count!, 0);
  const halves = [mothsOf(visits.slice(0, STRETCH / 2)), mothsOf(visits.slice(STRETCH / 2))] as const;
  return {
    halves,
    counts: Float64Array.from(visits, ({ count }) => count!),
    nights: Float64Array.from(visits, ({ nights }) => nights),
    at: Float64Array.from(visits, (visit) => (visit.from + visit.to - from - to) / 2),
    found: { level: Math.log((halves[0] + halves[1]) / (to - from)), slope: 0 },
  };
}

/** What many stretches ask for at one k: counts are small whole numbers, and few of them differ. */
interface TermsAtK {
  readonly k: number;
  /** ln Γ(k). */
  readonly logGammaK: number;
  /** ln Γ(y + k) of a count y. */
  readonly logGammaAfter: (y: number) => number;
  /** See `laplaceError`. */
  readonly laplaceErrorOf: (moths: number) => number;
}

function termsAt(k: number): TermsAtK {
  return {
    k,
    logGammaK: logGamma(k),
    logGammaAfter: remembering((y) => logGamma(y + k)),
    laplaceErrorOf: remembering((moths) => laplaceError(moths, k)),
  };
}

function remembering(of: (count: number) => number): (count: number) => number {
  const known = new Map<number, number>();
  return (count) => {
    const before = known.get(count);
    if (before !== undefined) return before;
    const value = of(count);
    known.set(count, value);
    return value;
  };
}

/** ln of the probability of a stretch's counts at k, but for terms without k: level and slope integrated over. */
function logMarginal(stretch: Stretch, { k, logGammaK, logGammaAfter, laplaceErrorOf }: TermsAtK): number {
  const { counts, nights, at, halves, found } = stretch;
  const determinant = climb(stretch, k);
  let height = -((found.slope / SLOPE_SD) ** 2) / 2 - counts.length * logGammaK;
  for (let i = 0; i < counts.length; i++) {
    const y = counts[i]!;
    const mean = nights[i]! * Math.exp(found.level + found.slope * at[i]!);
    height += y * Math.log(mean / (k + mean)) - k * Math.log1p(mean / k) + logGammaAfter(y);
  }
  return height - Math.log(determinant) / 2 + laplaceErrorOf(halves[0]) + laplaceErrorOf(halves[1]);
}

/** Moves level and slope to where they are likeliest at k, by Newton's method; the determinant of the curvature there. */
function climb({ counts, nights, at, found }: Stretch, k: number): number {
  for (let step = 0; ; step++) {
    let [gradient0, gradient1] = [0, -found.slope / SLOPE_SD ** 2];
    let [h00, h01, h11] = [0, 0, 1 / SLOPE_SD ** 2];
    for (let i = 0; i < counts.length; i++) {
      const [y, t] = [counts[i]!, at[i]!];
      const mean = nights[i]! * Math.exp(found.level + found.slope * t);
      const share = 1 / (k + mean);
      const residual = (y - mean) * k * share;
      const curvature = (y + k) * mean * k * share * share;
      gradient0 += residual;
      gradient1 += residual * t;
      h00 += curvature;
      h01 += curvature * t;
      h11 += curvature * t * t;
    }
    const determinant = h00 * h11 - h01 * h01;
    const up = (h11 * gradient0 - h01 * gradient1) / determinant;
    const turn = (h00 * gradient1 - h01 * gradient0) / determinant;
    if (step === MOST_STEPS || Math.abs(up) + Math.abs(turn) < WITHIN) return determinant;
    found.level += Math.max(-1, Math.min(1, up));
    found.slope += Math.max(-0.1, Math.min(0.1, turn));
  }
}

/**
 * What Laplace's method leaves out, as for two halves of a stretch with a level each: the integral over the level of half a
 * stretch is a beta function of its moths and of its k, and Stirling's formula is what the method makes of that.
 */
function laplaceError(moths: number, k: number): number {
  const [caught, size] = [Math.max(moths, 1), (STRETCH / 2) * k];
  return stirlingError(caught) + stirlingError(size) - stirlingError(caught + size);
}

const MOST_STEPS = 30;
const WITHIN = 2e-3;

/** Steps of the trapezoidal rule over ln k, in standard deviations on either side of the mode. */
const REACH = 2.7;
const NODES = 7;
const Z_80 = 1.2815515655446004;

function beliefFrom(height: (logK: number) => number, centre: number, logSd: number, priorOnly: boolean): DispersionBelief {
  const far = 3 * logSd;
  const mode = priorOnly ? centre : goldenSection(height, centre - far, centre + far, 0.05).at;
  const sd = priorOnly ? logSd : spreadAbout(height, mode, logSd);
  const logs = Array.from({ length: NODES }, (_, i) => mode + sd * REACH * ((2 * i) / (NODES - 1) - 1));
  const heights = logs.map(height);
  const highest = Math.max(...heights);
  const masses = heights.map((one) => Math.exp(one - highest));
  const total = masses.reduce((sum, one) => sum + one, 0);
  const weight = masses.map((one) => one / total);
  const mean = logs.reduce((sum, log, i) => sum + weight[i]! * log, 0);
  const variance = logs.reduce((sum, log, i) => sum + weight[i]! * (log - mean) ** 2, 0);
  const reach = Math.exp(Z_80 * Math.sqrt(variance));
  const median = Math.exp(mean);
  return { k: logs.map(Math.exp), weight, median, low: median / reach, high: median * reach };
}

/** Standard deviation from the curvature at the mode; the prior's is the most there can be. */
function spreadAbout(height: (logK: number) => number, mode: number, logSd: number): number {
  const step = 0.1;
  const curvature = (2 * height(mode) - height(mode - step) - height(mode + step)) / step ** 2;
  return Math.min(logSd, 1 / Math.sqrt(Math.max(curvature, 1 / logSd ** 2)));
}
