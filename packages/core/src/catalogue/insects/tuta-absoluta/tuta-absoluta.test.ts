import { expect, it } from 'vitest';
import { modelById } from '../../index.ts';
import { missing } from '../testing/missing.ts';
import { tutaAbsoluta } from './insect.ts';

it('tomato leafminer develops from egg to adult in 416.7 °C·d above 8.0 °C (Krechemer & Foerster 2015), in 459.6 above 8.14 (a national pest response sheet, 2011)', () => {
  expect(modelById('tuta-absoluta-generation')).toMatchObject({
    heat: { lower: 8.0, upper: 37.3, unit: 'C' },
    events: [{ event: 'next-adults', from: 416.7 }],
    standing: 'published',
  });
  expect(modelById('tuta-absoluta-generation-second')).toMatchObject({
    heat: { lower: 8.14, upper: null, unit: 'C' },
    events: [{ event: 'next-adults', from: 459.6 }],
    standing: 'published',
  });
});

it('what the catalogue still lacks of it', () => {
  expect(missing(tutaAbsoluta)).toEqual(['source of its crops', 'rule for a catch: tomato', 'rule for a sample: tomato']);
});
