import type { Day } from '../base/day.ts';

/** Daily extremes of one source over consecutive days; NaN where a day is missing or only half there. */
export interface DailyExtremes {
  readonly sourceId: string;
  /** The day of index 0. */
  readonly start: Day;
  readonly tminC: Float64Array;
  readonly tmaxC: Float64Array;
  /** 1 where a day was taken from another source; left out: none was. */
  readonly filled?: Uint8Array;
  /** That other source. */
  readonly filledFrom?: string;
}

/** A run of missing days, both ends included. */
export interface Gap {
  readonly from: Day;
  readonly to: Day;
}
