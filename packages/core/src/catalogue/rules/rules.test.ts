import { describe, expect, it } from 'vitest';
import { fromCelsius } from '../../base/temperature.ts';
import { catalogue, cropById, insectById, modelById, ruleById, rulesFor } from '../index.ts';
import type { CatchTableRule, InfestationRule } from '../types.ts';

const { rules, designRatios } = catalogue;
const rule = <K extends string>(id: string, kind: K) => {
  const found = ruleById(id);
  if (found?.kind !== kind) throw new Error(`${id} is no ${kind}`);
  return found as Extract<typeof found, { kind: K }>;
};

describe('action rules as published', () => {
  it.each([
    ['sweet-corn-earworm-wire-cone', 'wire-cone', 1, 'night', 'Purdue'],
    ['sweet-corn-corn-borer-catch', null, 35, 'week', 'UConn'],
    ['sweet-corn-fall-armyworm-catch', null, 50, 'week', 'UConn'],
    ['sweet-corn-fall-armyworm-catch-maine', null, 3, 'week', 'Maine'],
    ['squash-vine-borer-bush', null, 5, 'week', 'UNH'],
    ['squash-vine-borer-vining', null, 12, 'week', 'UNH'],
    ['potato-corn-borer-catch', null, 60, 'week', 'Maine'],
  ])('catch threshold %s: design %s, %d per %s (%s)', (id, design, threshold, per, source) => {
    const found = rule(id, 'catch-threshold');
    expect(found).toMatchObject({ design, threshold, per, standing: 'published' });
    expect(found.source).toContain(source);
  });

  it('field corn in fresh silk nearby raises the wire cone threshold to ten a night', () => {
    expect(rule('sweet-corn-earworm-wire-cone', 'catch-threshold').unless).toEqual({
      nearbyCrop: 'field-corn',
      stages: ['silk'],
      threshold: 10,
    });
  });

  it.each([
    ['sweet-corn-corn-borer-whorl', 'plants', 'infested', 0.3, null],
    ['sweet-corn-corn-borer-tassel', 'plants', 'infested', 0.15, null],
    ['sweet-corn-fall-armyworm-plants', 'plants', 'infested', 0.1, null],
    ['sweet-corn-earworm-ears', 'ears', 'infested', 0.05, 0.1],
    ['tomato-fruitworm-eggs', 'plants', 'eggs', 0.1, null],
    ['tomato-fruitworm-fruit', 'fruit', 'damaged', 0.03, null],
    ['potato-corn-borer-egg-masses', 'plants', 'egg-masses', 1 / 15, null],
  ])('infestation %s: %s %s at %d', (id, unit, sign, share, shareHigh) => {
    expect(rule(id, 'infestation')).toMatchObject({ unit, sign, share, shareHigh, standing: 'published' });
  });

  it('fall armyworm and European corn borer together count from 15 %', () => {
    const found: InfestationRule = rule('sweet-corn-fall-armyworm-plants', 'infestation');
    expect(found.combinedWith).toEqual({ insect: 'ostrinia-nubilalis', share: 0.15 });
  });

  it('samples are as large as their source says, or say that the size is common practice', () => {
    expect(rule('sweet-corn-earworm-ears', 'infestation').examine).toEqual({ places: 5, unitsPerPlace: 20, units: 100 });
    expect(rule('tomato-fruitworm-eggs', 'infestation').examine).toMatchObject({ units: 20, unitsHigh: 30 });
    expect(rule('sweet-corn-corn-borer-whorl', 'infestation').examineSource?.standing).toBe('practice');
    for (const entry of rules) {
      if (entry.kind !== 'infestation' || entry.examine.places === null) continue;
      expect(entry.examine.places * entry.examine.unitsPerPlace!, entry.id).toBe(entry.examine.units);
    }
  });

  describe('the mesh cone table for sweet corn in silk (UConn, reviewed 2012)', () => {
    const table: CatchTableRule = rule('sweet-corn-earworm-mesh-cone', 'catch-table');

    it('gives six, five, four and three days, the last only above thirteen a night', () => {
      expect(table.tiers.map((tier) => [tier.from, tier.exclusive, tier.intervalDays])).toEqual([
        [0.2, false, 6],
        [0.5, false, 5],
        [1, false, 4],
        [13, true, 3],
      ]);
      expect(table).toMatchObject({ design: 'mesh-cone', harvestStopDays: 5 });
    });

    it('says the same per night and per week', () => {
      table.tiers.forEach((tier, i) => {
        expect(tier.from * 7).toBeCloseTo([1.4, 3.5, 7, 91][i]!, 9);
      });
    });

    it('adds a day below 80 °F and takes one off above 85 °F', () => {
      const changes = table.adjustments.map((change) => [
        change.when,
        Math.round(fromCelsius(change.temperatureC, 'F') * 1e9) / 1e9,
        change.days,
        change.addDays,
      ]);
      expect(changes).toEqual([
        ['maxima-below', 80, 2, 1],
        ['maxima-above', 85, 3, -1],
      ]);
      expect(table.adjustments[1]?.note?.en).toContain('common practice, no source');
    });
  });

  it.each([
    ['sweet-corn-corn-borer-heat-1', 800, 1000],
    ['sweet-corn-corn-borer-heat-2', 1550, 2100],
    ['corn-black-cutworm-cutting', 300, 641],
    ['squash-vine-borer-hatch', 245, 300],
  ])('heat says to scout: %s from %d to %d °F·d', (id, from, to) => {
    expect(rule(id, 'heat-scout')).toMatchObject({ from, to });
  });

  it('a mesh cone catches a third to a half of what a wire cone does', () => {
    expect(designRatios).toMatchObject([
      { of: 'mesh-cone', against: 'wire-cone', low: 1 / 3, high: 1 / 2, standing: 'published' },
    ]);
  });
});

describe('which rules hold for a field', () => {
  const ids = (crop: string, insect: string, growthHabit?: string | null) =>
    rulesFor({ crop, insect, ...(growthHabit === undefined ? {} : { growthHabit }) })
      .filter((entry) => entry.kind === 'catch-threshold')
      .map((entry) => entry.id);

  it('bush and vining squash have their own threshold', () => {
    expect(ids('squash', 'melittia-cucurbitae', 'Bush')).toEqual(['squash-vine-borer-bush']);
    expect(ids('pumpkin', 'melittia-cucurbitae', 'vining')).toEqual(['squash-vine-borer-vining']);
  });

  it('squash of unknown habit gets both, the stricter first', () => {
    for (const habit of [null, undefined, 'semi'])
      expect(ids('squash', 'melittia-cucurbitae', habit)).toEqual(['squash-vine-borer-bush', 'squash-vine-borer-vining']);
  });

  it('of two regions the preferred one comes first', () => {
    expect(ids('sweet-corn', 'spodoptera-frugiperda')).toEqual([
      'sweet-corn-fall-armyworm-catch',
      'sweet-corn-fall-armyworm-catch-maine',
    ]);
  });

  it('a crop or insect that the catalogue does not know has no rules', () => {
    expect(rulesFor({ crop: 'okra', insect: 'helicoverpa-zea' })).toEqual([]);
    expect(rulesFor({ crop: 'sweet-corn', insect: 'moth-x' })).toEqual([]);
    expect([insectById('moth-x'), cropById('okra'), modelById('x'), ruleById('x')]).toEqual([null, null, null, null]);
  });
});
