import { addDays, type Day } from '../base/day.ts';
import { DEFAULT_LEVEL as LEVEL } from '../catch/rate.ts';
import type { CatchInterval, TrapHistory } from '../catch/types.ts';
import { betaOddsQuantile } from '../statistics/incomplete-beta.ts';
import type { Trend } from './types.ts';

/** How far back a trend looks: three weekly checks, or six twice-weekly ones. Own choice, no source. */
export const TREND_DAYS = 21;
const NEGLIGIBLE_SLOPE = 1e-12;

/**
 * Whether the catch is rising or falling over the visits of the last three weeks before `on`.
 *
 * Log-linear Poisson regression of the counts on the middle of each visit's nights, with the nights as exposure and
 * a level of its own for every trap (so traps of different designs, or checked on different days, do not fake a
 * slope). The levels are profiled out, which leaves one equation in the slope. Scatter beyond Poisson widens the
 * interval by Fletcher's dispersion for sparse counts (never below 1), and Student's t accounts for the few visits it
 * rests on.
 *
 * When all moths of every trap fell at its newest visit (or its oldest), no finite slope fits best; then half a moth
 * is added to each visit, which pulls the slope towards none (Haldane 1956, from memory).
 *
 * Null when there is nothing to fit: no moths, or no more visits than the traps and the slope need.
 *
 * Source: McCullagh & Nelder 1989, Generalized Linear Models, ch. 6 and 9; Fletcher 2012, Biometrika 99:230–237 (both
 * from memory). Checked against R's `glm`.
 */
export function trendOf(histories: readonly TrapHistory[], on: Day): Trend | null {
  const traps = histories
    .map(({ intervals }) => visitsSince(intervals, addDays(on, -TREND_DAYS), on))
    .filter((visits) => visits.length > 1 && visits.some(({ count }) => count > 0));
  const visits = traps.reduce((sum, trap) => sum + trap.length, 0);
  const freedom = visits - traps.length - 1;
  if (traps.length === 0 || freedom < 1) return null;

  const fitted = hasFiniteSlope(traps) ? traps : traps.map(withHalfAMoth);
  const { slope, information } = bestSlope(fitted);
  const dispersion = Math.max(1, dispersionOf(fitted, slope, freedom));
  const margin = studentMargin(LEVEL, freedom) * Math.sqrt(dispersion / information);
  const [low, high] = [slope - margin, slope + margin];
  const direction = low > 0 ? 'rising' : high < 0 ? 'falling' : 'unclear';
  return { perNight: slope, low, high, level: LEVEL, direction, visits };
}

interface Visit {
  /** Middle of the nights, in days before (below 0) the day of the trend. */
  readonly time: number;
  readonly nights: number;
  readonly count: number;
}

/** Newest first. */
function visitsSince(intervals: readonly CatchInterval[], since: Day, on: Day): Visit[] {
  const visits: Visit[] = [];
  for (let i = intervals.length - 1; i >= 0 && intervals[i]!.to > since; i--) {
    const { from, to, nights, count } = intervals[i]!;
    if (count !== null && to <= on) visits.push({ time: (from + to) / 2 - on, nights, count });
  }
  return visits;
}

const withHalfAMoth = (trap: readonly Visit[]) => trap.map((visit) => ({ ...visit, count: visit.count + 0.5 }));

function hasFiniteSlope(traps: readonly (readonly Visit[])[]): boolean {
  const someTrapCaughtBefore = traps.some((trap) => caughtApartFrom(trap, Math.max(...trap.map(({ time }) => time))));
  const someTrapCaughtAfter = traps.some((trap) => caughtApartFrom(trap, Math.min(...trap.map(({ time }) => time))));
  return someTrapCaughtBefore && someTrapCaughtAfter;
}

const caughtApartFrom = (trap: readonly Visit[], when: number) => trap.some(({ time, count }) => count > 0 && time !== when);

/** Newton's method; the equation falls steadily in the slope, and a step that lands farther from 0 is halved. */
function bestSlope(traps: readonly (readonly Visit[])[]): { slope: number; information: number } {
  let slope = 0;
  let now = slopeEquation(traps, slope);
  for (let step = 0; step < 100; step++) {
    let change = now.score / now.information;
    let next = slopeEquation(traps, slope + change);
    while (Math.abs(next.score) > Math.abs(now.score) && Math.abs(change) > NEGLIGIBLE_SLOPE) {
      change /= 2;
      next = slopeEquation(traps, slope + change);
    }
    slope += change;
    now = next;
    if (Math.abs(change) <= NEGLIGIBLE_SLOPE) break;
  }
  return { slope, information: now.information };
}

/**
 * Given each trap's total, its counts are multinomial with shares nights·e^(slope·time). The derivative of the
 * log-likelihood, which is 0 at the best slope, and the Fisher information on the slope.
 */
function slopeEquation(traps: readonly (readonly Visit[])[], slope: number) {
  let [score, information] = [0, 0];
  for (const trap of traps) {
    const { total, mean, variance } = weighted(trap, slope);
    for (const { time, count } of trap) score += count * (time - mean);
    information += total * variance;
  }
  return { score, information };
}

/** A trap's moths, and the mean and variance of the visits' times weighted by their expected shares. */
function weighted(trap: readonly Visit[], slope: number) {
  // Visits come newest first; held against the heaviest of them, no weight overflows.
  const top = slope * (slope > 0 ? trap[0]!.time : trap.at(-1)!.time);
  const weightOf = ({ time, nights }: Visit) => nights * Math.exp(slope * time - top);
  let [total, weight, moment, variance] = [0, 0, 0, 0];
  for (const visit of trap) {
    const own = weightOf(visit);
    total += visit.count;
    weight += own;
    moment += own * visit.time;
  }
  const mean = moment / weight;
  for (const visit of trap) variance += (weightOf(visit) * (visit.time - mean) ** 2) / weight;
  return { total, mean, variance, logWeight: Math.log(weight) + top };
}

/**
 * Pearson's χ² per degree of freedom, divided by the mean of count/expected: alone, χ² explodes on a visit where next
 * to nothing was expected.
 */
function dispersionOf(traps: readonly (readonly Visit[])[], slope: number, freedom: number): number {
  let [chiSquared, ratios, visits] = [0, 0, 0];
  for (const trap of traps) {
    const { total, logWeight } = weighted(trap, slope);
    for (const { time, nights, count } of trap) {
      const expected = total * nights * Math.exp(slope * time - logWeight);
      chiSquared += (count - expected) ** 2 / expected;
      ratios += count / expected;
      visits++;
    }
  }
  return chiSquared / freedom / (ratios / visits);
}

/** The t within which Student's variate lies, on either side of 0, with probability `level`: t²/ν has beta odds. */
function studentMargin(level: number, freedom: number): number {
  return Math.sqrt(freedom * betaOddsQuantile(level, 0.5, freedom / 2));
}
