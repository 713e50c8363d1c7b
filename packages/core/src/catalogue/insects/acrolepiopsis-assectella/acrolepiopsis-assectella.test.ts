import { expect, it } from 'vitest';
import { modelById } from '../../index.ts';
import { missing } from '../testing/missing.ts';
import { acrolepiopsisAssectella } from './insect.ts';

it('leek moth develops from egg to adult in 444.6 °C·d above 7 °C (Mason et al. 2010)', () => {
  expect(modelById('acrolepiopsis-assectella-generation')).toMatchObject({
    heat: { lower: 7, upper: null, unit: 'C' },
    events: [{ event: 'next-adults', from: 444.6 }],
    standing: 'published',
  });
});

it('what the catalogue still lacks of it', () => {
  expect(missing(acrolepiopsisAssectella)).toEqual([
    'source of its crops',
    'look-alikes',
    'rule for a catch: leek, onion, garlic',
    'rule for a sample: leek, onion, garlic',
  ]);
});
