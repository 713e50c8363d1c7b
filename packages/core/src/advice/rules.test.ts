import { describe, expect, it } from 'vitest';
import { day } from '../base/day.ts';
import { ruleById } from '../catalogue/index.ts';
import type { SampleRecord } from '../records/schema.ts';
import { sampleVerdict } from '../scouting/index.ts';
import { adviseAll, prepare } from './index.ts';
import { adviceOn, checkOf, evidenceOf, fieldOf, lureAt, nightly, programOf, ruleOf, stageAt, trapOf } from './test-program.ts';

const silk = { stages: [stageAt('silk', '2025-07-05')], lures: [lureAt('2025-07-01')] };
const ARMYWORM = 'spodoptera-frugiperda';
const BORER = 'ostrinia-nubilalis';

const sampleOf = (over: Partial<SampleRecord>): SampleRecord => ({
  fieldId: 'F1',
  insect: BORER,
  sampledOn: '2025-07-08',
  kind: 'plants',
  unitsExamined: 100,
  unitsInfested: 0,
  totalCount: null,
  ...over,
});

/** A week's catch of one trap, checked once. */
const weekOf = (insect: string, moths: number, stage = 'silk') => ({
  stages: [stageAt(stage, '2025-07-05')],
  lures: [lureAt('2025-07-01')],
  traps: [trapOf({ insect, design: 'bucket' })],
  checks: [checkOf('2025-07-08', moths)],
});

describe('one bulletin’s twelve sites, three nights’ totals in pheromone traps (Univ. Delaware Weekly Crop Update)', () => {
  // The bulletin: a three-day schedule for all. By the table for the Northeast: three days for ten, four for 38 and 12.
  const totals = [105, 75, 127, 134, 73, 77, 82, 105, 78, 38, 12, 270];
  const sites = totals.map((_, site) => `F${site + 1}`);
  const program = programOf({
    fields: sites.map((fieldId) => fieldOf({ fieldId })),
    traps: sites.map((fieldId, site) => trapOf({ trapId: `T${site + 1}`, informs: [fieldId], hungOn: '2025-07-05' })),
    stages: sites.map((fieldId) => stageAt('silk', '2025-07-06', fieldId)),
    lures: sites.map((_, site) => lureAt('2025-07-05', 28, `T${site + 1}`)),
    checks: totals.map((count, site) => checkOf('2025-07-08', count, { trapId: `T${site + 1}` })),
  });
  const advice = new Map(adviseAll(prepare(program, { on: day('2025-07-08') })).map((one) => [one.field, one]));

  it.each(totals.map((total, site) => [total, total === 38 || total === 12 ? 4 : 3, `F${site + 1}`] as const))(
    '%i moths in three nights ask for a decision every %i days (%s)',
    (total, intervalDays, field) => {
      expect(advice.get(field)).toMatchObject({ verb: 'decide', rate: total / 3, intervalDays });
    },
  );
});

describe('a catch that sends people to look, and one that decides (New York State IPM)', () => {
  it('corn earworm’s decides by itself', () => {
    expect(adviceOn('2025-07-11', { ...silk, checks: [checkOf('2025-07-11', 20)] })).toMatchObject({
      verb: 'decide',
      rule: { may: 'decide' },
    });
  });

  it.each([
    [BORER, 'sweet-corn', 40],
    [ARMYWORM, 'sweet-corn', 60],
    [BORER, 'potato', 70],
  ])('that of %s in %s, at %i a week, sends somebody to look', (insect, crop, moths) => {
    const stage = crop === 'potato' ? 'flowering' : 'silk';
    const advice = adviceOn('2025-07-08', { ...weekOf(insect, moths, stage), fields: [fieldOf({ crop })] }, insect);
    expect(advice).toMatchObject({ verb: 'scout', by: '2025-07-10', rule: { may: 'send-scouting' } });
    expect(advice.because[0]).toMatchObject({ kind: 'scouting-asked', why: 'catch-above' });
  });

  it('and the plants decide: 15 % infested before tassel', () => {
    const samples = [sampleOf({ unitsInfested: 40 })];
    expect(adviceOn('2025-07-08', { ...weekOf(BORER, 40, 'tassel'), samples }, BORER)).toMatchObject({
      verb: 'decide',
      rule: { id: 'sweet-corn-corn-borer-tassel' },
    });
  });

  it('a program’s own rule decides, unless it says that it sends people to look', () => {
    const catchOf = (may: 'decide' | 'send-scouting' | null) =>
      adviceOn('2025-07-08', { ...weekOf(BORER, 40), rules: [ruleOf({ insect: BORER, threshold: 5, may })] }, BORER);
    expect([catchOf(null).verb, catchOf('decide').verb, catchOf('send-scouting').verb]).toEqual(['decide', 'decide', 'scout']);
  });

  it('fall armyworm in whorl corn at 45 a week and rising: look, though the figure of 50 is for silk', () => {
    const rising = { ...weekOf(ARMYWORM, 0, 'whorl'), checks: nightly('2025-06-28', [1, 1, 2, 3, 4, 4, 5, 6, 8, 9, 9]) };
    const parts = { ...rising, traps: [trapOf({ insect: ARMYWORM, design: 'bucket', hungOn: '2025-06-28' })] };
    const advice = adviceOn('2025-07-09', { ...parts, settings: northeast }, ARMYWORM);
    expect(advice.rate! * 7).toBeCloseTo(45, 9);
    expect(evidenceOf(advice, 'trend')[0]).toMatchObject({ direction: 'rising' });
    // Asked for by the visit of 6 July already, and nobody looked.
    expect(advice).toMatchObject({ verb: 'scout', by: '2025-07-09', dueSince: '2025-07-08' });
    expect(advice.because[0]).toMatchObject({ kind: 'scouting-asked', why: 'catch-near', madeFor: ['silk'] });
    expect(evidenceOf(advice, 'sampling')[0]).toMatchObject({ ruleId: 'sweet-corn-fall-armyworm-plants', share: 0.1 });
  });

  it('a catch clearly rising sends people from half of the figure on, a steady one does not', () => {
    const at = (counts: readonly number[]) =>
      adviceOn(
        '2025-07-08',
        {
          ...weekOf(ARMYWORM, 0, 'whorl'),
          traps: [trapOf({ insect: ARMYWORM, design: 'bucket', hungOn: '2025-06-24' })],
          lures: [lureAt('2025-06-24')],
          checks: nightly('2025-06-24', counts),
          settings: northeast,
        },
        ARMYWORM,
      );
    const rising = at([0, 0, 0, 0, 1, 1, 1, 2, 2, 3, 4, 5, 6, 7]);
    expect(rising.rate! * 7).toBeCloseTo(29, 9);
    expect(rising).toMatchObject({ verb: 'scout' });
    expect(rising.because[0]).toMatchObject({ why: 'catch-rising' });
    expect(at([4, 4, 5, 4, 4, 3, 4, 4, 5, 4, 4, 4, 3, 4]).verb).toBe('watch');
  });

  it('a high catch and nothing found asks for one better look', () => {
    const clean = (...days: string[]) =>
      adviceOn(
        '2025-07-09',
        {
          ...weekOf(BORER, 40, 'tassel'),
          samples: days.map((sampledOn) => sampleOf({ sampledOn })),
        },
        BORER,
      );
    const once = clean('2025-07-08');
    expect(once).toMatchObject({ verb: 'scout', by: '2025-07-11' });
    expect(once.because[0]).toMatchObject({ kind: 'scouting-asked', why: 'sample-clean' });
    expect(clean('2025-07-06', '2025-07-09').verb).toBe('watch');
  });
});

const northeast = { name: 'Test', invented: true, pinnedOn: null, region: 'Northeastern United States' };

describe('a rule that the program has switched off', () => {
  const tenAWeek = weekOf(ARMYWORM, 10);
  const without = (...ruleIds: string[]) =>
    adviceOn(
      '2025-07-08',
      {
        ...tenAWeek,
        settings: { ...northeast, region: 'Maine', rulesOff: ruleIds.map((ruleId) => ({ ruleId, reason: 'too low for us' })) },
      },
      ARMYWORM,
    );
  const [northeastern, maine] = ['sweet-corn-fall-armyworm-catch', 'sweet-corn-fall-armyworm-catch-maine'];

  it('speaks no more, gives way to its rival, and stays in the evidence with the reason', () => {
    expect(without().rule?.id).toBe(maine);
    const advice = without(maine);
    expect(advice).toMatchObject({ verb: 'watch', rule: { id: northeastern } });
    expect(evidenceOf(advice, 'rule-off')).toEqual([
      { kind: 'rule-off', ruleId: maine, region: 'Maine', reason: 'too low for us' },
    ]);
    expect(evidenceOf(advice, 'other-rule').map(({ ruleId }) => ruleId)).not.toContain(maine);
  });

  it('leaves nothing to say where it was the last: the field is blind, never quietly watched', () => {
    const advice = without(maine, northeastern);
    expect(evidenceOf(advice, 'threshold')).toEqual([]);
    expect(evidenceOf(advice, 'rule-off')).toHaveLength(2);
    expect(['blind', 'scout', 'none']).toContain(advice.verb);
    expect(advice.verb).not.toBe('watch');
  });
});

describe('rival rules stand side by side, and the program chooses', () => {
  const tenAWeek = weekOf(ARMYWORM, 10);
  const inRegion = (settings: object) =>
    adviceOn('2025-07-08', { ...tenAWeek, settings: { ...northeast, region: null, ...settings } }, ARMYWORM);

  it('fall armyworm at ten a week: watched by the Northeast’s 50, looked for by Maine’s 3', () => {
    const south = inRegion({ region: 'Northeastern United States' });
    expect(south).toMatchObject({ verb: 'watch', rule: { id: 'sweet-corn-fall-armyworm-catch' } });
    expect(evidenceOf(south, 'other-rule')).toMatchObject([{ region: 'Maine', threshold: 3, per: 'week', verb: 'scout' }]);
    const maine = inRegion({ region: 'Maine' });
    expect(maine).toMatchObject({ verb: 'scout', rule: { id: 'sweet-corn-fall-armyworm-catch-maine' } });
    expect(evidenceOf(maine, 'other-rule')).toMatchObject([{ region: 'Northeastern United States', verb: 'watch' }]);
  });

  it('a rule chosen by name goes before the region’s', () => {
    const chosenRules = ['sweet-corn-fall-armyworm-catch'];
    expect(inRegion({ region: 'Maine', chosenRules }).rule?.id).toBe('sweet-corn-fall-armyworm-catch');
  });

  it('while nothing is chosen the strictest speaks, and the choice is asked for', () => {
    const open = inRegion({});
    expect(open).toMatchObject({ verb: 'scout', rule: { id: 'sweet-corn-fall-armyworm-catch-maine' } });
    expect(evidenceOf(open, 'choice-open')).toMatchObject([{ ruleId: 'sweet-corn-fall-armyworm-catch-maine' }]);
    expect(evidenceOf(inRegion({ region: 'Maine' }), 'choice-open')).toEqual([]);
  });

  it('a rule of the chosen region, or of a wider one that holds it, is not from elsewhere', () => {
    const from = (region: string | null) => inRegion({ region }).cautions.filter(({ kind }) => kind === 'rule-from-elsewhere');
    expect([from('Maine'), from('Northeastern United States')]).toEqual([[], []]);
    expect(from(null)).toEqual([{ kind: 'rule-from-elsewhere', region: 'Maine' }]);
    expect(from('Indiana')).toEqual([{ kind: 'rule-from-elsewhere', region: 'Maine' }]);
  });
});

describe('a sample must be big enough to speak', () => {
  const ears = (unitsExamined: number, unitsInfested: number) =>
    sampleOf({ insect: 'helicoverpa-zea', kind: 'ears', unitsExamined, unitsInfested });
  const near = { ...silk, traps: [trapOf({ design: 'bucket', hungOn: '2025-07-01' })], rules: [ruleOf({ threshold: 1 })] };
  const after = (sample: SampleRecord) =>
    adviceOn('2025-07-08', { ...near, checks: [checkOf('2025-07-08', 6)], samples: [sample] });

  it('none in 5 ears does not call off a look that the catch asks for: 49 more', () => {
    const advice = after(ears(5, 0));
    expect(advice.verb).toBe('scout');
    expect(evidenceOf(advice, 'sample')[0]).toMatchObject({ verdict: 'not-yet', more: 49 });
  });

  it('none in 54 does, eight at a place: neighbours are alike. In 27 that stand anywhere it does too', () => {
    const scattered = (unitsExamined: number, each: number): SampleRecord => ({
      ...ears(unitsExamined, 0),
      byPlace: Array.from({ length: unitsExamined / each }, () => `0/${each}`),
    });
    expect(after(ears(53, 0)).verb).toBe('scout');
    expect(after(ears(54, 0)).verb).toBe('watch');
    expect(after(scattered(26, 1)).verb).toBe('scout');
    expect(after(scattered(27, 1)).verb).toBe('watch');
    expect(after(scattered(40, 20)).verb).toBe('scout');
  });

  it('and it is said when only the likeness of neighbours keeps a sample from speaking, with where that is known from', () => {
    const few = after(ears(27, 0));
    expect(evidenceOf(few, 'sample')[0]).toMatchObject({ verdict: 'not-yet', clumped: { correlation: 0.15, samples: 0 } });
    expect(evidenceOf(after(ears(26, 0)), 'sample')[0]).toMatchObject({ verdict: 'not-yet', clumped: null });
    // Own samples in which places are all or none say more than the assumption, and a larger sample is asked for.
    const own = Array.from(
      { length: 10 },
      (_, i): SampleRecord => ({
        ...ears(40, 8),
        sampledOn: `2025-06-${10 + i}`,
        byPlace: ['8/8', '0/8', '0/8', '0/8', '0/8'],
      }),
    );
    const known = adviceOn('2025-07-08', { ...near, checks: [checkOf('2025-07-08', 6)], samples: [...own, ears(54, 0)] });
    const [sample] = evidenceOf(known, 'sample');
    expect(sample).toMatchObject({ verdict: 'not-yet', clumped: { samples: 10 } });
    expect(sample!.clumped!.correlation).toBeGreaterThan(0.6);
  });

  it('1 in 10 ears does not decide, but asks for more', () => {
    const advice = adviceOn('2025-07-08', { ...silk, checks: [checkOf('2025-07-08', 0)], samples: [ears(10, 1)] });
    expect(advice.verb).toBe('scout');
    expect(advice.because[0]).toMatchObject({ kind: 'scouting-asked', why: 'sample-small' });
    const [sample] = evidenceOf(advice, 'sample');
    expect(sample).toMatchObject({ verdict: 'not-yet' });
    // So many more, a tenth of them infested, and the limits are above 5 %.
    const rule = ruleById('sweet-corn-earworm-ears');
    if (rule?.kind !== 'infestation') throw new Error('no rule for ears');
    const examined = 10 + sample!.more!;
    expect(sampleVerdict(rule, examined, examined / 10)).toMatchObject({ verdict: 'above', by: 'limits' });
    expect(sampleVerdict(rule, examined - 1, (examined - 1) / 10).verdict).toBe('not-yet');
  });

  it('a sample as large as the rule asks for is held against the figure as the source does', () => {
    expect(after(ears(100, 5)).verb).toBe('decide');
    expect(after(ears(100, 4)).verb).toBe('watch');
  });
});
