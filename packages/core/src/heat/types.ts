import type { Day, IsoDay } from '../base/day.ts';
import type { TemperatureUnit } from '../base/temperature.ts';
import type { BRIDGE_METHOD } from '../weather/gaps.ts';
import type { MonthlyNormals } from '../weather/normals.ts';
import type { Gap } from '../weather/types.ts';

export const HEAT_METHODS = [
  'simple-average',
  'modified-average',
  'single-sine',
  'double-sine',
  'single-triangle',
  'double-triangle',
] as const;
export const HEAT_CUTOFFS = ['none', 'horizontal', 'intermediate', 'vertical'] as const;
export type HeatMethod = (typeof HEAT_METHODS)[number];
export type HeatCutoff = (typeof HEAT_CUTOFFS)[number];

/** How heat is counted. A model is valid only with the method and thresholds it was published with. */
export interface HeatRule {
  readonly method: HeatMethod;
  readonly cutoff: HeatCutoff;
  readonly lower: number;
  /** Null when the model has no upper threshold. */
  readonly upper: number | null;
  /** Unit of the thresholds, and of the degree-days that the model's events are stated in. */
  readonly unit: TemperatureUnit;
}

export interface HeatOptions {
  /** Longest run of missing days that is interpolated; 0 for none. Without it, `DEFAULT_MAX_BRIDGE_DAYS`. */
  readonly maxBridgeDays?: number;
  /** Of the months at the source, for the days to come where it has too few years. */
  readonly normals?: MonthlyNormals | null;
}

/** One day of a heat sum, in the unit of the rule. */
export interface HeatRow {
  readonly date: IsoDay;
  readonly degreeDays: number;
  /** Sum from the first day through this one. */
  readonly total: number;
  /** True when the day's temperatures are missing and were interpolated. */
  readonly bridged: boolean;
}

/** A heat sum with no day left out. */
export interface HeatSum {
  readonly unit: TemperatureUnit;
  readonly rows: readonly HeatRow[];
  readonly total: number;
  /** How many of the days were missing and interpolated. */
  readonly bridgedDays: number;
  /** How they were interpolated; null when none were. */
  readonly bridgeMethod: typeof BRIDGE_METHOD | null;
}

export type HeatTotal =
  | { readonly ok: true; readonly degreeDays: number; readonly bridgedDays: number; readonly filledDays: number }
  /** The first run of days within the span whose heat is unknown. */
  | { readonly ok: false; readonly gap: Gap };

/** The heat of a whole series under one rule, ready for many questions. Degree-days are in `rule.unit`. */
export interface HeatTrack {
  readonly rule: HeatRule;
  /** The day of index 0 of `daily`. */
  readonly start: Day;
  /** Degree-days of each day; NaN where unknown. */
  readonly daily: Float64Array;
  /** Last day whose heat is known; null when none is. Double methods know a day only once the next minimum is in. */
  readonly end: Day | null;
  /** Days of the series whose heat stays unknown after bridging. */
  readonly missingDays: number;
  /** The source that some of its days were taken from; null: none were. */
  readonly filledFrom: string | null;
  /** Of the months at the source; null: none are known. */
  readonly normals: MonthlyNormals | null;
  /** Heat of [from, to], both ends included. 0 when `to` is before `from`. */
  total(from: Day, to: Day): HeatTotal;
  /** First day by whose end the heat from `from` on has reached `target`; null when the data or a gap end first. */
  dayReaching(from: Day, target: number): Day | null;
}

/** When heat still to come is expected to have come. */
export interface Projection {
  readonly early: Day;
  readonly middle: Day;
  readonly late: Day;
  /** True when `late` is only the end of the horizon: in more than one case of ten the heat does not come by then. */
  readonly lateOpen: boolean;
  readonly method: 'past-years' | 'normals' | 'recent-days';
  /** Past years used as continuations; 0 for the other two. */
  readonly years: number;
}
