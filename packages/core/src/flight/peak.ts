import type { TrapHistory } from '../catch/types.ts';
import type { FlightPeak } from './types.ts';

/**
 * The interval of any one trap with the most moths per night so far, the earlier one of equals; null before any catch.
 * Traps are not averaged, so that designs are never mixed: compare peaks within one design.
 */
export function peakSoFar(histories: readonly TrapHistory[]): FlightPeak | null {
  let peak: FlightPeak | null = null;
  for (const { trapId, intervals } of histories) {
    for (const { from, to, nights, count } of intervals) {
      if (count === null || count === 0) continue;
      const candidate = { from, to, perNight: count / nights, trapId };
      if (peak === null || isHigher(candidate, peak)) peak = candidate;
    }
  }
  return peak;
}

function isHigher(a: FlightPeak, b: FlightPeak): boolean {
  if (a.perNight !== b.perNight) return a.perNight > b.perNight;
  return a.to < b.to || (a.to === b.to && a.trapId < b.trapId);
}
