import type { Problem } from '../base/problem.ts';
import type { Shape } from '../base/shape.ts';
import type { estimateSchema } from './lessons-schema.ts';

/** Something learned from a program's own data, or the reason why the data cannot tell. */
export type Learned<T, Reason extends string> = ({ readonly known: true } & T) | NotKnown<Reason>;

export interface NotKnown<Reason extends string> {
  readonly known: false;
  readonly reason: Reason;
  /** What was found, what would be needed, and how to get it. */
  readonly problem: Problem;
  /** How many there are and how many it takes, where that is what is missing. */
  readonly figures: { readonly have: number; readonly need: number } | null;
}

export function notKnown<Reason extends string>(
  reason: Reason,
  got: string,
  expected: string,
  fix: string,
  { parameter = 'observations', figures = null }: { parameter?: string; figures?: NotKnown<Reason>['figures'] } = {},
): NotKnown<Reason> {
  return { known: false, reason, problem: { where: { parameter }, got, expected, fix }, figures };
}

/** A figure with the limits of its interval. */
export type Estimate = Shape<typeof estimateSchema>;
