import { expect, it } from 'vitest';
import { missing } from '../testing/missing.ts';
import { diatraeaGrandiosella } from './insect.ts';

it('what the catalogue still lacks of it', () => {
  expect(missing(diatraeaGrandiosella)).toEqual([
    'source of its crops',
    'biofix',
    'model',
    'rule for a catch: field-corn, sweet-corn',
    'rule for a sample: field-corn, sweet-corn',
  ]);
});
