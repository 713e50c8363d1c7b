import type { DailyExtremes } from '../weather/types.ts';
import { flatHeatAbove, flatTimeAbove, modifiedAverage } from './average.ts';
import { type Thresholds, thresholdsOf } from './rule.ts';
import { sineHeatAbove, sineTimeAbove } from './sine.ts';
import { triangleHeatAbove, triangleTimeAbove } from './triangle.ts';
import type { HeatMethod, HeatRule } from './types.ts';

/**
 * Degree-days of one day in °C·d, whatever the unit of the rule.
 *
 * The double methods run from the day's minimum up to its maximum and down to the next day's minimum, half a day each;
 * without `nextTminC` the day is not known. NaN when a temperature is NaN, or when the minimum is above the maximum:
 * such a day is a mistake, not cold.
 */
export function degreeDays(rule: HeatRule, tminC: number, tmaxC: number, nextTminC: number = Number.NaN): number {
  const out = new Float64Array(1);
  fill(rule.method, thresholdsOf(rule), Float64Array.of(tminC, nextTminC), Float64Array.of(tmaxC), out);
  return out[0]!;
}

/**
 * Degree-days of every day of a series in °C·d; NaN where the day is missing.
 * With a double method also the day before a missing one and the last day of the series, whose second half is unknown.
 */
export function dailyDegreeDays(rule: HeatRule, series: DailyExtremes): Float64Array {
  const out = new Float64Array(series.tmaxC.length);
  fill(rule.method, thresholdsOf(rule), series.tminC, series.tmaxC, out);
  return out;
}

/**
 * One plain loop for each curve: a call through a table of curves would cost more than the arithmetic.
 * Twice the excess can outweigh the heat, but no day undoes development: hence not below 0.
 */
function fill(method: HeatMethod, t: Thresholds, tmin: Float64Array, tmax: Float64Array, out: Float64Array): void {
  switch (method) {
    case 'simple-average':
      for (let i = 0; i < out.length; i++) out[i] = flatDay(tmin[i]!, tmax[i]!, t);
      return;
    case 'modified-average':
      for (let i = 0; i < out.length; i++) out[i] = modifiedDay(tmin[i]!, tmax[i]!, t);
      return;
    case 'single-sine':
      for (let i = 0; i < out.length; i++) out[i] = Math.max(0, sineNet(tmin[i]!, tmax[i]!, t));
      return;
    case 'single-triangle':
      for (let i = 0; i < out.length; i++) out[i] = Math.max(0, triangleNet(tmin[i]!, tmax[i]!, t));
      return;
    case 'double-sine':
      for (let i = 0; i < out.length; i++)
        out[i] = Math.max(0, (sineNet(tmin[i]!, tmax[i]!, t) + sineFall(tmax[i]!, tmin[i + 1]!, t)) / 2);
      return;
    case 'double-triangle':
      for (let i = 0; i < out.length; i++)
        out[i] = Math.max(0, (triangleNet(tmin[i]!, tmax[i]!, t) + triangleFall(tmax[i]!, tmin[i + 1]!, t)) / 2);
      return;
  }
}

function sineNet(lo: number, hi: number, t: Thresholds): number {
  if (!(lo <= hi)) return Number.NaN;
  const heat = sineHeatAbove(lo, hi, t.lowerC);
  if (hi <= t.upperC) return heat;
  const whole = t.timeAbove === 0 ? 0 : (t.upperC - t.lowerC) * sineTimeAbove(lo, hi, t.upperC);
  return heat - t.excess * sineHeatAbove(lo, hi, t.upperC) - whole;
}

function triangleNet(lo: number, hi: number, t: Thresholds): number {
  if (!(lo <= hi)) return Number.NaN;
  const heat = triangleHeatAbove(lo, hi, t.lowerC);
  if (hi <= t.upperC) return heat;
  const whole = t.timeAbove === 0 ? 0 : (t.upperC - t.lowerC) * triangleTimeAbove(lo, hi, t.upperC);
  return heat - t.excess * triangleHeatAbove(lo, hi, t.upperC) - whole;
}

/** From a day's maximum to the next minimum, which in a sudden thaw may lie higher: then the half day rises to it. */
function sineFall(tmax: number, next: number, t: Thresholds): number {
  return next > tmax ? sineNet(tmax, next, t) : sineNet(next, tmax, t);
}

function triangleFall(tmax: number, next: number, t: Thresholds): number {
  return next > tmax ? triangleNet(tmax, next, t) : triangleNet(next, tmax, t);
}

function flatDay(lo: number, hi: number, t: Thresholds): number {
  if (!(lo <= hi)) return Number.NaN;
  const heat = flatHeatAbove(lo, hi, t.lowerC);
  if (hi <= t.upperC) return heat;
  return Math.max(
    0,
    heat - t.excess * flatHeatAbove(lo, hi, t.upperC) - t.timeAbove * (t.upperC - t.lowerC) * flatTimeAbove(lo, hi, t.upperC),
  );
}

function modifiedDay(lo: number, hi: number, t: Thresholds): number {
  return lo <= hi ? modifiedAverage(t.lowerC, t.upperC, lo, hi) : Number.NaN;
}
