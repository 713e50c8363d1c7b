import { expect, it } from 'vitest';
import { missing } from '../testing/missing.ts';
import { mythimnaUnipuncta } from './insect.ts';

it('what the catalogue still lacks of it', () => {
  expect(missing(mythimnaUnipuncta)).toEqual([
    'source of its crops',
    'biofix',
    'model',
    'rule for a catch: sweet-corn, field-corn',
    'rule for a sample: sweet-corn, field-corn',
  ]);
});
