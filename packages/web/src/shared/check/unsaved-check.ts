/** What a scout has put in at one trap and not yet saved. Pure: every tap is a function from draft to draft. */
import type { CheckRecord, Condition, UnfitReason } from '@duskwatch/core';

/** Every reason, in the order in which they are offered: the likeliest first. */
export const OFFERED_REASONS = Object.keys({
  down: 1,
  full: 1,
  'lure-missing': 1,
  flooded: 1,
  stolen: 1,
  other: 1,
} satisfies Record<UnfitReason, 1>) as UnfitReason[];
export type CountBox = 'target' | 'others';
export type PadKey = '0' | '1' | '2' | '3' | '4' | '5' | '6' | '7' | '8' | '9' | 'none' | 'erase';

export interface UnsavedCheck {
  /** Digits; empty: not counted, which is not zero. */
  readonly target: string;
  readonly others: string;
  /** The box that the pad writes into. */
  readonly box: CountBox;
  readonly condition: Condition;
  readonly unfit: UnfitReason | null;
  readonly emptied: boolean;
  readonly lureChanged: boolean;
  /** Somebody said that a lure which is due is not changed today. */
  readonly lureLeft: boolean;
  /** Days the new lure lasts; null: not known. */
  readonly lureLifeDays: number | null;
  /** Stage seen today, by field. */
  readonly stages: Readonly<Record<string, string>>;
  readonly note: string;
  /** Taken now and not yet kept, or the name of one kept. */
  readonly photo: Blob | string | null;
}

/** Turns what is put in into what it becomes. */
export type Change = (make: (before: UnsavedCheck) => UnsavedCheck) => void;

/** Six digits are the most a count may have. */
const MAX_DIGITS = 6;

export const newUnsavedCheck = (lureLifeDays: number | null): UnsavedCheck => ({
  target: '',
  others: '',
  box: 'target',
  condition: 'fit',
  unfit: null,
  emptied: true,
  lureChanged: false,
  lureLeft: false,
  lureLifeDays,
  stages: {},
  note: '',
  photo: null,
});

/** One key of the pad. `none` writes 0, so that an empty trap is said and never assumed. */
export function press(draft: UnsavedCheck, key: PadKey): UnsavedCheck {
  const before = draft[draft.box];
  if (key === 'none') return { ...draft, [draft.box]: '0' };
  if (key === 'erase') return { ...draft, [draft.box]: before.slice(0, -1) };
  return { ...draft, [draft.box]: digits(before + key) };
}

/** What a keyboard wrote into a box. */
export const typeCount = (draft: UnsavedCheck, box: CountBox, text: string): UnsavedCheck => ({
  ...draft,
  box,
  [box]: digits(text),
});

/** Only digits, without leading zeros; a digit too many is not taken. */
function digits(text: string): string {
  const plain = text.replace(/\D/g, '').replace(/^0+(?=\d)/, '');
  return plain.length > MAX_DIGITS ? plain.slice(0, MAX_DIGITS) : plain;
}

/** Choosing unfit, also once more, asks what is wrong. */
export const choose = (draft: UnsavedCheck, condition: Condition): UnsavedCheck => ({ ...draft, condition, unfit: null });

/** Whether somebody put in something that would be missed. */
export const holdsSomething = ({ target, others, unfit, note, photo, lureChanged, stages }: UnsavedCheck): boolean =>
  [target, others, unfit, note.trim(), photo].some(Boolean) || lureChanged || Object.values(stages).some(Boolean);

export type Missing = 'count' | 'unfit-reason' | 'lure';

/**
 * What stands in the way of saving; null when nothing does.
 * @param lureDue whether it is to be said what became of the lure
 */
export function missing(draft: UnsavedCheck, lureDue = false): Missing | null {
  if (draft.condition === 'unfit' && draft.unfit === null) return 'unfit-reason';
  if (draft.condition !== 'unfit' && draft.target === '') return 'count';
  return lureDue && !draft.lureChanged && !draft.lureLeft ? 'lure' : null;
}

/** Where a trap is unfit there is nothing to count, unless it is full or somebody has counted: no zero can be typed by the way. */
export const mayCount = ({ condition, unfit, target, others }: UnsavedCheck): boolean =>
  condition !== 'unfit' || unfit === 'full' || target !== '' || others !== '';

const counted = (text: string) => (text === '' ? null : Number(text));

export interface Visit {
  readonly trapId: string;
  readonly checkedOn: string;
  readonly visit: number;
}

/**
 * The check that a draft says; the photo is named by whoever keeps it.
 * @param before what the draft corrects, so that nothing is lost that the form does not ask for
 */
export function checkFrom(draft: UnsavedCheck, visit: Visit, photo: string | null, before: CheckRecord | null): CheckRecord {
  const note = draft.note.trim();
  return {
    ...before,
    ...visit,
    targetCount: counted(draft.target),
    otherCount: counted(draft.others),
    condition: draft.condition,
    emptied: draft.emptied,
    unfitReason: draft.unfit,
    note: note === '' ? null : note,
    photo,
  };
}

/** The draft that a saved check came from, to correct it. */
export function unsavedOf(check: CheckRecord, lure: { changed: boolean; lifeDays: number | null }): UnsavedCheck {
  return {
    ...newUnsavedCheck(lure.lifeDays),
    target: check.targetCount?.toString() ?? '',
    others: check.otherCount?.toString() ?? '',
    condition: check.condition,
    unfit: check.unfitReason ?? null,
    emptied: check.emptied,
    lureChanged: lure.changed,
    note: check.note ?? '',
    photo: check.photo ?? null,
  };
}

/** A draft kept by an older version may hold a reason by another name: it is asked for anew. */
export const asOfferedNow = (kept: UnsavedCheck): UnsavedCheck =>
  kept.unfit === null || OFFERED_REASONS.includes(kept.unfit) ? kept : { ...kept, unfit: null };
