import type { DailyExtremes } from '../weather/types.ts';
import { flatHeatAbove, flatTimeAbove, modifiedAverage } from './average.ts';
import { type Thresholds, thresholdsOf } from './rule.ts';
import { sineHeatAbove, sineTimeAbove } from './sine.ts';
import { triangleHeatAbove, triangleTimeAbove } from './triangle.ts';
import type { HeatMethod, HeatRule } from './types.ts';

/**
 * Degree-days of one day in °C·d, whatever the unit of the rule.
 *
 * The double methods run from the day's minimum to its maximum and on to the next day's minimum (which in a sudden thaw
 * may lie higher), half a day each; without `nextTminC` the day is not known. NaN when a temperature is NaN, or when the minimum is above the maximum:
 * such a day is a mistake, not cold.
 */
export function degreeDays(rule: HeatRule, tminC: number, tmaxC: number, nextTminC: number = Number.NaN): number {
  const out = new Float64Array(1);
  fill[rule.method](thresholdsOf(rule), Float64Array.of(tminC, nextTminC), Float64Array.of(tmaxC), out);
  return out[0]!;
}

/**
 * Degree-days of every day of a series in °C·d; NaN where the day is missing.
 * With a double method also the day before a missing one and the last day of the series, whose second half is unknown.
 *
 * @param out filled and returned; as long as the series. Many series in a row are faster with one array for all.
 */
export function dailyDegreeDays(
  rule: HeatRule,
  series: DailyExtremes,
  out = new Float64Array(series.tmaxC.length),
): Float64Array {
  fill[rule.method](thresholdsOf(rule), series.tminC, series.tmaxC, out);
  return out;
}

type Fill = (t: Thresholds, tmin: Float64Array, tmax: Float64Array, out: Float64Array) => void;

/**
 * One plain loop for each method: this is the hot path. A shared loop that called a curve it does not know, thresholds
 * read anew each day, or NaN chosen in the same expression as the heat would each cost a fifth of the speed or more.
 *
 * Twice the excess can outweigh the heat, but no day undoes development: hence never below 0.
 */
const fill: Record<HeatMethod, Fill> = {
  'simple-average': ({ lowerC, upperC, excess, timeAbove }, tmin, tmax, out) => {
    for (let i = 0; i < out.length; i++) {
      const lo = tmin[i]!;
      const hi = tmax[i]!;
      if (lo <= hi) out[i] = Math.max(0, flatNet(lo, hi, lowerC, upperC, excess, timeAbove));
      else out[i] = Number.NaN;
    }
  },
  'modified-average': ({ lowerC, upperC }, tmin, tmax, out) => {
    for (let i = 0; i < out.length; i++) {
      const lo = tmin[i]!;
      const hi = tmax[i]!;
      if (lo <= hi) out[i] = modifiedAverage(lowerC, upperC, lo, hi);
      else out[i] = Number.NaN;
    }
  },
  'single-sine': ({ lowerC, upperC, excess, timeAbove }, tmin, tmax, out) => {
    for (let i = 0; i < out.length; i++) {
      const lo = tmin[i]!;
      const hi = tmax[i]!;
      if (lo <= hi) out[i] = Math.max(0, sineNet(lo, hi, lowerC, upperC, excess, timeAbove));
      else out[i] = Number.NaN;
    }
  },
  'double-sine': ({ lowerC, upperC, excess, timeAbove }, tmin, tmax, out) => {
    for (let i = 0; i < out.length; i++) {
      const lo = tmin[i]!;
      const hi = tmax[i]!;
      const next = tmin[i + 1] ?? Number.NaN;
      if (!(lo <= hi) || Number.isNaN(next)) {
        out[i] = Number.NaN;
        continue;
      }
      const rise = sineNet(lo, hi, lowerC, upperC, excess, timeAbove);
      const fall = sineNet(Math.min(hi, next), Math.max(hi, next), lowerC, upperC, excess, timeAbove);
      out[i] = Math.max(0, (rise + fall) / 2);
    }
  },
  'single-triangle': ({ lowerC, upperC, excess, timeAbove }, tmin, tmax, out) => {
    for (let i = 0; i < out.length; i++) {
      const lo = tmin[i]!;
      const hi = tmax[i]!;
      if (lo <= hi) out[i] = Math.max(0, triangleNet(lo, hi, lowerC, upperC, excess, timeAbove));
      else out[i] = Number.NaN;
    }
  },
  'double-triangle': ({ lowerC, upperC, excess, timeAbove }, tmin, tmax, out) => {
    for (let i = 0; i < out.length; i++) {
      const lo = tmin[i]!;
      const hi = tmax[i]!;
      const next = tmin[i + 1] ?? Number.NaN;
      if (!(lo <= hi) || Number.isNaN(next)) {
        out[i] = Number.NaN;
        continue;
      }
      const rise = triangleNet(lo, hi, lowerC, upperC, excess, timeAbove);
      const fall = triangleNet(Math.min(hi, next), Math.max(hi, next), lowerC, upperC, excess, timeAbove);
      out[i] = Math.max(0, (rise + fall) / 2);
    }
  },
};

function flatNet(lo: number, hi: number, lower: number, upper: number, excess: number, timeAbove: number): number {
  const heat = flatHeatAbove(lo, hi, lower);
  if (hi <= upper) return heat;
  const cut = timeAbove === 0 ? 0 : timeAbove * (upper - lower) * flatTimeAbove(lo, hi, upper);
  return heat - excess * flatHeatAbove(lo, hi, upper) - cut;
}

function sineNet(lo: number, hi: number, lower: number, upper: number, excess: number, timeAbove: number): number {
  const heat = sineHeatAbove(lo, hi, lower);
  if (hi <= upper) return heat;
  const cut = timeAbove === 0 ? 0 : timeAbove * (upper - lower) * sineTimeAbove(lo, hi, upper);
  return heat - excess * sineHeatAbove(lo, hi, upper) - cut;
}

function triangleNet(lo: number, hi: number, lower: number, upper: number, excess: number, timeAbove: number): number {
  const heat = triangleHeatAbove(lo, hi, lower);
  if (hi <= upper) return heat;
  const cut = timeAbove === 0 ? 0 : timeAbove * (upper - lower) * triangleTimeAbove(lo, hi, upper);
  return heat - excess * triangleHeatAbove(lo, hi, upper) - cut;
}
