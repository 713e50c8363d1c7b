import { groupBy } from '../base/group-by.ts';
import type { TrapDesign } from '../records/schema.ts';
import { catalogue } from './catalogue.ts';
import type { Act, ActionRule, Crop, DesignFacts, DesignRatio, Insect, PhenologyModel, Practice, Recognition } from './types.ts';

const byId = <T extends { readonly id: string }>(items: readonly T[]): ((id: string) => T | null) => {
  const index = new Map(items.map((item) => [item.id, item]));
  return (id) => index.get(id) ?? null;
};

/** Null when the catalogue has no such entry: unknown insects and crops are allowed and have no rules. */
export const insectById: (id: string) => Insect | null = byId(catalogue.insects);
export const cropById: (id: string) => Crop | null = byId(catalogue.crops);
export const modelById: (id: string) => PhenologyModel | null = byId(catalogue.models);
export const ruleById: (id: string) => ActionRule | null = byId(catalogue.rules);

export const designFacts = (design: TrapDesign): DesignFacts | null =>
  catalogue.designs.find((facts) => facts.design === design) ?? null;

/** Models of an insect, in the catalogue's order; those that start at a life stage cannot be followed by date. */
export const modelsFor = (insect: string): readonly PhenologyModel[] =>
  catalogue.models.filter((model) => model.insect === insect);

/** How the catch of one design compares with another's for an insect; null when nobody has published it. */
export const designRatio = (insect: string, of: TrapDesign, against: TrapDesign): DesignRatio | null =>
  catalogue.designRatios.find((ratio) => ratio.of === of && ratio.against === against && (ratio.insect ?? insect) === insect) ??
  null;

const HABIT_WORDS: Readonly<Record<string, string>> = {
  bush: 'bush',
  bushy: 'bush',
  compact: 'bush',
  arbustivo: 'bush',
  mata: 'bush',
  vining: 'vining',
  vine: 'vining',
  trailing: 'vining',
  rastrero: 'vining',
  rastrera: 'vining',
  guia: 'vining',
};

/** `bush` or `vining` as somebody wrote it; null when not written or not understood. */
export const canonicalGrowthHabit = (written: string | null): string | null =>
  HABIT_WORDS[(written ?? '').normalize('NFD').replace(/\p{M}/gu, '').trim().toLowerCase()] ?? null;

/**
 * Rules for a crop and insect in the catalogue's order; which of them speaks is the program's choice (`rulesAmong`).
 * Where rules tell growth habits apart and the habit is not known, all of them are given:
 * any may be the true one.
 */
export function rulesFor(wanted: { crop: string; insect: string; growthHabit?: string | null }): readonly ActionRule[] {
  const habit = canonicalGrowthHabit(wanted.growthHabit ?? null);
  return catalogue.rules
    .filter((rule) => rule.insect === wanted.insect && rule.crops.includes(wanted.crop))
    .filter((rule) => habit === null || rule.growthHabits === null || rule.growthHabits.includes(habit));
}

/** Rules for the same catch that differ by region: of each set, one speaks. */
export function rivalRules(): readonly (readonly ActionRule[])[] {
  const catchRules = catalogue.rules.filter((rule) => rule.kind === 'catch-threshold' || rule.kind === 'catch-table');
  const sets = groupBy(catchRules, ({ insect, crops, growthHabits, design }) =>
    JSON.stringify([insect, crops, growthHabits, design]),
  );
  return [...sets.values()].filter((set) => set.length > 1);
}

/** Where to look for a stage of an insect on a crop; null where the catalogue has no word for it. */
export const searchPlace = (insect: string, crop: string, stage: Recognition['stage']): Recognition | null =>
  catalogue.recognition.find((place) => place.insect === insect && place.stage === stage && place.crops.includes(crop)) ?? null;

/** What to know or beware of while doing something, cautions first. */
export const practicesFor = (act: Act): readonly Practice[] =>
  catalogue.practices
    .filter((practice) => practice.act === act)
    .sort((a, b) => Number(b.weight === 'caution') - Number(a.weight === 'caution'));
