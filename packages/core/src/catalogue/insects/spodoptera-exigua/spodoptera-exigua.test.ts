import { expect, it } from 'vitest';
import { modelById } from '../../index.ts';
import { missing } from '../testing/missing.ts';
import { spodopteraExigua } from './insect.ts';

it('its model is from memory, says so, and no rule acts on it', () => {
  expect(modelById('spodoptera-exigua-generation')?.standing).toBe('memory');
  expect(spodopteraExigua.rules).toEqual([]);
});

it('what the catalogue still lacks of it', () => {
  expect(missing(spodopteraExigua)).toEqual([
    'source of its crops',
    'rule for a catch: tomato, pepper, beet, onion',
    'rule for a sample: tomato, pepper, beet, onion',
  ]);
});
