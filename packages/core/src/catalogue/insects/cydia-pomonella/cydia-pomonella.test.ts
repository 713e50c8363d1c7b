import { describe, expect, it } from 'vitest';
import { insectById, modelById } from '../../index.ts';
import { missing } from '../testing/missing.ts';
import { cydiaPomonella } from './insect.ts';

describe('codling moth, as published (Michigan State Univ. Extension)', () => {
  it('starts at a catch that is followed by a catch on the next date too', () => {
    expect(insectById('cydia-pomonella')?.biofix).toMatchObject({
      rule: { kind: 'sustained-catch', followedBy: 1 },
      standing: 'published',
    });
  });

  it('is dated above 50 °F from there: hatch 250, 20 % hatched 350, peak laying 550, second flight from 1060', () => {
    const model = modelById('cydia-pomonella-from-biofix')!;
    expect(model.heat).toMatchObject({ method: 'single-sine', lower: 50, upper: 88, unit: 'F' });
    expect(model.events.map((event) => event.from)).toEqual([250, 350, 550, 1060, 1250, 1600, 1700]);
  });
});

it('what the catalogue still lacks of it', () => {
  expect(missing(cydiaPomonella)).toEqual([
    'source of its crops',
    'look-alikes',
    'rule for a catch: apple',
    'rule for a sample: apple',
  ]);
});
