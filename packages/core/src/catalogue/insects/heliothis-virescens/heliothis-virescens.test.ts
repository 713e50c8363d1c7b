import { expect, it } from 'vitest';
import { missing } from '../testing/missing.ts';
import { heliothisVirescens } from './insect.ts';

it('what the catalogue still lacks of it', () => {
  expect(missing(heliothisVirescens)).toEqual([
    'source of its crops',
    'biofix',
    'model',
    'rule for a catch: tomato, pepper',
    'rule for a sample: tomato, pepper',
  ]);
});
