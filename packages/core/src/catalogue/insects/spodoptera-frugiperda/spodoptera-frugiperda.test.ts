import { describe, expect, it } from 'vitest';
import { insectById, modelsFor, ruleById } from '../../index.ts';
import { missing } from '../testing/missing.ts';
import { spodopteraFrugiperda } from './insect.ts';

describe('fall armyworm, as published', () => {
  it('counts from 50 moths a week in the Northeast and from 3 in Maine: rules differ by region', () => {
    const week = { kind: 'catch-threshold', design: null, per: 'week', standing: 'published' };
    expect(ruleById('sweet-corn-fall-armyworm-catch')).toMatchObject({
      ...week,
      threshold: 50,
      region: 'Northeastern United States',
    });
    expect(ruleById('sweet-corn-fall-armyworm-catch-maine')).toMatchObject({ ...week, threshold: 3, region: 'Maine' });
  });

  it('counts from 10 % of plants, together with European corn borer from 15 % (UConn)', () => {
    expect(ruleById('sweet-corn-fall-armyworm-plants')).toMatchObject({
      share: 0.1,
      stages: ['whorl', 'tassel'],
      combinedWith: { insect: 'ostrinia-nubilalis', share: 0.15 },
      standing: 'published',
    });
  });

  it('has no model, and none is made up', () => {
    expect(modelsFor('spodoptera-frugiperda')).toEqual([]);
    expect(insectById('spodoptera-frugiperda')?.biofix).toBeNull();
  });
});

it('what the catalogue still lacks of it', () => {
  expect(missing(spodopteraFrugiperda)).toEqual([
    'source of its crops',
    'biofix',
    'look-alikes',
    'model',
    'rule for a catch: field-corn',
    'rule for a sample: field-corn',
  ]);
});
