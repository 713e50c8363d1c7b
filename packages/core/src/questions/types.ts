import type { IsoDay } from '../base/day.ts';

/** A check a question is about, by trap and day. */
export interface AskedCheck {
  readonly trapId: string;
  readonly checkedOn: IsoDay;
  /** Moths of the target since the visit before. */
  readonly count: number;
  readonly others: number | null;
  /** Moths to be expected there by the other traps in the same nights; null where it plays no part. */
  readonly expected: number | null;
}

interface Asked {
  /** The checks that are odd together, in order of days. */
  readonly checks: readonly AskedCheck[];
  /** Whose traps they are; null when no field says. */
  readonly farm: string | null;
  /** Who knows: whoever stood at the trap, or whoever typed the records in. */
  readonly whom: 'scout' | 'whoever-entered';
  /** Probability that sound records look at least as odd at one such look; null where it is no matter of chance. */
  readonly probability: number | null;
  /** The same for all the looks of this kind in the season together: at most this. */
  readonly inSeason: number | null;
}

/** Something odd that somebody should look at. Records are never changed for it. */
export type RecordQuestion = Asked &
  (
    | { readonly kind: 'unlikely-count'; readonly side: 'high' | 'low' }
    /** The figures of target and other species fit better the other way round. */
    | { readonly kind: 'columns-swapped' }
    /** One trap's count again and again. */
    | { readonly kind: 'repeated-count'; readonly value: number }
    /** Many traps of one farm with one count on one day. */
    | { readonly kind: 'same-count-everywhere'; readonly value: number; readonly traps: number }
    /** Checks of several days entered in one go. */
    | { readonly kind: 'entered-in-bulk'; readonly author: string; readonly days: number }
    /** More counts in fives than chance gives. */
    | { readonly kind: 'rounded-counts'; readonly rounded: number; readonly of: number }
    | { readonly kind: 'never-catches'; readonly nights: number; readonly expected: number }
    /** From a day on, each of two traps catches what the other should. */
    | { readonly kind: 'swapped-traps'; readonly traps: readonly [string, string]; readonly from: IsoDay }
  );

export type QuestionKind = RecordQuestion['kind'];
