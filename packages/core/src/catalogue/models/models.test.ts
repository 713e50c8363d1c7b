import { describe, expect, it } from 'vitest';
import { insectById, modelById, modelsFor, ruleById } from '../index.ts';

describe('phenology as published', () => {
  it('the life stages of corn earworm add up to the printed totals within their last digit (USDA ARS-S-127, 1976)', () => {
    const model = modelById('helicoverpa-zea-life-stages')!;
    const lasts = Object.fromEntries(model.stages.map((stage) => [stage.stage, stage.lasts]));
    expect(lasts).toEqual({ egg: 72.9, 'small-larva': 147.1, 'large-larva': 217.1, pupa: 323.1, 'pre-egg-laying-adult': 112.7 });
    const toAdult = 72.9 + 147.1 + 217.1 + 323.1;
    const at = (event: string) => model.events.find((entry) => entry.event === event)!.from;
    // Four figures rounded to 0.1 may be off by 4 × 0.05, the printed total by 0.05 more.
    expect(Math.abs(toAdult - at('next-adults'))).toBeLessThanOrEqual(0.25);
    expect(toAdult).toBeCloseTo(760.2, 9);
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

  it.each([
    ['ostrinia-nubilalis-calendar', 'modified-average', 50, 86, [374, 450, 631, 800, 1400, 1450, 1550, 1550, 1733]], // Apple, UW
    ['ostrinia-nubilalis-first-capture', 'simple-average', 50, null, [212]], // Illinois 2007
    ['agrotis-ipsilon-cutting-stages', 'simple-average', 50, null, [91, 312, 365, 431, 641]], // extension cutting table
    ['agrotis-ipsilon-first-cutting', 'simple-average', 50, null, [300]],
    ['agrotis-ipsilon-calendar', 'single-sine', 50.7, null, [90, 225]], // Story et al. 1984
    ['melittia-cucurbitae-emergence', 'simple-average', 50, null, [1000]], // SDSU 2021
    ['melittia-cucurbitae-life-stages', 'simple-average', 50, null, [245]],
    ['cydia-pomonella-from-biofix', 'single-sine', 50, 88, [250, 350, 550, 1060, 1250, 1600, 1700]], // MSU
    ['helicoverpa-zea-life-stages', 'single-sine', 54.7, 91.9, [760.1, 872.8]], // USDA ARS-S-127
  ])('%s is counted and dated as its source has it', (id, method, lower, upper, starts) => {
    const model = modelById(id)!;
    expect(model.heat).toMatchObject({ method, lower, upper, unit: 'F' });
    expect(model.events.map((event) => event.from)).toEqual(starts);
  });

  it('life stages measured in the laboratory or on one crop keep their figures', () => {
    const lasts = (id: string) => modelById(id)!.stages.map((stage) => stage.lasts);
    expect(lasts('agrotis-ipsilon-life-stages')).toEqual([93.6, 635.4, 428.4]); // Luckmann et al. 1976
    expect(lasts('helicoverpa-zea-larva-cotton')).toEqual([360]); // Coop, Croft & Drapek 1993
    expect(lasts('melittia-cucurbitae-life-stages')).toEqual([660, 745]); // SDSU 2021
    expect(modelById('helicoverpa-zea-life-stages')!.heat.cutoff).toBe('intermediate');
  });

  it('black cutworm starts at nine moths in two nights, codling moth at a catch that the next one confirms', () => {
    expect(insectById('agrotis-ipsilon')?.biofix?.rule).toEqual({ kind: 'intense-capture', moths: 9, nights: 2 });
    expect(insectById('cydia-pomonella')?.biofix).toMatchObject({
      rule: { kind: 'sustained-catch', followedBy: 1 },
      standing: 'published',
    });
    expect(insectById('helicoverpa-zea')?.biofix?.standing).toBe('practice');
  });

  it('fall armyworm has no model, and none is made up', () => {
    expect(modelsFor('spodoptera-frugiperda')).toEqual([]);
    expect(insectById('spodoptera-frugiperda')?.biofix).toBeNull();
  });
});
