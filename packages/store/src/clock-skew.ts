/** Clocks that are wrong, and what is made of the instants they wrote. */
import type { Arrival } from './types.ts';

/** Less than this may be the way through the network, and is not held against a clock. */
const TOLERATED_SKEW_MS = 60_000;

/**
 * The instant a revision counts from when two edits compete. A clock measured to be off is put right by the whole
 * difference; and whatever a clock says, nothing was written after it arrived. What stays wrong is a clock that was
 * slow when it wrote and right when it sent: its edit counts as older than it is.
 */
export function countedAt(at: string, arrival: Arrival | null): string {
  if (arrival === null) return at;
  const skewMs = Math.abs(arrival.skewMs ?? 0) > TOLERATED_SKEW_MS ? arrival.skewMs! : 0;
  const ms = Math.min(Date.parse(at) - skewMs, Date.parse(arrival.receivedAt));
  return new Date(ms).toISOString();
}
