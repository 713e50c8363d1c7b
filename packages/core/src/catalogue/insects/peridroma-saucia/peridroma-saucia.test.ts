import { expect, it } from 'vitest';
import { missing } from '../testing/missing.ts';
import { peridromaSaucia } from './insect.ts';

it('what the catalogue still lacks of it', () => {
  expect(missing(peridromaSaucia)).toEqual([
    'source of its crops',
    'biofix',
    'model',
    'rule for a catch: tomato, potato',
    'rule for a sample: tomato, potato',
  ]);
});
