import { expect, it } from 'vitest';
import { missing } from '../testing/missing.ts';
import { cydiaNigricana } from './insect.ts';

it('what the catalogue still lacks of it', () => {
  expect(missing(cydiaNigricana)).toEqual([
    'source of its crops',
    'biofix',
    'look-alikes',
    'model',
    'rule for a catch: peas',
    'rule for a sample: peas',
  ]);
});
