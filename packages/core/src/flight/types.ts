import type { Day } from '../base/day.ts';
import type { BiofixRule } from '../catalogue/types.ts';

export interface Biofix {
  /** The visit that ended the deciding nights, or the day the user gave. */
  readonly on: Day;
  readonly rule: BiofixRule | { readonly kind: 'user' };
  readonly trapId: string | null;
  /**
   * The first day the biofix may truly have fallen on: the start of the nights the deciding visit covered, and of the
   * nights without information right before them in that trap. For a flight already running when the trap was hung, what
   * other traps or past years leave; null where nothing bounds it.
   */
  readonly earliest: Day | null;
  /** No fit visit of the trap below the rule came before: the flight was running when it was hung, and `on` is the latest day. */
  readonly running: boolean;
  /** For an intense capture, the probability that it was reached by the deciding visit; otherwise null. */
  readonly probability: number | null;
}

export interface Trend {
  /** Slope of the log rate per night: above 0 rising. */
  readonly perNight: number;
  readonly low: number;
  readonly high: number;
  readonly level: number;
  /** Unclear when [low, high] holds 0. */
  readonly direction: 'rising' | 'falling' | 'unclear';
  /** Visits the slope rests on. */
  readonly visits: number;
}

/** The interval of one trap with the most moths per night. */
export interface FlightPeak {
  readonly from: Day;
  readonly to: Day;
  readonly perNight: number;
  readonly trapId: string;
}

export interface FlightSummary {
  readonly firstCatch: Biofix | null;
  readonly biofix: Biofix | null;
  readonly peak: FlightPeak | null;
  readonly trend: Trend | null;
}
