/** A season's catch cut into stretches, each with the rate of the visits that speak for it. */
import { z } from 'zod';
import { type Day, formatDay } from '../base/day.ts';
import type { Shape } from '../base/shape.ts';
import { ASSUMPTIONS } from '../catalogue/index.ts';
import { type DispersionBelief, estimateRate, sumIntervals } from '../catch/index.ts';
import type { CatchInterval } from '../catch/types.ts';
import { isoDay } from '../records/schema.ts';
import { VISIT_DISPERSION_PRIOR } from './visit-dispersion.ts';

export const ratePointSchema = z
  .object({
    from: isoDay,
    to: isoDay,
    perNight: z
      .number()
      .nullable()
      .describe('Moths per trap per night over the traps of one design; null: no fit trap in those nights.'),
    low: z.number().nullable(),
    high: z.number().nullable(),
  })
  .meta({ id: 'RatePoint' });
export type RatePoint = Shape<typeof ratePointSchema>;

/**
 * Cuts the season at every visit and reads, for each stretch, all the visits whose nights cover it together.
 * A stretch that only visits without information cover, or none, is a gap: null, never zero.
 *
 * @param k dispersion of one visit's count; see `visitDispersion`
 */
export function ratePoints(intervals: readonly CatchInterval[], k: DispersionBelief = VISIT_DISPERSION_PRIOR): RatePoint[] {
  const cuts = [...new Set(intervals.flatMap(({ from, to }) => [from, to]))].sort((a, b) => a - b);
  const ordered = [...intervals].sort((a, b) => a.from - b.from);
  const points: RatePoint[] = [];
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

function pointOf(from: Day, to: Day, counted: readonly CatchInterval[], k: DispersionBelief): RatePoint {
  const span = { from: formatDay(from), to: formatDay(to) };
  if (counted.length === 0) return { ...span, perNight: null, low: null, high: null };
  const { perNight, low, high } = estimateRate(sumIntervals(counted), {
    k,
    level: ASSUMPTIONS.intervalLevel.value,
  });
  return { ...span, perNight, low, high };
}
