/** The season's catch as a line: one rate for every stretch in which the same visits speak. */
import { nearbyThreshold } from '../advice/catch-finding.ts';
import { historyOf, type Prepared, trapsThisSeason } from '../advice/prepare.ts';
import { cellRules, ruleForDesign } from '../advice/rules.ts';
import { VISIT_DISPERSION_PRIOR, visitDispersion } from '../advice/visit-dispersion.ts';
import { type Day, formatDay } from '../base/day.ts';
import { ASSUMPTIONS } from '../catalogue/index.ts';
import { type DispersionBelief, estimateRate, sumIntervals } from '../catch/index.ts';
import type { CatchInterval } from '../catch/types.ts';
import type { FieldRecord, TrapDesign } from '../records/schema.ts';
import type { SeasonLine, SeasonPoint } from './schema.ts';

/** One line per trap design that informs the field this season: designs are never pooled. */
export function seasonLines(prepared: Prepared, field: FieldRecord, insect: string): SeasonLine[] {
  const rules = cellRules(prepared, field, insect).catch;
  const byDesign = new Map<TrapDesign, CatchInterval[]>();
  for (const trap of trapsThisSeason(prepared, field, insect)) {
    const intervals = byDesign.get(trap.design) ?? [];
    intervals.push(...historyOf(prepared, trap).intervals);
    byDesign.set(trap.design, intervals);
  }
  const lines: SeasonLine[] = [];
  for (const [design, intervals] of byDesign) {
    const points = seasonPoints(intervals, visitDispersion(prepared, insect, design));
    if (points.length === 0) continue;
    const rule = ruleForDesign(rules, design);
    lines.push({
      design,
      from: points[0]!.from,
      to: points.at(-1)!.to,
      points,
      thresholdPerNight: rule && nearbyThreshold(prepared, field, rule).thresholdPerNight,
    });
  }
  return lines;
}

/**
 * Cuts the season at every visit and reads, for each stretch, all the visits whose nights cover it together.
 * A stretch that only visits without information cover, or none, is a gap: null, never zero.
 *
 * @param k dispersion of one visit's count; see `visitDispersion`
 */
export function seasonPoints(intervals: readonly CatchInterval[], k: DispersionBelief = VISIT_DISPERSION_PRIOR): SeasonPoint[] {
  const cuts = [...new Set(intervals.flatMap(({ from, to }) => [from, to]))].sort((a, b) => a - b);
  const ordered = [...intervals].sort((a, b) => a.from - b.from);
  const points: SeasonPoint[] = [];
  let open: CatchInterval[] = [];
  let next = 0;
  for (let i = 0; i + 1 < cuts.length; i++) {
    const [from, to] = [cuts[i]!, cuts[i + 1]!];
    while (next < ordered.length && ordered[next]!.from <= from) open.push(ordered[next++]!);
    open = open.filter((interval) => interval.to > from);
    const counted = open.filter((interval) => interval.count !== null);
    points.push(pointOf(from, to, counted, k));
  }
  return points;
}

function pointOf(from: Day, to: Day, counted: readonly CatchInterval[], k: DispersionBelief): SeasonPoint {
  const span = { from: formatDay(from), to: formatDay(to) };
  if (counted.length === 0) return { ...span, perNight: null, low: null, high: null };
  const { perNight, low, high } = estimateRate(sumIntervals(counted), {
    k,
    level: ASSUMPTIONS.intervalLevel.value,
  });
  return { ...span, perNight, low, high };
}
