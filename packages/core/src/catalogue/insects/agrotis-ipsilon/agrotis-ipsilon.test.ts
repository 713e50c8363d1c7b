import { describe, expect, it } from 'vitest';
import { insectById, modelById, ruleById } from '../../index.ts';
import { missing } from '../testing/missing.ts';
import { agrotisIpsilon } from './insect.ts';

describe('black cutworm, as published', () => {
  it.each([
    ['agrotis-ipsilon-cutting-stages', 'simple-average', 50, [91, 312, 365, 431, 641]], // Univ. Missouri cutting table
    ['agrotis-ipsilon-first-cutting', 'simple-average', 50, [300]], // UW-Madison IPCM 2023
    ['agrotis-ipsilon-calendar', 'single-sine', 50.7, [90, 225]], // Story et al. 1984
  ])('%s is counted and dated as its source has it', (id, method, lower, starts) => {
    const model = modelById(id)!;
    expect(model.heat).toMatchObject({ method, lower, upper: null, unit: 'F' });
    expect(model.events.map((event) => event.from)).toEqual(starts);
  });

  it('in the laboratory takes 93.6, 635.4 and 428.4 °F·d as egg, larva and pupa (Luckmann et al. 1976)', () => {
    expect(modelById('agrotis-ipsilon-life-stages')!.stages.map((stage) => stage.lasts)).toEqual([93.6, 635.4, 428.4]);
  });

  it('starts at nine moths in two nights, and is scouted for from first cutting until cutting stops', () => {
    expect(insectById('agrotis-ipsilon')?.biofix?.rule).toEqual({ kind: 'intense-capture', moths: 9, nights: 2 });
    expect(ruleById('corn-black-cutworm-cutting')).toMatchObject({ kind: 'heat-scout', from: 300, to: 641 });
  });
});

it('what the catalogue still lacks of it', () => {
  expect(missing(agrotisIpsilon)).toEqual([
    'source of its crops',
    'rule for a catch: sweet-corn, field-corn',
    'rule for a sample: sweet-corn, field-corn',
  ]);
});
