/** The height of a catch on a strip of its own: by the square root, so that weak nights and a flight are both seen. */
import type { RateLine } from '@duskwatch/core';
import { scaleSqrt } from 'd3-scale';

/** Room over the highest rate, for intervals and words. */
const OVER = 1.35;
/** Below this the axis would be noise. */
const LEAST = 0.1;

/**
 * Holds every rate of this season and the rule's figure. What an earlier season or an interval has beyond it runs off at
 * the top, where an arrow and its figure say how far.
 */
export function rateScale(line: RateLine, { top, bottom }: { readonly top: number; readonly bottom: number }) {
  const rates = line.points.map(({ perNight }) => perNight ?? 0);
  const most = Math.max(LEAST, line.thresholdPerNight ?? 0, ...rates) * OVER;
  return scaleSqrt().domain([0, most]).range([bottom, top]).clamp(true);
}

/** Round figures whose heights keep apart: 0, 1, 5, 20 on a scale to 25. */
export function ticksOf(y: ReturnType<typeof rateScale>, apart: number): number[] {
  const most = y.domain()[1]!;
  const ticks = [0];
  const powers = Math.ceil(Math.log10(most));
  for (let power = powers - 3; power <= powers; power += 1)
    for (const digit of [1, 2, 5]) {
      const tick = Number((digit * 10 ** power).toPrecision(1));
      if (tick <= most && y(ticks.at(-1)!) - y(tick) >= apart) ticks.push(tick);
    }
  return ticks;
}
