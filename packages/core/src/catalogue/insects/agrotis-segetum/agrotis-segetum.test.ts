import { expect, it } from 'vitest';
import { missing } from '../testing/missing.ts';
import { agrotisSegetum } from './insect.ts';

it('what the catalogue still lacks of it', () => {
  expect(missing(agrotisSegetum)).toEqual([
    'source of its crops',
    'biofix',
    'model',
    'rule for a catch: beet, lettuce, leek, potato',
    'rule for a sample: beet, lettuce, leek, potato',
  ]);
});
