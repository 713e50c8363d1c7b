import { describe, expect, it } from 'vitest';
import { modelById, ruleById } from '../../index.ts';
import { missing } from '../testing/missing.ts';
import { ostriniaNubilalis } from './insect.ts';

describe('European corn borer, as published', () => {
  it('is dated from 1 January by modified averages between 50 and 86 °F (Apple, Univ. Wisconsin)', () => {
    const model = modelById('ostrinia-nubilalis-calendar')!;
    expect(model.heat).toMatchObject({ method: 'modified-average', lower: 50, upper: 86, unit: 'F' });
    expect(model.events.map((event) => event.from)).toEqual([374, 450, 631, 800, 1400, 1450, 1550, 1550, 1733]);
    expect(ruleById('sweet-corn-corn-borer-heat-1')).toMatchObject({ from: 800, to: 1000 });
    expect(ruleById('sweet-corn-corn-borer-heat-2')).toMatchObject({ from: 1550, to: 2100 });
  });

  it('has first instars 212 °F·d after the first capture (Illinois IPM Bulletin 2007)', () => {
    const model = modelById('ostrinia-nubilalis-first-capture')!;
    expect(model.heat).toMatchObject({ method: 'simple-average', lower: 50, upper: null, unit: 'F' });
    expect(model.events).toMatchObject([{ event: 'small-larvae', from: 212 }]);
  });

  it('counts in sweet corn from 35 moths a trap and week, 30 % of plants at whorl, 15 % before tassel (UConn)', () => {
    expect(ruleById('sweet-corn-corn-borer-catch')).toMatchObject({
      design: null,
      threshold: 35,
      per: 'week',
      standing: 'published',
    });
    const plants = { unit: 'plants', sign: 'infested', standing: 'published', examineSource: { standing: 'practice' } };
    expect(ruleById('sweet-corn-corn-borer-whorl')).toMatchObject({ ...plants, share: 0.3 });
    expect(ruleById('sweet-corn-corn-borer-tassel')).toMatchObject({ ...plants, share: 0.15 });
  });

  it('counts in potato from 60 moths in 7 days, or an egg mass per 15 plants (Univ. Maine)', () => {
    expect(ruleById('potato-corn-borer-catch')).toMatchObject({
      design: null,
      threshold: 60,
      per: 'week',
      standing: 'published',
    });
    expect(ruleById('potato-corn-borer-egg-masses')).toMatchObject({
      unit: 'plants',
      sign: 'egg-masses',
      share: 1 / 15,
      standing: 'published',
    });
  });
});

it('what the catalogue still lacks of it', () => {
  expect(missing(ostriniaNubilalis)).toEqual([
    'source of its crops',
    'rule for a catch: field-corn, pepper',
    'rule for a sample: field-corn, pepper',
  ]);
});
