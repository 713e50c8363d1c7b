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

  it('develops above thresholds of its stages (du Plessis et al. 2020); the sums are from memory, say so and date nothing', () => {
    expect(
      modelsFor('spodoptera-frugiperda').map(({ heat, stages, events }) => [heat.lower, stages[0]?.lasts ?? events[0]!.from]),
    ).toEqual([
      [13.01, 35.7],
      [12.12, 204.6],
      [13.06, 150.5],
      [12.57, 391.6],
    ]);
    for (const model of modelsFor('spodoptera-frugiperda'))
      expect(model).toMatchObject({ standing: 'memory', start: { kind: 'stage' } });
    expect(insectById('spodoptera-frugiperda')?.biofix).toBeNull();
  });
});

it('what the catalogue still lacks of it', () => {
  expect(missing(spodopteraFrugiperda)).toEqual([
    'source of its crops',
    'biofix',
    'rule for a catch: field-corn',
    'rule for a sample: field-corn',
  ]);
});
