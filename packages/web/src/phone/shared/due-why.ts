/** Why a trap of a round is due, as values; the most pressing first. */
import { day, daysBetween, type IsoDay, type RoundTrap, type SkipReason, type UnfitReason } from '@duskwatch/core';

export type DueWhy =
  | { readonly kind: 'unfit'; readonly reason: UnfitReason | null }
  /** 0: today. */
  | { readonly kind: 'check'; readonly daysLate: number; readonly first: boolean }
  /** Days until its life ends; below 0: past it. */
  | { readonly kind: 'lure'; readonly daysLeft: number }
  /** Caught nothing, or many times more, while others of its kind caught about so many. */
  | { readonly kind: 'silent' | 'loud'; readonly nights: number; readonly count: number; readonly expected: number }
  | { readonly kind: 'skipped'; readonly on: IsoDay; readonly reason: SkipReason };

export function whyDue(trap: RoundTrap, on: IsoDay): DueWhy[] {
  const { lastVisit, checkDue, lure } = trap;
  const why: DueWhy[] = [];
  if (trap.due && lastVisit?.condition === 'unfit') why.push({ kind: 'unfit', reason: lastVisit.unfitReason });
  else if (trap.due) {
    why.push({ kind: 'check', daysLate: Math.max(0, daysBetween(day(checkDue), day(on))), first: lastVisit === null });
  }
  if (lure?.change && lure.lifeDays !== null) why.push({ kind: 'lure', daysLeft: lure.lifeDays - lure.ageDays });
  if (trap.doubt) why.push(trap.doubt);
  if (trap.skipped) why.push({ kind: 'skipped', ...trap.skipped });
  return why;
}
