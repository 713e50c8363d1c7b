/** What the next visit to a trap should find, simple enough for a phone to hold a count against it without signal. */
import { atLeast, atMost, joint } from './counts.ts';
import { NEXT_COUNT } from './next-count-figures.ts';

interface ExpectedCount {
  /** Moths per night. */
  readonly perNight: number;
  /** Scatter k of a visit about it. */
  readonly k: number;
}

interface CountedNights {
  readonly count: number;
  readonly nights: number;
}

/** Visits of a trap that still tell of the same part of a flight. */
export const VISITS_TOLD = 2;

/** @param visits of the trap just before; at least one */
export function expectedFrom(visits: readonly CountedNights[]): ExpectedCount {
  const moths = NEXT_COUNT.notYet + visits.reduce((sum, { count }) => sum + count, 0);
  const nights = visits.reduce((sum, visit) => sum + visit.nights, 0);
  const { scatter, drift } = NEXT_COUNT;
  return { perNight: moths / nights, k: joint(scatter, scatter * visits.length, moths, drift) };
}

/** Which way so many moths in so many nights are too far off to be taken without a question; null: they are not. */
export function oddSide(expected: ExpectedCount, nights: number, count: number): 'high' | 'low' | null {
  if (oddlyHigh(expected, nights, count)) return 'high';
  return oddlyLow(expected, nights, count) ? 'low' : null;
}

/** Whether so many moths in so many nights are too far above what was expected to be taken without a question. */
export function oddlyHigh({ perNight, k }: ExpectedCount, nights: number, count: number): boolean {
  const mean = perNight * nights;
  return count > mean && atLeast(count, { mean, k }) < NEXT_COUNT.askBelow;
}

/** Whether so many moths in so many nights are too far below what was expected: a trap gone blind, or nobody looked. */
export function oddlyLow({ perNight, k }: ExpectedCount, nights: number, count: number): boolean {
  const mean = perNight * nights;
  return count < mean && atMost(count, { mean, k }) < NEXT_COUNT.askBelowLow;
}
