import { expect, it } from 'vitest';
import { missing } from '../testing/missing.ts';
import { trichoplusiaNi } from './insect.ts';

it('what the catalogue still lacks of it', () => {
  expect(missing(trichoplusiaNi)).toEqual([
    'source of its crops',
    'biofix',
    'model',
    'rule for a catch: brassicas, lettuce',
    'rule for a sample: brassicas, lettuce',
  ]);
});
