import { expect, it } from 'vitest';
import { missing } from '../testing/missing.ts';
import { phthorimaeaOperculella } from './insect.ts';

it('what the catalogue still lacks of it', () => {
  expect(missing(phthorimaeaOperculella)).toEqual([
    'source of its crops',
    'biofix',
    'model',
    'rule for a catch: potato',
    'rule for a sample: potato',
  ]);
});
