import type { HindcastSet } from './hindcast.ts';

export interface SkillFigure {
  /** What stood in for the rest of the season. */
  readonly set: HindcastSet;
  /** Days before the true date at which the forecast was made. */
  readonly leadDays: number;
  readonly cases: number;
  /** Share of true dates within the 80 % window. */
  readonly coverage: number;
  /** Median days from its first date to its last; null: without end. */
  readonly widthDays: number | null;
  readonly medianErrorDays: number;
}
