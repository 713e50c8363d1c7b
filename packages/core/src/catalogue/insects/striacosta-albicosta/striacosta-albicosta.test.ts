import { describe, expect, it } from 'vitest';
import { celsius } from '../../../base/temperature.ts';
import { degreeDays as degreeDaysOf } from '../../../heat/index.ts';
import { catalogue, modelById, ruleById } from '../../index.ts';
import { missing } from '../testing/missing.ts';
import { striacostaAlbicosta } from './insect.ts';

describe('western bean cutworm, as published', () => {
  it.each([
    [55, 65, 22],
    [55, 70, 24.5],
    [50, 85, 29.5],
  ])('a day of %d to %d °F gives %d °F·d (worked days of Univ. Nebraska CropWatch)', (low, high, degreeDays) => {
    const { heat } = modelById('striacosta-albicosta-flight')!;
    // Counted in °C·d.
    expect(degreeDaysOf(heat, celsius(low, 'F'), celsius(high, 'F')) * 1.8).toBeCloseTo(degreeDays, 9);
  });

  it('a quarter of the flight is out at 2577 °F·d from 1 March (Hanson et al. 2015), from when egg masses are looked for', () => {
    expect(modelById('striacosta-albicosta-flight')).toMatchObject({
      start: { kind: 'calendar', month: 3, date: 1 },
      events: [{ event: 'flight-25-percent', from: 2577 }],
    });
    expect(ruleById('corn-western-bean-cutworm-eggs')).toMatchObject({ may: 'send-scouting', from: 2577 });
  });

  it('no figure of its catch decides anything (New York State IPM: its catch tells when to look)', () => {
    const own = catalogue.rules.filter(({ insect }) => insect === 'striacosta-albicosta');
    expect(own.filter(({ may }) => may === 'decide')).toEqual([]);
  });
});

it('what the catalogue still lacks of it', () => {
  expect(missing(striacostaAlbicosta)).toEqual([
    'source of its crops',
    'biofix',
    'rule for a catch: sweet-corn, field-corn',
    'rule for a sample: sweet-corn, field-corn',
  ]);
});
