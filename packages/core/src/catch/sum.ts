import type { CatchInterval, CatchSum } from './types.ts';

/** Moths and trap-nights of the intervals that carry information; the others add neither. */
export function sumIntervals(intervals: Iterable<CatchInterval>): CatchSum {
  let [count, trapNights, sumSquaredNights, visits] = [0, 0, 0, 0];
  for (const interval of intervals) {
    if (interval.count === null) continue;
    count += interval.count;
    trapNights += interval.nights;
    sumSquaredNights += interval.nights ** 2;
    visits++;
  }
  return { count, trapNights, sumSquaredNights, visits };
}
