/** Whether flights end as they begin, or take longer to end. */

/** Skews that are weighed against each other, and how far each is believed before anything is known. Own choice. */
export const SKEWS = [0, 0.15, 0.35] as const;
export const SKEW_BELIEF = [0.6, 0.2, 0.2] as const;

/** Least that one season leaves of a skew. */
const LEAST = 0.05;

/** How much likelier each skew has become by the counts of a flight: weights after, over weights before. */
export function skewEvidence(flights: readonly { readonly skew: number; readonly weight: number }[]): number[] {
  const after = SKEWS.map((skew) => flights.reduce((sum, one) => sum + (one.skew === skew ? one.weight : 0), 0));
  return after.map((weight, i) => weight / SKEW_BELIEF[i]!);
}

/** Weights of the skews after flights of one kind have been seen in several seasons: theirs is one curve. */
export function skewsAfter(evidence: readonly (readonly number[])[], before: readonly number[] = SKEW_BELIEF): number[] {
  const weights = before.map((weight, i) => evidence.reduce((product, one) => product * Math.max(LEAST, one[i]!), weight));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => weight / total);
}

/** The same flights, weighed by what is known of the skew from elsewhere. */
export function byShape<T extends { readonly skew: number; readonly weight: number }>(
  flights: readonly T[],
  skews: readonly number[],
): T[] {
  const times = (skew: number) => {
    const i = (SKEWS as readonly number[]).indexOf(skew);
    return skews[i]! / SKEW_BELIEF[i]!;
  };
  const total = flights.reduce((sum, { skew, weight }) => sum + weight * times(skew), 0);
  return flights.map((flight) => ({ ...flight, weight: (flight.weight * times(flight.skew)) / total }));
}
