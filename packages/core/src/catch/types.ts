import { z } from 'zod';
import type { Day } from '../base/day.ts';
import type { Condition, TrapDesign } from '../records/schema.ts';

/** Why the nights before a visit say nothing about moths. */
export type NoInformation = 'unfit' | 'count-went-down' | 'left-uncounted';

/**
 * What one visit tells about the nights since the visit before it (or since hanging).
 * Two visits on one day are folded into one interval, so `nights` is at least 1.
 */
export interface CatchInterval {
  readonly trapId: string;
  readonly design: TrapDesign;
  /** The visit (or hanging) that began the interval; the first night is that day's. */
  readonly from: Day;
  /** The visit that ended it. */
  readonly to: Day;
  /** Which of that day’s visits it was, and any later ones of the day: the `visit` of their records. */
  readonly visits: readonly number[];
  readonly nights: number;
  /** Moths of the target in those nights; null when the visit carries no information. */
  readonly count: number | null;
  readonly others: number | null;
  readonly condition: Condition;
  readonly noInformation: NoInformation | null;
  /** Age of the lure on the day of the visit; null when no lure change is recorded. */
  readonly lureAgeDays: number | null;
  readonly lureLifeDays: number | null;
  /** True when the lure was older than its stated life at the visit: the count reads low. Null: not known. */
  readonly lurePastLife: boolean | null;
}

/** Something a person should look at; never changed on its own. */
export interface CheckQuestion {
  /** Fewer moths of the target were found than had been left in the trap at the visit before. */
  readonly kind: 'count-went-down';
  readonly trapId: string;
  readonly on: Day;
  /** Target moths found. */
  readonly got: number;
  /** Target moths left in the trap at the visit before. */
  readonly before: number;
}

export interface TrapHistory {
  readonly trapId: string;
  readonly intervals: readonly CatchInterval[];
  readonly questions: readonly CheckQuestion[];
}

/** Moths in trap-nights, ready for inference. */
export interface CatchSum {
  readonly count: number;
  readonly trapNights: number;
  /** Σ nights² over the visits: what over-dispersion needs to know about how the nights were grouped. */
  readonly sumSquaredNights: number;
  readonly visits: number;
}

export interface RateEstimate extends CatchSum {
  /** Moths per trap per night: count / trapNights. */
  readonly perNight: number;
  readonly low: number;
  readonly high: number;
  /** Credible level of [low, high], e.g. 0.8. */
  readonly level: number;
  readonly model: 'negative-binomial' | 'gamma-poisson';
  /** Dispersion per visit used; null for gamma–Poisson. */
  readonly k: number | null;
}

/** The newest usable nights of the traps of one design that inform a field. */
export interface PooledCatch {
  readonly design: TrapDesign;
  readonly rate: RateEstimate;
  /** The intervals the rate rests on, newest first within each trap. */
  readonly intervals: readonly CatchInterval[];
  /** Traps of this design that could not be used, and why. */
  readonly unusable: readonly UnusableTrap[];
  readonly newest: Day;
}

/** Why a trap tells nothing now. */
export const unusableSchema = z.enum([
  'never-checked',
  'overdue',
  'unfit',
  'count-went-down',
  'left-uncounted',
  'not-hung',
  'taken-down',
]);

export interface UnusableTrap {
  readonly trapId: string;
  readonly design: TrapDesign;
  readonly why: z.infer<typeof unusableSchema>;
  /** The day up to which the trap last told something (a visit with information, or hanging); null when not hung. */
  readonly since: Day | null;
  readonly nightsWithoutSight: number | null;
}
