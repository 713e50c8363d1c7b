import { expect, it } from 'vitest';
import { modelById } from '../../index.ts';
import { missing } from '../testing/missing.ts';
import { helicoverpaArmigera } from './insect.ts';

it('old-world bollworm develops from egg to adult in 625.0 °C·d above 11.50 °C (Bartekova & Praslicka 2006), in 589.6 above 10.92 by another source', () => {
  expect(modelById('helicoverpa-armigera-generation')).toMatchObject({
    heat: { lower: 11.5, upper: null, unit: 'C' },
    events: [{ event: 'next-adults', from: 625.0 }],
    standing: 'published',
  });
  expect(modelById('helicoverpa-armigera-generation-second')).toMatchObject({
    heat: { lower: 10.92, upper: null, unit: 'C' },
    events: [{ event: 'next-adults', from: 589.6 }],
    standing: 'published',
  });
});

it('its eggs take 64.1 °C·d above 14.83 °C, larvae 344.8 above 11.34, pupae 222.2 above 8.18 (Bartekova & Praslicka 2006)', () => {
  for (const [stage, lower, lasts] of [
    ['egg', 14.83, 64.1],
    ['larva', 11.34, 344.8],
    ['pupa', 8.18, 222.2],
  ] as const)
    expect(modelById(`helicoverpa-armigera-${stage}`)).toMatchObject({
      heat: { lower, upper: null, unit: 'C' },
      start: { kind: 'stage' },
      stages: [{ stage, lasts }],
      standing: 'published',
    });
});

it('what the catalogue still lacks of it', () => {
  expect(missing(helicoverpaArmigera)).toEqual([
    'source of its crops',
    'rule for a catch: tomato, pepper, sweet-corn, field-corn, beans',
    'rule for a sample: tomato, pepper, sweet-corn, field-corn, beans',
  ]);
});
