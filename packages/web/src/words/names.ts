/** Names of the trade for what a program writes down; an unknown word is read as it stands. */
import { type Advice, canonicalStage, cropById, type Evidence, insectById, type LocalName } from '@duskwatch/core';
import { words } from './index.ts';
import { language } from './language.ts';

const spaced = (slug: string) => slug.replaceAll('-', ' ');

/** A name of the catalogue in the language of the page. */
export const localName = (name: LocalName) => name[language];

export const insectName = (insect: string) => insectById(insect)?.commonName[language] ?? spaced(insect);
export const cropName = (crop: string) => cropById(crop)?.name[language] ?? spaced(crop);

/** The stage in the crop's own words, for a plain word or a BBCH code as written. */
export function stageName(crop: string, written: string): string {
  const stage = canonicalStage(crop, written);
  return cropById(crop)?.stages.find((each) => each.id === stage)?.name[language] ?? spaced(written);
}

/** `bush squash`, `calabacín de mata`, `sweet corn`. */
export function cropText({ crop, growthHabit }: { readonly crop: string; readonly growthHabit: string | null }): string {
  return growthHabit === null ? cropName(crop) : words.habit(words.habits[growthHabit] ?? growthHabit, cropName(crop));
}

export const sampleKind = (kind: string) => words.sampleKinds[kind] ?? spaced(kind);

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
