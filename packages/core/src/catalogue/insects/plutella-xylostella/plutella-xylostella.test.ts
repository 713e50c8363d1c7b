import { expect, it } from 'vitest';
import { ruleById } from '../../index.ts';
import { missing } from '../testing/missing.ts';
import { plutellaXylostella } from './insect.ts';

it('diamondback moth counts after transplanting from larvae on 5 % of plants (Univ. Delaware Weekly Crop Update)', () => {
  expect(ruleById('brassicas-diamondback-larvae')).toMatchObject({
    kind: 'infestation',
    may: 'decide',
    unit: 'plants',
    sign: 'infested',
    share: 0.05,
    stages: ['vegetative'],
    standing: 'published',
  });
});

it('what the catalogue still lacks of it', () => {
  expect(missing(plutellaXylostella)).toEqual([
    'source of its crops',
    'biofix',
    'look-alikes',
    'model',
    'rule for a catch: brassicas',
  ]);
});
