import { expect, it } from 'vitest';
import { modelById, ruleById } from '../../index.ts';
import { missing } from '../testing/missing.ts';
import { plutellaXylostella } from './insect.ts';

it('diamondback moth counts after transplanting from larvae on 5 % of plants (Univ. Delaware Weekly Crop Update)', () => {
  expect(ruleById('brassicas-diamondback-larvae')).toMatchObject({
    kind: 'infestation',
    may: 'decide',
    unit: 'plants',
    sign: 'infested',
    share: 0.05,
    stages: ['vegetative'],
    standing: 'published',
  });
});

it.each([
  ['plutella-xylostella-on-cauliflower', 7.06, 263.7, 'Golizadeh et al. 2007'],
  ['plutella-xylostella-on-cabbage', 7.84, 261.6, 'Golizadeh et al. 2007'],
  ['plutella-xylostella-subtropical', 6.3, 312.5, 'Marchioro & Foerster 2011'],
])('%s: above %d °C from egg to adult in %d °C·d (%s)', (id, lower, sum, source) => {
  const model = modelById(id)!;
  expect(model).toMatchObject({
    heat: { lower, unit: 'C' },
    events: [{ event: 'next-adults', from: sum }],
    standing: 'published',
  });
  expect(model.source).toContain(source);
});

it('what the catalogue still lacks of it', () => {
  expect(missing(plutellaXylostella)).toEqual(['source of its crops', 'rule for a catch: brassicas']);
});
