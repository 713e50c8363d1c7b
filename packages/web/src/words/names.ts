/** Names of the trade for what a program writes down; an unknown word is read as it stands. */
import { type Advice, canonicalStage, cropById, type Evidence } from '@duskwatch/core';
import { words } from './index.ts';

const spaced = (slug: string) => slug.replaceAll('-', ' ');

export const cropName = (crop: string) => cropById(crop)?.name.en ?? spaced(crop);

/** The stage in the crop's own words, for a plain word or a BBCH code as written. */
export function stageName(crop: string, written: string): string {
  const stage = canonicalStage(crop, written);
  return cropById(crop)?.stages.find((each) => each.id === stage)?.name.en ?? spaced(written);
}

/** `bush squash`, `sweet corn`. */
export const cropText = (field: { readonly crop: string; readonly growthHabit: string | null }) =>
  [field.growthHabit, cropName(field.crop)].filter(Boolean).join(' ');

const first = <K extends Evidence['kind']>(advice: Advice, kind: K) =>
  advice.because.find((each): each is Evidence & { kind: K } => each.kind === kind);

/** In two or three words, why there is no date to give: for a cell, where the whole sentence would not fit. */
export function shortReason(advice: Advice): string | null {
  const w = words.reason;
  if (advice.verb === 'none') {
    const why = first(advice, 'out-of-season')?.why;
    return why ? w.outOfSeason[why] : w.outOfSeason.stage;
  }
  if (advice.verb !== 'blind') return null;
  const lead = advice.because[0];
  if (lead?.kind === 'missing') return w.missing[lead.what];
  const trap = first(advice, 'trap-unusable');
  if (trap) return w.trap[trap.why];
  const missing = first(advice, 'missing');
  if (missing) return w.missing[missing.what];
  return first(advice, 'lure-spent') ? w.spentLure : null;
}
