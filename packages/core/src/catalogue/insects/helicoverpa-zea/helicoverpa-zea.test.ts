import { describe, expect, it } from 'vitest';
import { fromCelsius } from '../../../base/temperature.ts';
import { insectById, modelById, ruleById } from '../../index.ts';
import type { CatchTableRule } from '../../types.ts';
import { missing } from '../testing/missing.ts';
import { helicoverpaZea } from './insect.ts';

describe('corn earworm, as published', () => {
  it('the life stages add up to the printed totals within their last digit (USDA ARS-S-127, 1976)', () => {
    const model = modelById('helicoverpa-zea-life-stages')!;
    const lasts = Object.fromEntries(model.stages.map((stage) => [stage.stage, stage.lasts]));
    expect(lasts).toEqual({ egg: 72.9, 'small-larva': 147.1, 'large-larva': 217.1, pupa: 323.1, 'pre-egg-laying-adult': 112.7 });
    expect(model.heat).toMatchObject({ method: 'single-sine', cutoff: 'intermediate', lower: 54.7, upper: 91.9, unit: 'F' });
    const toAdult = 72.9 + 147.1 + 217.1 + 323.1;
    const at = (event: string) => model.events.find((entry) => entry.event === event)!.from;
    // Four figures rounded to 0.1 may be off by 4 × 0.05, the printed total by 0.05 more.
    expect(Math.abs(toAdult - at('next-adults'))).toBeLessThanOrEqual(0.25);
    expect(toAdult).toBeCloseTo(760.2, 9);
    expect(at('next-adults')).toBe(760.1);
    expect(at('next-adults') + 112.7).toBeCloseTo(at('first-eggs'), 9);
    expect(at('first-eggs')).toBe(872.8);
  });

  it('the windows counted from a catch are sums of the published stages', () => {
    const window = (event: string) => {
      const found = modelById('helicoverpa-zea-from-catch')!.events.find((entry) => entry.event === event)!;
      return [found.from, found.to];
    };
    expect(window('egg-hatch')).toEqual([72.9, 185.6]);
    expect(window('small-larvae')).toEqual([72.9, 332.7]);
    expect(ruleById('tomato-fruitworm-heat')).toMatchObject({ from: 72.9, to: 332.7 });
  });

  it('larvae on cotton take 360 °F·d above 54.5 °F (Coop, Croft & Drapek 1993)', () => {
    expect(modelById('helicoverpa-zea-larva-cotton')).toMatchObject({
      heat: { lower: 54.5, upper: null },
      stages: [{ stage: 'larva', lasts: 360 }],
    });
  });

  it('a flight starts with a catch that the next visit confirms, by common practice', () => {
    expect(insectById('helicoverpa-zea')?.biofix).toMatchObject({
      rule: { kind: 'sustained-catch', followedBy: 1 },
      standing: 'practice',
    });
  });
});

describe('rules for corn earworm in sweet corn', () => {
  const table = ruleById('sweet-corn-earworm-mesh-cone') as CatchTableRule;

  it('a mesh cone gives six, five, four and three days, the last only above thirteen a night (UConn, reviewed 2012)', () => {
    expect(table.tiers.map((tier) => [tier.from, tier.exclusive, tier.intervalDays])).toEqual([
      [0.2, false, 6],
      [0.5, false, 5],
      [1, false, 4],
      [13, true, 3],
    ]);
    expect(table).toMatchObject({ kind: 'catch-table', design: 'mesh-cone', harvestStopDays: 5, standing: 'published' });
  });

  it('and says the same per week: 1.4, 3.5, 7, 91', () => {
    table.tiers.forEach((tier, i) => {
      expect(tier.from * 7).toBeCloseTo([1.4, 3.5, 7, 91][i]!, 9);
    });
  });

  it('adds a day below 80 °F; the day taken off above 85 °F has no source that can be named', () => {
    const changes = table.adjustments.map((change) => [
      change.when,
      Math.round(fromCelsius(change.temperatureC, 'F') * 1e9) / 1e9,
      change.days,
      change.addDays,
      change.standing,
    ]);
    expect(changes).toEqual([
      ['maxima-below', 80, 2, 1, 'published'],
      ['maxima-above', 85, 3, -1, 'practice'],
    ]);
    expect(table.adjustments[1]?.note?.en).toContain('author and year not at hand');
  });

  it('a wire cone decides at 1 a night, at 10 while field corn nearby is in fresh silk (Purdue)', () => {
    expect(ruleById('sweet-corn-earworm-wire-cone')).toMatchObject({
      kind: 'catch-threshold',
      design: 'wire-cone',
      threshold: 1,
      per: 'night',
      standing: 'published',
      unless: { nearbyCrop: 'field-corn', stages: ['silk'], threshold: 10 },
    });
  });

  it('five places of twenty ears, from 5 to 10 % with eggs or larvae: read, but no source that can be named', () => {
    const ears = ruleById('sweet-corn-earworm-ears');
    expect(ears).toMatchObject({ unit: 'ears', sign: 'infested', share: 0.05, shareHigh: 0.1, standing: 'practice' });
    expect(ears).toMatchObject({ examine: { places: 5, unitsPerPlace: 20, units: 100 } });
    expect(ears?.note?.en).toContain('author and year are not at hand');
  });
});

describe('rules for tomato fruitworm (Univ. Delaware, citing Kuhar et al. 2006)', () => {
  it('20 to 30 plants, a decision from an egg on 10 % of them', () => {
    expect(ruleById('tomato-fruitworm-eggs')).toMatchObject({
      unit: 'plants',
      sign: 'eggs',
      share: 0.1,
      standing: 'published',
      examine: { units: 20, unitsHigh: 30 },
    });
  });

  it('later, 3 damaged per 100 unripe fruit', () => {
    expect(ruleById('tomato-fruitworm-fruit')).toMatchObject({
      unit: 'fruit',
      sign: 'damaged',
      share: 0.03,
      standing: 'published',
    });
  });
});

it('what the catalogue still lacks of it', () => {
  expect(missing(helicoverpaZea)).toEqual([
    'source of its crops',
    'rule for a catch: field-corn, tomato, pepper',
    'rule for a sample: field-corn, pepper',
  ]);
});
