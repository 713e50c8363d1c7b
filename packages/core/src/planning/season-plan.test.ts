import { describe, expect, it } from 'vitest';
import { prepare } from '../advice/index.ts';
import { fieldOf, lureAt, programOf, ruleOf, steadyWeather, trapOf } from '../advice/test-program.ts';
import { day, daysBetween } from '../base/day.ts';
import type { Program } from '../records/program.ts';
import { lureNeeds } from './lure-need.ts';
import { planLures } from './plan-lures.ts';
import type { PlanRequest } from './plan-types.ts';
import { seasonPlan, weekdayOf } from './season-plan.ts';

const known = (parts: Partial<Program>) => prepare(programOf({ traps: [], ...parts }), { on: day('2025-12-01') });
const planned = (parts: Partial<Program>, request: Partial<PlanRequest> = {}) =>
  seasonPlan(known(parts), { season: 2026, insects: ['helicoverpa-zea'], ...request });
const line = (parts: Partial<Program>, request: Partial<PlanRequest> = {}) => planned(parts, request).lines[0]!;
const BORER = ['ostrinia-nubilalis'];

describe('a season plan', () => {
  it('takes the design that the rule was made for, before the one used last year', () => {
    const own = trapOf({ design: 'bucket' });
    expect(line({ traps: [own] }).design).toMatchObject({ design: 'mesh-cone', why: 'rule', standing: 'published' });
    const vine = { fields: [fieldOf({ crop: 'squash', growthHabit: 'bush' })] };
    const request = { insects: ['melittia-cucurbitae'] };
    expect(line({ ...vine, traps: [{ ...own, insect: 'melittia-cucurbitae' }] }, request).design).toMatchObject({
      design: 'bucket',
      why: 'used-before',
    });
    expect(line(vine, request).design).toMatchObject({ design: 'wire-cone', why: 'practice' });
  });

  it('says that the design is not known where no rule, trap or practice names one', () => {
    const { design, traps, rule } = line({ fields: [fieldOf({ crop: 'lavender' })] }, { insects: ['moth-of-nowhere'] });
    expect(design).toMatchObject({ design: null, why: 'not-known' });
    expect([rule, traps.why, traps.count]).toEqual([null, 'no-rule', 2]);
  });

  it('hangs the fewest traps that keep to the risks, or says that the most are not enough', () => {
    const rules = [ruleOf({ threshold: 10, design: 'mesh-cone' })];
    const easy = line({ rules }, { wishes: { riskMissed: 0.3, riskFalse: 0.3 } }).traps;
    expect(easy).toMatchObject({ why: 'risk', quality: { enough: true }, dispersion: { reason: 'too-few-checks' } });
    const hard = line({ rules }, { wishes: { riskMissed: 0.001, riskFalse: 0.001 } }).traps;
    expect(hard).toMatchObject({ why: 'most', count: 4, quality: { enough: false } });
  });

  it('with fewer traps than proposed cuts where a wrong verb grows least, and says so', () => {
    const parts = {
      fields: [fieldOf(), fieldOf({ fieldId: 'F2', crop: 'lavender' })],
      rules: [ruleOf({ design: 'mesh-cone', threshold: 10 })],
    };
    const request = {
      insects: ['moth-of-nowhere', 'helicoverpa-zea'],
      fields: ['F1', 'F2'],
      stated: { 'moth-of-nowhere': { design: 'delta' as const } },
    };
    const free = planned(parts, request);
    const tight = planned(parts, { ...request, trapBudget: free.trapsInAll - 1 });
    expect(tight.trapsInAll).toBe(free.trapsInAll - 1);
    const cut = tight.lines.filter(({ traps }) => traps.why === 'budget');
    expect(cut.map(({ insect, traps }) => [insect, traps.proposed - traps.count])).toEqual([['moth-of-nowhere', 1]]);
    expect(planned(parts, { ...request, trapBudget: 0 }).lines.every(({ traps }) => traps.count === 1)).toBe(true);
  });

  it('keeps fields that one trap has informed in one area, and others apart', () => {
    const fields = ['F1', 'F2', 'F3'].map((fieldId) => fieldOf({ fieldId }));
    const { lines } = planned({ fields, traps: [trapOf({ informs: ['F1', 'F3'] })] });
    expect(lines.map((one) => one.fields)).toEqual([['F1', 'F3'], ['F2']]);
    expect(planned({ fields }, { areas: [['F2', 'F3']] }).lines.map((one) => one.fields)).toEqual([['F1'], ['F2', 'F3']]);
  });

  it('leaves out crops that do not host the insect or have no rule, and fields that do not exist, and says which', () => {
    const fields = [fieldOf({ crop: 'apple' }), fieldOf({ fieldId: 'F2', crop: 'squash' })];
    const { lines, leftOut } = planned({ fields }, { fields: ['F1', 'F2', 'F9'] });
    expect(lines).toEqual([]);
    expect(leftOut.map(({ field, why }) => [field, why])).toEqual([
      ['F1', 'not-a-host'],
      ['F2', 'no-rule'],
      ['F9', 'no-such-field'],
    ]);
  });

  it('hangs by the heat of past years where there is a model, else on the user’s day', () => {
    const weather = steadyWeather('2023-01-01', '2025-11-30', 50, 60);
    // (50 + 60)/2 − 50 = 5 °F·d a day: 374 on day 75 of each year, 74 days after 1 January.
    const { hang } = line({ weather }, { insects: BORER, leadDays: 7 });
    expect(hang).toMatchObject({ basis: 'heat', spread: { earliest: '2026-03-16', latest: '2026-03-16' } });
    expect(daysBetween(day('2026-01-01'), day(hang.on!))).toBeLessThanOrEqual(74 - 7);
    const stated = { 'helicoverpa-zea': { hangOn: '2026-06-15' } };
    expect(line({ weather }, { stated }).hang).toMatchObject({ basis: 'stated', on: '2026-06-15', why: 'no-model' });
    expect(line({ weather })).toMatchObject({ hang: { on: null }, takeDown: { on: null, why: 'not-known' }, checkDays: [] });
  });

  it('takes traps down at harvest, at last year’s date where the next is not written, else after a stated time', () => {
    const stated = { 'helicoverpa-zea': { hangOn: '2026-06-15' } };
    const at = (harvestOn: string | null, traps = [] as Program['traps']) =>
      line({ fields: [fieldOf({ harvestOn })], traps }, { stated }).takeDown;
    expect(at('2026-09-01')).toEqual({ on: '2026-09-01', why: 'harvest' });
    expect(at('2025-09-01')).toEqual({ on: '2026-09-01', why: 'harvest-as-before' });
    expect(at(null, [trapOf({ takenDownOn: '2025-09-20' })])).toEqual({ on: '2026-09-20', why: 'as-before' });
    expect(at(null)).toEqual({ on: '2026-10-13', why: 'assumed' });
  });

  it('south of the equator carries a harvest date into the season across new year', () => {
    const fields = [fieldOf({ latitude: -38, longitude: 176, harvestOn: '2025-02-20' })];
    const stated = { 'helicoverpa-zea': { hangOn: '2026-11-10' } };
    const { takeDown, checkDays } = line({ fields }, { stated });
    expect(takeDown).toEqual({ on: '2027-02-20', why: 'harvest-as-before' });
    expect([checkDays[0], checkDays.at(-1)]).toEqual(['2026-11-12', '2027-02-20']);
  });

  it('checks on the days of the week chosen, and on the day of taking down', () => {
    const stated = { 'helicoverpa-zea': { hangOn: '2026-06-15', takeDownOn: '2026-07-01' } };
    // 15 June 2026 is a Monday, 1 July a Wednesday.
    expect([weekdayOf(day('2026-06-15')), weekdayOf(day('1969-12-29'))]).toEqual([1, 1]);
    const { checkDays, nightsBetweenChecks } = line({}, { stated, checkWeekdays: [5, 1] });
    expect(checkDays).toEqual(['2026-06-19', '2026-06-22', '2026-06-26', '2026-06-29', '2026-07-01']);
    expect(nightsBetweenChecks).toBe(3);
  });

  it('of a crop harvested before the flight says so and plans no checks', () => {
    const stated = { 'helicoverpa-zea': { hangOn: '2026-06-15', takeDownOn: '2026-06-01' } };
    expect(line({}, { stated })).toMatchObject({ caution: 'ends-before-it-begins', checkDays: [] });
  });
});

describe('the lures of a plan', () => {
  const stated = { 'helicoverpa-zea': { hangOn: '2026-06-01', takeDownOn: '2026-08-31', traps: 3 } };
  const request = { season: 2026, insects: ['helicoverpa-zea'], checkWeekdays: [1], stated };

  it('follow the life the program wrote last, else the shorter usual one, and say which', () => {
    const withLures = known({ traps: [trapOf()], lures: [lureAt('2025-07-01', 28)] });
    expect(planLures(withLures, seasonPlan(withLures, request))[0]!.life).toMatchObject({ days: 28, why: 'own-records' });
    const without = known({});
    expect(planLures(without, seasonPlan(without, request))[0]!.life).toMatchObject({ days: 14, why: 'practice' });
  });

  it('by hand: three traps, 28 days, Mondays from 1 June to 31 August take nine changes and three first lures', () => {
    const prepared = known({});
    const [lures] = planLures(prepared, seasonPlan(prepared, request), { 'helicoverpa-zea': 28 });
    expect(lures!.changes.map(({ on }) => on)).toEqual(['2026-06-29', '2026-07-27', '2026-08-24']);
    const [need] = lureNeeds(lures!.uses);
    expect(need!.months).toEqual([
      { insect: 'helicoverpa-zea', month: '2026-06', lures: 6 },
      { insect: 'helicoverpa-zea', month: '2026-07', lures: 3 },
      { insect: 'helicoverpa-zea', month: '2026-08', lures: 3 },
    ]);
  });
});
