import { describe, expect, it } from 'vitest';
import { modelById, ruleById, rulesFor } from '../../index.ts';
import { missing } from '../testing/missing.ts';
import { melittiaCucurbitae } from './insect.ts';

describe('squash vine borer, as published', () => {
  it('emerges at about 1000 °F·d; eggs hatch after 245–300, larva 660, pupa 745 (South Dakota State Univ. 2021)', () => {
    const emergence = modelById('melittia-cucurbitae-emergence')!;
    expect(emergence.heat).toMatchObject({ method: 'simple-average', lower: 50, upper: null, unit: 'F' });
    expect(emergence.events).toMatchObject([{ event: 'adult-emergence', from: 1000, approximate: true }]);
    const stages = modelById('melittia-cucurbitae-life-stages')!;
    expect(stages.events).toMatchObject([{ event: 'egg-hatch', from: 245, to: 300 }]);
    expect(stages.stages.map((stage) => stage.lasts)).toEqual([660, 745]);
    expect(ruleById('squash-vine-borer-hatch')).toMatchObject({ from: 245, to: 300 });
  });

  const catchRules = (crop: string, growthHabit?: string | null) =>
    rulesFor({ crop, insect: 'melittia-cucurbitae', ...(growthHabit === undefined ? {} : { growthHabit }) })
      .filter((rule) => rule.kind === 'catch-threshold')
      .map((rule) => [rule.id, rule.threshold, rule.per]);
  const bush = ['squash-vine-borer-bush', 5, 'week'];
  const vining = ['squash-vine-borer-vining', 12, 'week'];

  it('counts from 5 moths a week on bush kinds, 12 on vining ones (UNH Extension)', () => {
    expect(catchRules('squash', 'Bush')).toEqual([bush]);
    expect(catchRules('pumpkin', 'vining')).toEqual([vining]);
  });

  it('on squash of unknown habit by both, the stricter first', () => {
    for (const habit of [null, undefined, 'semi']) expect(catchRules('squash', habit)).toEqual([bush, vining]);
  });
});

it('what the catalogue still lacks of it', () => {
  expect(missing(melittiaCucurbitae)).toEqual(['source of its crops', 'look-alikes', 'rule for a sample: squash, pumpkin']);
});
