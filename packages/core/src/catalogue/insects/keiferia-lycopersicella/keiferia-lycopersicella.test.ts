import { expect, it } from 'vitest';
import { modelById } from '../../index.ts';
import { missing } from '../testing/missing.ts';
import { keiferiaLycopersicella } from './insect.ts';

it('its model is from memory, says so, and no rule acts on it', () => {
  expect(modelById('keiferia-lycopersicella-generation')?.standing).toBe('memory');
  expect(keiferiaLycopersicella.rules).toEqual([]);
});

it('what the catalogue still lacks of it', () => {
  expect(missing(keiferiaLycopersicella)).toEqual([
    'source of its crops',
    'rule for a catch: tomato',
    'rule for a sample: tomato',
  ]);
});
