import type { Day } from '../units/day.ts';

/** How a biofix is found in catches, as data. */
export type BiofixRule =
  /** The first visit with a catch. */
  | { readonly kind: 'first-catch' }
  /** The first visit with a catch that is followed by a catch at each of the next `followedBy` informative visits. */
  | { readonly kind: 'sustained-catch'; readonly followedBy: number }
  /** The first time that `moths` or more were caught within `nights` nights in one trap. */
  | { readonly kind: 'intense-capture'; readonly moths: number; readonly nights: number };

export interface Biofix {
  readonly on: Day;
  readonly rule: BiofixRule | { readonly kind: 'user' };
  readonly trapId: string | null;
  /** Nights in which the biofix may truly have fallen: the nights the deciding visit covered. */
  readonly earliest: Day;
}

export interface Trend {
  /** Slope of log rate per night: above 0 rising. */
  readonly perNight: number;
  readonly low: number;
  readonly high: number;
  readonly level: number;
  readonly direction: 'rising' | 'falling' | 'unclear';
  readonly visits: number;
}

export interface FlightSummary {
  readonly firstCatch: Biofix | null;
  readonly biofix: Biofix | null;
  readonly peak: { readonly from: Day; readonly to: Day; readonly perNight: number; readonly trapId: string } | null;
  readonly trend: Trend | null;
}
