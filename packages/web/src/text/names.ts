/** Names of the trade for what a program writes down; an unknown word is read as it stands. */
import { type CellReason, canonicalStage, cropById, insectById, type LocalName, scientificNameOf } from '@duskwatch/core';
import { words } from './index.ts';
import { language } from './language.ts';

const spaced = (slug: string) => slug.replaceAll('-', ' ');

/** A name of the catalogue in the language of the page. */
export const localName = (name: LocalName) => name[language];

export const insectName = (insect: string) => insectById(insect)?.commonName[language] ?? scientificNameOf(insect);
/** The first of an insect's common names, where there is no room for all: `corn earworm` of `corn earworm / tomato fruitworm`. */
export const shortInsect = (insect: string) => insectName(insect).split(' / ')[0]!;
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

/** In two or three words, why there is no date to give: for a cell, where the whole sentence would not fit. */
export function shortReason(reason: CellReason | null): string | null {
  const w = words.reason;
  switch (reason?.kind) {
    case 'out-of-season':
      return w.outOfSeason[reason.why];
    case 'missing':
      return w.missing[reason.what];
    case 'trap-unusable':
      return w.trap[reason.why];
    case 'trap-doubt':
      return w.doubtedTrap;
    case 'lure-spent':
      return w.spentLure;
    default:
      return null;
  }
}
