import { describe, expect, it } from 'vitest';
import { addDays, day, formatDay } from '../base/day.ts';
import { english, spanish } from '../text/index.ts';
import { adviseAll, prepare, withChecks } from './index.ts';
import {
  adviceOn,
  checkOf,
  evidenceOf,
  fieldOf,
  lureAt,
  nightly,
  programOf,
  ruleOf,
  stageAt,
  steadyWeather,
  trapOf,
  treatmentOf,
} from './test-program.ts';

const silk = { stages: [stageAt('silk', '2025-07-05')], lures: [lureAt('2025-07-01')] };

describe('a threshold is an estimate, not a switch', () => {
  // Purdue Vegetable Crops Hotline: these nights against a threshold of 10 never reach it, yet justify a decision.
  const seven = [9, 7, 5, 9, 6, 7, 7];
  const advice = adviceOn('2025-07-08', {
    ...silk,
    traps: [trapOf({ design: 'wire-cone' })],
    checks: nightly('2025-07-01', seven),
    rules: [ruleOf({ design: 'wire-cone', threshold: 10 })],
  });

  it('sends somebody into the field when nights of 9, 7, 5, 9, 6, 7, 7 add up below a threshold of 10', () => {
    expect(advice.verb).toBe('scout');
    expect(advice.rate).toBe(7);
    expect(advice.because).toContainEqual(expect.objectContaining({ kind: 'threshold', threshold: 10, reached: false }));
    expect(evidenceOf(advice, 'accumulation')[0]).toMatchObject({
      nights: 7,
      perTrap: 50,
      atThreshold: 70,
      share: 50 / 70,
      addsUp: true,
    });
    expect(advice.cautions).toContainEqual({ kind: 'threshold-is-estimate' });
    expect(advice.rule).toMatchObject({ id: 'own-rule', standing: 'own' });
  });

  it('does so too where nobody has written the stage: looking never harms', () => {
    const rules = [ruleOf({ design: 'wire-cone', threshold: 10 })];
    const unknown = adviceOn('2025-07-08', {
      traps: [trapOf({ design: 'wire-cone' })],
      checks: nightly('2025-07-01', seven),
      rules,
    });
    expect(unknown.verb).toBe('scout');
    expect(evidenceOf(unknown, 'missing')[0]).toMatchObject({ what: 'stage' });
  });

  it('keeps watching when the same week is quiet', () => {
    const quiet = adviceOn('2025-07-08', {
      ...silk,
      traps: [trapOf({ design: 'wire-cone' })],
      checks: nightly('2025-07-01', [1, 2, 0, 1, 0, 1, 1]),
      rules: [ruleOf({ design: 'wire-cone', threshold: 10 })],
    });
    expect(quiet.verb).toBe('watch');
    expect(quiet.by).toBe('2025-07-09');
  });
});

describe('the mesh-cone interval table (UConn Sweet Corn IPM Action Thresholds, reviewed 2012)', () => {
  // [moths, nights] → days between protective decisions, at and on both sides of every boundary.
  const cases: [number, number, number | null][] = [
    [0, 7, null],
    [19, 100, null],
    [1, 5, 6],
    [49, 100, 6],
    [1, 2, 5],
    [99, 100, 5],
    [7, 7, 4],
    [13, 1, 4],
    [91, 7, 4],
    [92, 7, 3],
    [14, 1, 3],
  ];
  it.each(cases)('%i moths in %i nights → an interval of %s days', (count, nights, intervalDays) => {
    const hungOn = formatDay(addDays(day('2025-07-20'), -nights));
    const advice = adviceOn('2025-07-20', {
      stages: [stageAt('silk', '2025-07-15')],
      lures: [lureAt(hungOn, 200)],
      traps: [trapOf({ hungOn })],
      checks: [checkOf('2025-07-20', count)],
    });
    expect(advice.rate).toBe(count / nights);
    expect(advice.intervalDays).toBe(intervalDays);
    expect(advice.verb === 'decide').toBe(intervalDays !== null);
    expect(advice.source).toContain('UConn');
  });

  const decided = { ...silk, checks: [checkOf('2025-07-11', 20)] };
  it('is a day longer after cool days and a day shorter after hot ones', () => {
    const on = (tmaxF: number) =>
      adviceOn('2025-07-11', { ...decided, weather: steadyWeather('2025-07-01', '2025-07-10', 55, tmaxF) });
    expect(on(75).intervalDays).toBe(5);
    expect(on(82).intervalDays).toBe(4);
    expect(on(90).intervalDays).toBe(3);
  });

  it('stays as published, and says so, when the weather is not known', () => {
    const advice = adviceOn('2025-07-11', decided);
    expect(advice.intervalDays).toBe(4);
    expect(evidenceOf(advice, 'weather-adjustment').map((item) => item.applied)).toEqual([null, null]);
  });

  it('asks for nothing with fewer than 5 days left to harvest', () => {
    const harvest = (harvestOn: string) => adviceOn('2025-07-11', { ...decided, fields: [fieldOf({ harvestOn })] });
    expect(harvest('2025-07-16').verb).toBe('decide');
    const stopped = harvest('2025-07-15');
    expect(stopped).toMatchObject({ verb: 'none', intervalDays: null });
    expect(stopped.because[0]).toMatchObject({ kind: 'out-of-season', why: 'harvest-stop', days: 5 });
  });
});

describe('what cannot be seen is said, never guessed', () => {
  it('is blind while the only trap is down, and sees again from the day it was put right', () => {
    const checks = [checkOf('2025-07-05', 0), checkOf('2025-07-08', null, { condition: 'unfit' })];
    const down = adviceOn('2025-07-08', { ...silk, checks });
    expect(down).toMatchObject({ verb: 'blind', rate: null, by: '2025-07-08' });
    expect(down.because[0]).toMatchObject({ kind: 'trap-unusable', trapId: 'T1', why: 'unfit', nights: 3 });

    const again = adviceOn('2025-07-11', { ...silk, checks: [...checks, checkOf('2025-07-11', 3)] });
    expect(again.rate).toBe(1);
    expect(evidenceOf(again, 'rate')[0]).toMatchObject({ trapNights: 3, count: 3 });
  });

  it('is blind under a spent lure while the count is low, but not once even the low-reading count reaches the rule', () => {
    const spent = { stages: silk.stages, lures: [lureAt('2025-06-01', 28)], traps: [trapOf({ hungOn: '2025-06-01' })] };
    const low = adviceOn('2025-07-08', { ...spent, checks: [checkOf('2025-07-04', 0), checkOf('2025-07-08', 0)] });
    expect(low.verb).toBe('blind');
    expect(evidenceOf(low, 'lure-spent')[0]).toMatchObject({ trapId: 'T1', ageDays: 37, lifeDays: 28 });
    expect(low.cautions).toContainEqual({ kind: 'reads-low', why: 'spent-lure' });

    const high = adviceOn('2025-07-08', { ...spent, checks: [checkOf('2025-07-04', 3), checkOf('2025-07-08', 12)] });
    expect(high).toMatchObject({ verb: 'decide', intervalDays: 4, confidence: 'low' });
    expect(high.cautions).toContainEqual({ kind: 'reads-low', why: 'spent-lure' });
  });

  it('is blind when nothing is known: no trap, no stage, no weather', () => {
    const bare = { fields: [fieldOf()], traps: [trapOf({ informs: [] })], checks: [] };
    const advice = adviceOn('2025-07-08', bare);
    expect(advice).toMatchObject({ verb: 'blind', rate: null, interval: null, probabilityAbove: null, confidence: null });
    expect(evidenceOf(advice, 'missing').map((item) => item.what)).toEqual(expect.arrayContaining(['trap', 'stage']));
  });

  it('sends somebody to look at the stage when the catch reaches the rule and nobody has seen any', () => {
    const advice = adviceOn('2025-07-08', { lures: silk.lures, checks: [checkOf('2025-07-08', 30)] });
    expect(advice.verb).toBe('scout');
    expect(advice.because[0]).toMatchObject({ kind: 'scouting-asked', why: 'stage-unseen', madeFor: ['silk'] });
    expect(advice.because[1]).toMatchObject({ kind: 'missing', what: 'stage' });
    expect(advice.intervalDays).toBe(4);
  });

  it('is blind when a trap has not been visited for more than eight days', () => {
    const advice = adviceOn('2025-07-20', { ...silk, checks: [checkOf('2025-07-08', 1)] });
    expect(advice.because[0]).toMatchObject({ kind: 'trap-unusable', why: 'overdue', nights: 12 });
    expect(advice.verb).toBe('blind');
  });

  it('is blind where neither the program nor the catalogue has a rule', () => {
    const advice = adviceOn('2025-07-08', {
      fields: [fieldOf({ crop: 'okra' })],
      lures: silk.lures,
      checks: [checkOf('2025-07-08', 30)],
    });
    expect(advice.verb).toBe('blind');
    expect(evidenceOf(advice, 'missing')[0]).toMatchObject({ what: 'rule' });
  });

  it('asks the scout about a count that is lower than what was left in the trap, and is blind on those nights', () => {
    const checks = [checkOf('2025-07-05', 9, { emptied: false }), checkOf('2025-07-08', 4), checkOf('2025-07-11', 3)];
    expect(adviceOn('2025-07-08', { ...silk, checks })).toMatchObject({ verb: 'blind' });
    const later = adviceOn('2025-07-11', { ...silk, checks });
    expect(later.rate).toBe(1);
    expect(evidenceOf(later, 'question')[0]).toMatchObject({ question: 'count-went-down', on: '2025-07-08', got: 4, before: 9 });
    expect(evidenceOf(adviceOn('2025-07-08', { ...silk, checks }), 'trap-unusable')[0]).toMatchObject({ why: 'count-went-down' });
  });

  it('shows a count without a lure record as one of unknown lure age', () => {
    const advice = adviceOn('2025-07-08', { stages: silk.stages, checks: [checkOf('2025-07-08', 0)] });
    expect(advice.verb).toBe('watch');
    expect(evidenceOf(advice, 'lure-unknown')[0]?.trapIds).toEqual(['T1']);
  });
});

describe('the crop decides whether the catch matters', () => {
  const caught = { lures: silk.lures, checks: [checkOf('2025-07-08', 30)] };
  it.each(['whorl', 'tassel', '35', 'BBCH 55'])('sweet corn seen today at %s is out of season for corn earworm', (stage) => {
    const advice = adviceOn('2025-07-08', { ...caught, stages: [stageAt(stage, '2025-07-08')] });
    expect(advice).toMatchObject({ verb: 'none', by: null });
    expect(advice.because[0]).toMatchObject({ kind: 'out-of-season', why: 'stage' });
  });

  it.each(['silk', 'Silking', '65'])('the same catch on sweet corn at %s is a decision', (stage) => {
    expect(adviceOn('2025-07-08', { ...caught, stages: [stageAt(stage)] }).verb).toBe('decide');
  });

  it('may be written as people write it, in fields and in rules', () => {
    const written = { fields: [fieldOf({ crop: 'Sweet corn' })], rules: [ruleOf({ crop: 'sweet_corn', threshold: 20 })] };
    const advice = adviceOn('2025-07-08', { ...caught, ...written, stages: [stageAt('silk')] });
    expect(evidenceOf(advice, 'threshold')[0]).toMatchObject({ ruleId: 'own-rule', threshold: 20 });
  });

  it('a stage from before this planting says nothing about it', () => {
    const fields = [fieldOf({ plantedOn: '2025-07-06' })];
    expect(adviceOn('2025-07-08', { ...caught, fields, stages: [stageAt('silk', '2025-07-05')] }).because[1]).toMatchObject({
      kind: 'missing',
      what: 'stage',
      detail: null,
    });
  });

  it('a field not yet planted, or harvested, is out of season', () => {
    const why = (field: object) => adviceOn('2025-07-08', { ...caught, ...silk, fields: [fieldOf(field)] }).because[0];
    expect(why({ plantedOn: '2025-08-01' })).toMatchObject({ why: 'not-planted', date: '2025-08-01' });
    expect(why({ harvestOn: '2025-07-01' })).toMatchObject({ why: 'harvested' });
  });

  it('an insect that does not live on the crop is a dash, not a worry', () => {
    const squash = fieldOf({ fieldId: 'F2', crop: 'squash', growthHabit: 'bush' });
    const advice = adviceOn(
      '2025-07-08',
      { ...caught, ...silk, fields: [fieldOf(), squash], traps: [trapOf({ insect: 'ostrinia-nubilalis' })] },
      'ostrinia-nubilalis',
      'F2',
    );
    expect(advice.because[0]).toMatchObject({ kind: 'out-of-season', why: 'not-a-host' });
  });
});

describe('two trap designs at one field', () => {
  const traps = [trapOf(), trapOf({ trapId: 'T2', design: 'wire-cone' })];
  const lures = [lureAt('2025-07-01'), lureAt('2025-07-01', 28, 'T2')];
  const checks = [checkOf('2025-07-08', 7), checkOf('2025-07-08', 21, { trapId: 'T2' })];
  const advice = adviceOn('2025-07-08', { stages: silk.stages, traps, lures, checks });

  it('are read each by its own rule and never pooled', () => {
    expect(evidenceOf(advice, 'rate').map((item) => [item.design, item.perNight])).toEqual(
      expect.arrayContaining([
        ['mesh-cone', 1],
        ['wire-cone', 3],
      ]),
    );
    expect([1, 3]).toContain(advice.rate);
    expect(advice.cautions.some((caution) => caution.kind === 'designs-not-pooled')).toBe(true);
  });

  it('show the published range of what one design catches of the other', () => {
    const other = evidenceOf(advice, 'other-design')[0]!;
    expect(other.ratio![0]).toBeCloseTo(1 / 3, 2);
    expect(other.ratio![1]).toBeCloseTo(1 / 2, 2);
    expect(other.source).not.toBe('');
  });
});

describe('the wire-cone rule (Purdue Vegetable Crops Hotline)', () => {
  const parts = { ...silk, traps: [trapOf({ design: 'wire-cone' })], checks: [checkOf('2025-07-08', 35)] };
  it('stands at 1 moth a night while no field corn nearby is in fresh silk, and says when that is not known', () => {
    const advice = adviceOn('2025-07-08', parts);
    expect(advice.verb).toBe('decide');
    expect(evidenceOf(advice, 'threshold')[0]).toMatchObject({ threshold: 1, rate: 5 });
    expect(evidenceOf(advice, 'missing')[0]).toMatchObject({ what: 'nearby-crop', detail: 'field-corn' });
  });

  it('stands at 10 while field corn nearby is in fresh silk', () => {
    const corn = fieldOf({ fieldId: 'C1', crop: 'field-corn' });
    const advice = adviceOn('2025-07-08', {
      ...parts,
      fields: [fieldOf(), corn],
      stages: [...silk.stages, stageAt('silk', '2025-07-06', 'C1')],
    });
    expect(evidenceOf(advice, 'threshold')[0]).toMatchObject({ threshold: 10, nearbyCrop: 'field-corn', reached: false });
    expect(advice.verb).toBe('watch');
  });
});

describe('black cutworm', () => {
  // A mean of 65.1 °F every day: 15.1 °F·d a day over base 50.
  const parts = {
    fields: [fieldOf({ plantedOn: '2025-04-20' })],
    traps: [trapOf({ insect: 'agrotis-ipsilon', design: 'wire-cone', hungOn: '2025-04-10' })],
    lures: [lureAt('2025-04-10', 60)],
    stages: [stageAt('emergence', '2025-05-01')],
    checks: [
      checkOf('2025-04-12', 1),
      checkOf('2025-04-14', 11),
      checkOf('2025-04-18', 4),
      checkOf('2025-04-25', 2),
      checkOf('2025-05-01', 1),
    ],
  };
  const on = (date: string, extra: object = {}) =>
    adviceOn(
      date,
      { ...parts, weather: steadyWeather('2025-03-01', formatDay(addDays(day(date), -1)), 60, 70.2), ...extra },
      'agrotis-ipsilon',
    );

  it('an intense capture starts the heat sum that dates the first cutting', () => {
    const advice = on('2025-05-01');
    expect(evidenceOf(advice, 'biofix')[0]).toMatchObject({
      on: '2025-04-14',
      trapId: 'T1',
      rule: { kind: 'intense-capture', moths: 9, nights: 2 },
    });
    const event = evidenceOf(advice, 'event').find((item) => item.from === 300)!;
    // 14 April to 30 April: 17 days.
    expect(event.heatSoFar).toBeCloseTo(17 * 15.1, 6);
    // 43.3 °F·d remain: into the third day, 3 May.
    expect(event).toMatchObject({ status: 'ahead', expected: { middle: '2025-05-03', method: 'recent-days' } });
    // Nine of the eleven may have come in the first of the two nights: both ends are shown, and people go by the early one.
    expect(event.start).toEqual({ earliest: '2025-04-12', latest: '2025-04-14', running: false });
    expect(advice).toMatchObject({
      verb: 'scout',
      by: event.expected!.early <= '2025-05-01' ? '2025-05-03' : event.expected!.early,
    });
  });

  it('dates the cutting by monthly normals where its source has no past years, and says so', () => {
    const normals = Array.from({ length: 12 }, (_, i) => ({ sourceId: 'station', month: i + 1, tminC: 15, tmaxC: 21 }));
    const byNormals = evidenceOf(on('2025-05-01', { normals }), 'event').find((item) => item.from === 300)!;
    expect(byNormals.expected).toMatchObject({ method: 'normals', years: 0, lateOpen: false });
    expect(english({ temperature: 'F' }).evidence(byNormals)).toContain(
      'by the monthly normals of this source, which has too few',
    );
    expect(spanish({ temperature: 'F' }).evidence(byNormals)).toContain('según las normales mensuales de esta fuente');
    const elsewhere = normals.map((each) => ({ ...each, sourceId: 'another' }));
    expect(evidenceOf(on('2025-05-01', { normals: elsewhere }), 'event')[0]!.expected).toMatchObject({ method: 'recent-days' });
    expect(evidenceOf(on('2025-05-01', { normals: normals.slice(1) }), 'event')[0]!.expected).toMatchObject({
      method: 'recent-days',
    });
  });

  it('is watched before an intense capture', () => {
    const advice = on('2025-05-01', { checks: parts.checks.map((check) => ({ ...check, targetCount: 1 })) });
    expect(advice.verb).toBe('watch');
    expect(evidenceOf(advice, 'biofix')).toEqual([]);
  });

  it('shows how probable a capture hidden between visits is where that is not enough to date anything', () => {
    const advice = on('2025-05-01', { checks: [checkOf('2025-04-12', 0), checkOf('2025-04-19', 11), checkOf('2025-05-01', 0)] });
    expect(evidenceOf(advice, 'biofix')).toEqual([]);
    const [chance] = evidenceOf(advice, 'capture-chance');
    expect(chance).toMatchObject({ moths: 9, nights: 2, trapId: 'T1', assumed: { k: 2, likely: 0.5 } });
    expect(chance!.probability).toBeGreaterThan(0);
    expect(chance!.probability).toBeLessThan(0.5);
    expect(chance!.from >= '2025-04-12' && chance!.to <= '2025-04-19').toBe(true);
    const said = [english({ temperature: 'F' }), spanish({ temperature: 'F' })].map((words) => words.evidence(chance!));
    expect(said[0]).toMatch(/is not likely: \d+ % \(if single nights scatter with k 2; taken to have happened from 50 % on/);
    expect(said[1]).toMatch(/no es probable: \d+ % \(si las noches sueltas varían con k 2; se da por ocurrida desde el 50 %/);
  });

  it('is blind after an intense capture when the weather since is missing', () => {
    const advice = on('2025-05-01', { weather: [] });
    expect(advice.verb).toBe('blind');
    expect(evidenceOf(advice, 'missing')[0]).toMatchObject({ what: 'weather', from: '2025-04-14' });
  });

  it('names the days over which a longer gap in the weather refuses the sum', () => {
    const weather = steadyWeather('2025-03-01', '2025-04-30', 60, 70).filter(
      ({ date }) => date < '2025-04-20' || date > '2025-04-25',
    );
    expect(evidenceOf(on('2025-05-01', { weather }), 'missing')[0]).toMatchObject({ from: '2025-04-20', to: '2025-04-25' });
  });
});

describe('a trap hung into a flight', () => {
  // 20 °F·d a day over 50 °F: first egg hatch, 250 °F·d, twelve to thirteen days after the biofix.
  const orchard = {
    fields: [fieldOf({ crop: 'apple' })],
    traps: [trapOf({ insect: 'cydia-pomonella', hungOn: '2025-06-08' })],
    lures: [lureAt('2025-06-08', 60)],
    stages: [stageAt('fruiting', '2025-06-10')],
    checks: [checkOf('2025-06-11', 11), checkOf('2025-06-14', 4)],
    weather: steadyWeather('2025-04-01', '2025-06-14', 60, 80),
  };
  const on = (parts: object) => adviceOn('2025-06-15', { ...orchard, ...parts }, 'cydia-pomonella');

  it('eleven moths at its first visit date the biofix at the latest, and its events too', () => {
    const advice = on({});
    expect(evidenceOf(advice, 'biofix')[0]).toMatchObject({ on: '2025-06-11', running: true, earliest: null });
    for (const event of evidenceOf(advice, 'event'))
      expect(event.start).toEqual({ earliest: null, latest: '2025-06-11', running: true });
  });

  it('is bounded by a trap that still found nothing', () => {
    const traps = [...orchard.traps, trapOf({ trapId: 'T2', insect: 'cydia-pomonella', hungOn: '2025-05-20' })];
    const checks = [...orchard.checks, checkOf('2025-06-01', 0, { trapId: 'T2' })];
    expect(evidenceOf(on({ traps, checks }), 'biofix')[0]).toMatchObject({ running: true, earliest: '2025-06-01' });
  });

  it('or by the earliest flight of past years', () => {
    const traps = [
      ...orchard.traps,
      trapOf({ trapId: 'P', insect: 'cydia-pomonella', hungOn: '2024-05-01', takenDownOn: '2024-09-01' }),
    ];
    const past = [checkOf('2024-05-20', 0), checkOf('2024-05-24', 3), checkOf('2024-05-27', 2)].map((check) => ({
      ...check,
      trapId: 'P',
    }));
    const [biofix] = evidenceOf(on({ traps, checks: [...orchard.checks, ...past] }), 'biofix');
    expect(biofix).toMatchObject({ running: true });
    // 20 May 2024 is day 140 of a leap year: 21 May in 2025.
    expect(biofix!.earliest).toBe('2025-05-21');
  });
});

describe('a model that sums heat from 1 January', () => {
  const whorl = (latitude: number, observedOn: string) => ({
    fields: [fieldOf({ latitude, longitude: 0 })],
    traps: [trapOf({ insect: 'ostrinia-nubilalis', hungOn: observedOn })],
    stages: [stageAt('whorl', observedOn)],
  });
  it('begins on 1 July south of the equator, in the same season', () => {
    const heat = (latitude: number, on: string, from: string) => {
      const weather = steadyWeather(from, on, 50, 70);
      const advice = adviceOn(on, { ...whorl(latitude, on), weather }, 'ostrinia-nubilalis');
      return evidenceOf(advice, 'event')[0]!.heatSoFar;
    };
    // 10 °F·d a day over 50 °F: 31 days of January, 31 days of July.
    expect(heat(45, '2025-01-31', '2024-12-01')).toBeCloseTo(310, 6);
    expect(heat(-45, '2025-07-31', '2025-06-01')).toBeCloseTo(310, 6);
  });
});

describe('a treatment', () => {
  const parts = {
    ...silk,
    checks: [checkOf('2025-07-08', 14), checkOf('2025-07-11', 6), checkOf('2025-07-13', 4)],
    treatments: [treatmentOf('2025-07-09')],
  };
  it('covers for the interval recorded with it, and shows until when', () => {
    const advice = adviceOn('2025-07-12', parts);
    expect(advice).toMatchObject({ verb: 'covered', by: '2025-07-13' });
    expect(advice.because[0]).toMatchObject({
      kind: 'treatment',
      state: 'covering',
      protectsUntil: '2025-07-13',
      endsBy: 'label',
    });
  });

  it('then lapses, and a catch that still reaches the rule is due for a decision again', () => {
    const advice = adviceOn('2025-07-13', parts);
    expect(advice).toMatchObject({ verb: 'decide', by: '2025-07-14' });
    expect(evidenceOf(advice, 'treatment')[0]).toMatchObject({ state: 'lapsed', coversUntil: '2025-07-13' });
  });

  it('keeps people out until the re-entry interval from its label is over', () => {
    const reentry = (on: string) => adviceOn(on, parts).cautions.filter((caution) => caution.kind === 'reentry');
    expect(reentry('2025-07-10')).toEqual([{ kind: 'reentry', until: '2025-07-10', hours: 12, product: 'Product A (invented)' }]);
    expect(reentry('2025-07-11')).toEqual([]);
  });

  it.each([
    ['06:30', 12, '2025-07-09', '18:30'],
    ['18:45', 12, '2025-07-10', '06:45'],
    ['12:00', 36, '2025-07-11', '00:00'],
  ])('begun at %s with %s hours, it may be entered from %s, %s on', (appliedAt, reentryHours, until, at) => {
    const said = { ...parts, treatments: [treatmentOf('2025-07-09', { appliedAt, reentryHours })] };
    expect(adviceOn('2025-07-09', said).cautions).toContainEqual(expect.objectContaining({ kind: 'reentry', until, at }));
  });

  it('covers no longer than the rule’s interval at the present catch: 20 a night, 7 days typed, 3 by the rule', () => {
    const heavy = { ...silk, checks: [checkOf('2025-07-08', 140)], treatments: [treatmentOf('2025-07-09', { protectsDays: 7 })] };
    expect(adviceOn('2025-07-11', heavy)).toMatchObject({ verb: 'covered', by: '2025-07-12', rate: 20 });
    const due = adviceOn('2025-07-12', heavy);
    expect(due).toMatchObject({ verb: 'decide', by: '2025-07-12', intervalDays: 3 });
    expect(evidenceOf(due, 'treatment')[0]).toMatchObject({
      endsBy: 'rule',
      intervalDays: 3,
      coversUntil: '2025-07-12',
      protectsUntil: '2025-07-16',
    });
  });

  it('covers to the end of the label’s protection while the catch asks for nothing', () => {
    const quiet = { ...silk, checks: [checkOf('2025-07-08', 0)], treatments: [treatmentOf('2025-07-09', { protectsDays: 7 })] };
    const advice = adviceOn('2025-07-15', quiet);
    expect(advice).toMatchObject({ verb: 'covered', by: '2025-07-16' });
    expect(evidenceOf(advice, 'treatment')[0]).toMatchObject({ endsBy: 'label', intervalDays: null });
  });

  describe('whose days of protection nobody typed', () => {
    const untyped = { treatments: [treatmentOf('2025-07-09', { protectsDays: null })] };
    it('covers for the rule’s interval, and the figure is asked for', () => {
      const heavy = { ...silk, checks: [checkOf('2025-07-08', 140)], ...untyped };
      const next = adviceOn('2025-07-10', heavy);
      expect(next).toMatchObject({ verb: 'covered', by: '2025-07-12', confidence: 'moderate' });
      expect(evidenceOf(next, 'missing')).toContainEqual(
        expect.objectContaining({ what: 'protection', detail: 'Product A (invented)', from: '2025-07-09' }),
      );
      expect(adviceOn('2025-07-12', heavy)).toMatchObject({ verb: 'decide', by: '2025-07-12' });
    });

    it('covers for an assumed interval under a rule that gives none: nobody decides again the day after', () => {
      const rules = [ruleOf({ threshold: 10, intervalDays: null })];
      const heavy = { ...silk, rules, checks: [checkOf('2025-07-08', 140)], ...untyped };
      const next = adviceOn('2025-07-10', heavy);
      expect(next).toMatchObject({ verb: 'covered', by: '2025-07-12', confidence: 'low' });
      expect(evidenceOf(next, 'treatment')[0]).toMatchObject({ endsBy: 'assumed' });
    });

    it('says nothing of cover while the catch asks for nothing', () => {
      const quiet = adviceOn('2025-07-10', { ...silk, checks: [checkOf('2025-07-08', 0)], ...untyped });
      expect(quiet.verb).toBe('watch');
      expect(evidenceOf(quiet, 'treatment')[0]).toMatchObject({ state: 'unknown', coversUntil: null });
    });
  });
});

describe('scouting samples', () => {
  const whorl = {
    stages: [stageAt('whorl', '2025-07-05')],
    traps: [trapOf({ insect: 'ostrinia-nubilalis' })],
    lures: silk.lures,
    checks: [checkOf('2025-07-08', 0)],
  };
  const sample = (infested: number, sampledOn = '2025-07-07') => [
    {
      fieldId: 'F1',
      insect: 'ostrinia-nubilalis',
      sampledOn,
      kind: 'plants',
      unitsExamined: 100,
      unitsInfested: infested,
      totalCount: null,
    },
  ];
  it('European corn borer in 30 % of plants at whorl is a decision, 29 % is not (UConn)', () => {
    expect(adviceOn('2025-07-08', { ...whorl, samples: sample(30) }, 'ostrinia-nubilalis')).toMatchObject({
      verb: 'decide',
      by: '2025-07-08',
    });
    expect(adviceOn('2025-07-08', { ...whorl, samples: sample(29) }, 'ostrinia-nubilalis').verb).toBe('watch');
  });

  it('older than a week no longer speak for the field', () => {
    expect(adviceOn('2025-07-15', { ...whorl, samples: sample(90, '2025-07-07') }, 'ostrinia-nubilalis').verb).not.toBe('decide');
  });

  it('fall armyworm and European corn borer count together at 15 %', () => {
    const both = [...sample(6), { ...sample(9)[0]!, insect: 'spodoptera-frugiperda' }];
    const advice = adviceOn(
      '2025-07-08',
      { ...whorl, traps: [trapOf({ insect: 'spodoptera-frugiperda' })], samples: both },
      'spodoptera-frugiperda',
    );
    expect(advice.verb).toBe('decide');
    expect(evidenceOf(advice, 'sample')[0]).toMatchObject({ share: 0.15, ruleShare: 0.15, withInsect: 'ostrinia-nubilalis' });
  });
});

describe('weekly rules', () => {
  const bush = {
    fields: [fieldOf({ crop: 'squash', growthHabit: 'bush' })],
    traps: [trapOf({ insect: 'melittia-cucurbitae', design: 'bucket' })],
    lures: silk.lures,
  };
  it.each([
    [5, 'decide'],
    [2, 'watch'],
  ])('%i squash vine borers in a week at bush squash → %s (UNH Extension: 5 per trap per week)', (moths, verb) => {
    const stages = [stageAt('flowering', '2025-07-05')];
    const advice = adviceOn(
      '2025-07-08',
      { ...bush, stages, checks: [checkOf('2025-07-04', 1), checkOf('2025-07-08', moths - 1)] },
      'melittia-cucurbitae',
    );
    expect(advice.verb).toBe(verb);
    expect(advice.rate).toBe(moths / 7);
  });
});

describe('the whole program', () => {
  const program = programOf({
    ...silk,
    fields: [fieldOf(), fieldOf({ fieldId: 'F2' })],
    traps: [trapOf({ informs: ['F1', 'F2'] }), trapOf({ trapId: 'T9', insect: 'ostrinia-nubilalis', informs: ['F1'] })],
    checks: [checkOf('2025-07-08', 2)],
    stages: [stageAt('silk'), stageAt('silk', '2025-07-05', 'F2')],
  });

  it('is advised for every field and every insect, in a stable order', () => {
    const all = adviseAll(prepare(program, { on: day('2025-07-08') }));
    expect(all.map(({ field, insect }) => `${field} ${insect}`)).toEqual([
      'F1 helicoverpa-zea',
      'F1 ostrinia-nubilalis',
      'F2 helicoverpa-zea',
      'F2 ostrinia-nubilalis',
    ]);
  });

  it('is the same after one more check as if that check had been there from the start', () => {
    const check = checkOf('2025-07-11', 30);
    const written = { ...program, checks: [...program.checks, check] };
    const prepared = withChecks(prepare(program, { on: day('2025-07-11') }), written, new Set([check.trapId]));
    const anew = prepare(written, { on: day('2025-07-11') });
    expect(adviseAll(prepared)).toEqual(adviseAll(anew));
  });

  it('shows a past day as it was known then', () => {
    const later = { ...program, checks: [...program.checks, checkOf('2025-07-11', 90)], treatments: [treatmentOf('2025-07-12')] };
    expect(adviseAll(prepare(later, { on: day('2025-07-08') }))).toEqual(adviseAll(prepare(program, { on: day('2025-07-08') })));
  });
});
