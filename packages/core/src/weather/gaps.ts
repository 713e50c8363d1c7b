import { addDays, type Day } from '../base/day.ts';
import { isKnown } from './series.ts';
import type { DailyExtremes, Gap } from './types.ts';

/** How `bridgeGaps` fills a day, named beside every result that rests on it. */
export const BRIDGE_METHOD = 'linear-between-neighbours';

/** Longest run of missing days that is bridged unless the caller says otherwise. Common practice, no source. */
export const DEFAULT_MAX_BRIDGE_DAYS = 3;

/** Runs of missing days within [from, to], both ends included; days outside the series are missing too. */
export function findGaps(series: DailyExtremes, from: Day, to: Day): Gap[] {
  return runsWhere(from, to, (on) => !isKnown(series, on - series.start));
}

/** Runs of consecutive days in [from, to] for which `holds`. */
export function runsWhere(from: Day, to: Day, holds: (on: Day) => boolean): Gap[] {
  const runs: Gap[] = [];
  let start: Day | null = null;
  for (let on = from; on <= to; on = addDays(on, 1)) {
    if (holds(on)) start ??= on;
    else if (start !== null) {
      runs.push({ from: start, to: addDays(on, -1) });
      start = null;
    }
  }
  if (start !== null) runs.push({ from: start, to });
  return runs;
}

/**
 * Fills gaps of at most `maxDays` days by straight lines between the known days on either side, for minimum and
 * maximum apart. Longer gaps stay missing, and so do gaps at either end of the series: they have but one neighbour.
 */
export function bridgeGaps(series: DailyExtremes, maxDays: number): { series: DailyExtremes; bridged: Day[] } {
  const length = series.tminC.length;
  const gaps = findGaps(series, series.start, addDays(series.start, length - 1)).filter(
    (gap) => gap.from > series.start && gap.to < series.start + length - 1 && gap.to - gap.from + 1 <= maxDays,
  );
  if (gaps.length === 0) return { series, bridged: [] };

  const tminC = series.tminC.slice();
  const tmaxC = series.tmaxC.slice();
  const bridged: Day[] = [];
  for (const gap of gaps) {
    const before = gap.from - 1 - series.start;
    const after = gap.to + 1 - series.start;
    for (let i = before + 1; i < after; i++) {
      const share = (i - before) / (after - before);
      tminC[i] = tminC[before]! + share * (tminC[after]! - tminC[before]!);
      tmaxC[i] = tmaxC[before]! + share * (tmaxC[after]! - tmaxC[before]!);
      bridged.push(addDays(series.start, i));
    }
  }
  return { series: { ...series, tminC, tmaxC }, bridged };
}
