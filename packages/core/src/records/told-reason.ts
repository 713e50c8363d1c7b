/** Why a trap was unfit, as notes told it before a check had a property for it. */
import type { CheckRecord, UnfitReason } from './schema.ts';

/** What the form of the round wrote before a full stop, in English and Spanish. */
export const TOLD_REASONS = [
  ['down', 'down'],
  ['caída', 'down'],
  ['lure missing', 'lure-missing'],
  ['sin atrayente', 'lure-missing'],
  ['full', 'full'],
  ['llena', 'full'],
  ['stolen', 'stolen'],
  ['robada', 'stolen'],
  ['other', 'other'],
  ['otra cosa', 'other'],
] as const satisfies readonly (readonly [told: string, reason: UnfitReason])[];

/** An unfit check whose note begins with a reason, with the reason as a fact and the rest as the note; any other as it is. */
export function withReason<C extends Pick<CheckRecord, 'condition' | 'note' | 'unfitReason'>>(check: C): C {
  const { note, condition, unfitReason } = check;
  if (condition !== 'unfit' || unfitReason !== undefined || note === null) return check;
  for (const [told, reason] of TOLD_REASONS) {
    if (note === told) return { ...check, unfitReason: reason, note: null };
    if (note.startsWith(`${told}. `)) return { ...check, unfitReason: reason, note: note.slice(told.length + 2) };
  }
  return check;
}
