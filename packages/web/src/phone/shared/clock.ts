/** What this phone's clock is off by, as the server's answers tell, so that a wrong clock writes no wrong day. */
import type { IsoDay } from '@duskwatch/core';

export interface Clock {
  /** This clock minus the server's, in ms. */
  readonly aheadMs: number;
  /** When it was measured, by this clock, in ms since 1970. */
  readonly measuredMs: number;
}

/** Less may be the way through the network. */
const OFF_MS = 60_000;
/** `Date` in the head of an answer is cut to the second. */
const HALF_SECOND_MS = 500;

/**
 * @param date of the answer's head
 * @param askedMs, heardMs by this clock
 * @returns null where the head names no instant
 */
export function measured(date: string | null, askedMs: number, heardMs: number): Clock | null {
  const serverMs = Date.parse(date ?? '') + HALF_SECOND_MS;
  return Number.isNaN(serverMs) ? null : { aheadMs: (askedMs + heardMs) / 2 - serverMs, measuredMs: heardMs };
}

/** The instant it really is, as far as this phone can know: a clock set back since it was measured is believed again. */
export function trueMs(clock: Clock | null, nowMs: number): number {
  if (clock === null || nowMs < clock.measuredMs || Math.abs(clock.aheadMs) < OFF_MS) return nowMs;
  return nowMs - clock.aheadMs;
}

/** The calendar day at an instant, where the phone is. */
export function localDay(ms: number): IsoDay {
  const at = new Date(ms);
  const two = (value: number) => String(value).padStart(2, '0');
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
}

/** Whole days that the clock's own day is ahead of the true one; 0 where it writes the right day. */
export function daysAhead(clock: Clock | null, nowMs: number): number {
  const midnight = (ms: number) => Date.parse(`${localDay(ms)}T00:00:00Z`);
  return (midnight(nowMs) - midnight(trueMs(clock, nowMs))) / 86_400_000;
}
