import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { catalogue, cropById, insectById, modelById, ruleById, rulesFor } from '../index.ts';
import { insectEntries } from './insects.ts';

const here = new URL('.', import.meta.url);
const folders = readdirSync(here, { withFileTypes: true })
  .filter((entry) => entry.isDirectory() && entry.name !== 'testing')
  .map(({ name }) => name)
  .sort();

describe('one folder holds one insect', () => {
  it('is named for it, is made known, and has tests that list what is still missing', () => {
    expect(insectEntries.map(({ insect }) => insect.id).sort()).toEqual(folders);
    for (const folder of folders) {
      expect(readdirSync(new URL(`${folder}/`, here)), folder).toContain('insect.ts');
      expect(readFileSync(new URL(`${folder}/${folder}.test.ts`, here), 'utf8'), folder).toContain('expect(missing(');
    }
  });

  it('holds nothing of another insect', () => {
    for (const { insect, models, rules, recognition } of insectEntries)
      for (const entry of [...models, ...rules, ...recognition]) expect(entry.insect, entry.id).toBe(insect.id);
  });

  it('says where to look only on crops of the insect', () => {
    for (const { insect, recognition } of insectEntries)
      for (const place of recognition) for (const crop of place.crops) expect(insect.hosts, place.id).toContain(crop);
  });
});

describe('samples', () => {
  it('are as large as their source says, or say that the size is common practice', () => {
    for (const entry of catalogue.rules) {
      if (entry.kind !== 'infestation' || entry.examine.places === null) continue;
      expect(entry.examine.places * entry.examine.unitsPerPlace!, entry.id).toBe(entry.examine.units);
    }
  });
});

describe('which rules hold for a field', () => {
  it('none for a crop or insect that the catalogue does not know', () => {
    expect(rulesFor({ crop: 'okra', insect: 'helicoverpa-zea' })).toEqual([]);
    expect(rulesFor({ crop: 'sweet-corn', insect: 'moth-x' })).toEqual([]);
    expect([insectById('moth-x'), cropById('okra'), modelById('x'), ruleById('x')]).toEqual([null, null, null, null]);
  });
});
