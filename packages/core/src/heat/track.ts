import { addDays, type Day } from '../base/day.ts';
import { degreeDaysIn } from '../base/temperature.ts';
import { bridgeGaps, DEFAULT_MAX_BRIDGE_DAYS } from '../weather/gaps.ts';
import type { DailyExtremes } from '../weather/types.ts';
import { dailyDegreeDays } from './daily.ts';
import type { HeatOptions, HeatRule, HeatTotal, HeatTrack } from './types.ts';

/** Sums of the same days in another order differ by rounding; no target is missed for that. */
const ROUNDING = 1e-9;

/**
 * The heat of a series under one rule, summed once, so that any span is a subtraction and any target a binary search.
 *
 * A bridged day is one whose temperatures were missing and interpolated. (With a double method the day before it is
 * known, but falls to an interpolated minimum.)
 */
export function heatTrack(rule: HeatRule, series: DailyExtremes, options: HeatOptions = {}): HeatTrack {
  const bridge = bridgeGaps(series, options.maxBridgeDays ?? DEFAULT_MAX_BRIDGE_DAYS);
  const daily = dailyDegreeDays(rule, bridge.series).map((heat) => degreeDaysIn(heat, rule.unit));
  const { start } = series;
  const length = daily.length;

  // heatBefore[i], bridgedBefore[i], filledBefore[i]: of the days before index i; unknownFrom[i]: first unknown index at or after i.
  const heatBefore = new Float64Array(length + 1);
  const bridgedBefore = new Int32Array(length + 1);
  const filledBefore = new Int32Array(length + 1);
  const unknownFrom = new Int32Array(length + 1).fill(length);
  for (const on of bridge.bridged) bridgedBefore[on - start + 1] = 1;
  let end: Day | null = null;
  let missingDays = 0;
  for (let i = 0; i < length; i++) {
    const known = !Number.isNaN(daily[i]!);
    if (known) end = addDays(start, i);
    else missingDays++;
    heatBefore[i + 1] = heatBefore[i]! + (known ? daily[i]! : 0);
    bridgedBefore[i + 1]! += bridgedBefore[i]!;
    filledBefore[i + 1] = filledBefore[i]! + (series.filled?.[i] ?? 0);
  }
  for (let i = length - 1; i >= 0; i--) unknownFrom[i] = Number.isNaN(daily[i]!) ? i : unknownFrom[i + 1]!;

  function total(from: Day, to: Day): HeatTotal {
    if (to < from) return { ok: true, degreeDays: 0, bridgedDays: 0, filledDays: 0 };
    const first = from - start;
    const past = to - start + 1;
    if (first < 0) return { ok: false, gap: { from, to: addDays(start, Math.min(past, knownAfter(0)) - 1) } };
    if (first >= length) return { ok: false, gap: { from, to } };
    const unknown = unknownFrom[first]!;
    if (unknown < past)
      return { ok: false, gap: { from: addDays(start, unknown), to: addDays(start, Math.min(past, knownAfter(unknown)) - 1) } };
    return {
      ok: true,
      degreeDays: heatBefore[past]! - heatBefore[first]!,
      bridgedDays: bridgedBefore[past]! - bridgedBefore[first]!,
      filledDays: filledBefore[past]! - filledBefore[first]!,
    };
  }

  /** First known index from `index` on; past the series there is none. */
  function knownAfter(index: number): number {
    let i = index;
    while (i < length && Number.isNaN(daily[i]!)) i++;
    return i < length ? i : Number.POSITIVE_INFINITY;
  }

  function dayReaching(from: Day, target: number): Day | null {
    const first = from - start;
    if (first < 0 || first >= length) return null;
    const wanted = heatBefore[first]! + target - ROUNDING;
    let low = first;
    let high = unknownFrom[first]!;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (heatBefore[middle + 1]! >= wanted) high = middle;
      else low = middle + 1;
    }
    return low < unknownFrom[first]! ? addDays(start, low) : null;
  }

  return {
    rule,
    start,
    daily,
    end,
    missingDays,
    filledFrom: series.filledFrom ?? null,
    normals: options.normals ?? null,
    total,
    dayReaching,
  };
}
