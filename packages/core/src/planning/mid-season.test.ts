import { describe, expect, it } from 'vitest';
import { prepare } from '../advice/index.ts';
import { checkOf, fieldOf, lureAt, programOf, ruleOf, stageAt, trapOf } from '../advice/test-program.ts';
import { day } from '../base/day.ts';
import type { Program } from '../records/program.ts';
import { planAgainstSeason } from './mid-season.ts';
import { independentTraps, placingQuestions } from './placing.ts';
import { planLures } from './plan-lures.ts';
import { plannedDriving } from './planned-driving.ts';
import { seasonPlan } from './season-plan.ts';

const rules = [ruleOf({ design: 'mesh-cone', threshold: 10 })];
const stated = { 'helicoverpa-zea': { hangOn: '2025-06-02', takeDownOn: '2025-08-25', traps: 2 } };
/** Two mesh cones from Monday 2 June 2025, checked on Mondays. */
const plan = seasonPlan(prepare(programOf({ traps: [], rules }), { on: day('2025-02-01') }), {
  season: 2025,
  insects: ['helicoverpa-zea'],
  checkWeekdays: [1],
  stated,
});
const two = (hungOn = '2025-06-02') => [trapOf({ hungOn }), trapOf({ trapId: 'T2', station: 'S2', hungOn })];
const mondays = ['2025-06-09', '2025-06-16', '2025-06-23', '2025-06-30'];
const checksOn = (days: readonly string[], count = 0) =>
  ['T1', 'T2'].flatMap((trapId) => days.map((on) => checkOf(on, count, { trapId })));
const lures = ['T1', 'T2'].map((trapId) => lureAt('2025-06-02', 60, trapId));
const truth = (parts: Partial<Program>, on = '2025-07-01') =>
  planAgainstSeason(plan, prepare(programOf({ rules, lures, stages: [stageAt('silk', on)], ...parts }), { on: day(on) }))[0]!;

describe('the plan against the season', () => {
  it('has nothing to say of a season that went as planned', () => {
    const done = truth({ traps: two(), checks: checksOn(mondays) });
    expect([done.deviations, done.effects, done.checksMade]).toEqual([[], [], 1]);
  });

  it('of traps hung late that caught at the first visit says that the start of the flight was not seen', () => {
    const late = truth({ traps: two('2025-06-12'), checks: checksOn(mondays.slice(1), 4) });
    expect(late.deviations).toMatchObject([
      { kind: 'hung-late', trapId: 'T1', daysLate: 10, firstVisitCaught: true },
      { kind: 'hung-late', trapId: 'T2', daysLate: 10, firstVisitCaught: true },
    ]);
    expect(late.effects).toEqual([{ kind: 'biofix-late', trapIds: ['T1', 'T2'] }]);
    const [first, second] = [trapOf({ hungOn: '2025-06-02' }), two('2025-06-12')[1]!];
    expect(truth({ traps: [first, second], checks: checksOn(mondays, 4) }).effects).toEqual([]);
  });

  it('counts a check made a day late, and not one skipped for a week', () => {
    const days = ['2025-06-10', '2025-06-23', '2025-06-30'];
    const { deviations, checksMade } = truth({ traps: two(), checks: checksOn(days) });
    expect(deviations).toMatchObject([
      { kind: 'missed-checks', trapId: 'T1', days: ['2025-06-16'], planned: 3 },
      { kind: 'missed-checks', trapId: 'T2', days: ['2025-06-16'], planned: 3 },
    ]);
    expect(checksMade).toBeCloseTo(2 / 3, 12);
  });

  it('names one cause, the gravest, and gives each trap its days', () => {
    const cause = (parts: Partial<Program>) => truth(parts).cause;
    expect(cause({ traps: two(), checks: checksOn(mondays) })).toBe('as-planned');
    expect(cause({ traps: two(), checks: checksOn(mondays), lures: [] })).toBe('as-planned');
    expect(cause({ traps: two('2025-06-12'), checks: checksOn(mondays.slice(1)) })).toBe('hung-late');
    expect(cause({ traps: two(), checks: checksOn(mondays.filter((on) => on !== '2025-06-16')) })).toBe('checks-missed');
    const spent = ['T1', 'T2'].map((trapId) => lureAt('2025-06-02', 20, trapId));
    expect(cause({ traps: two('2025-06-12'), checks: checksOn(mondays.slice(1)), lures: spent })).toBe('lure-spent');
    expect(cause({ traps: two().slice(0, 1), checks: checksOn(mondays), lures: spent })).toBe('not-hung');
    expect(cause({ traps: two(), checks: [] })).toBe('blind');
    expect(cause({ traps: [], lures: [] })).toBe('not-hung');
    const { traps, risk, telling } = truth({ traps: two().slice(0, 1), checks: checksOn(['2025-06-09', '2025-06-23']) });
    expect(traps).toEqual([
      {
        trapId: 'T1',
        hungOn: '2025-06-02',
        takenDownOn: null,
        checks: ['2025-06-09', '2025-06-23'],
        missed: ['2025-06-16'],
        lures: [{ placedOn: '2025-06-02', ends: '2025-08-01' }],
      },
    ]);
    expect(telling).toBe(1);
    expect(risk.now!).toBeGreaterThan(risk.planned!);
  });

  it('of lures past their life says by how much, and that catches read low', () => {
    const spent = ['T1', 'T2'].map((trapId) => lureAt('2025-06-02', 20, trapId));
    const { deviations, effects } = truth({ traps: two(), checks: checksOn(mondays), lures: spent });
    expect(deviations[0]).toEqual({ kind: 'lure-overdue', trapId: 'T1', endedOn: '2025-06-22', days: 9 });
    expect(effects).toEqual([{ kind: 'reads-low', trapIds: ['T1', 'T2'] }]);
    expect(truth({ traps: two(), checks: checksOn(mondays), lures: [] }).deviations[0]!.kind).toBe('lure-unknown');
  });

  it('with fewer traps that tell shows how the risk of a wrong verb has grown', () => {
    const { deviations, effects } = truth({ traps: two().slice(0, 1), checks: checksOn(mondays) });
    expect(deviations).toMatchObject([
      { kind: 'not-hung', missing: 1 },
      { kind: 'fewer-traps', planned: 2, telling: 1 },
    ]);
    const grown = effects.find((effect) => effect.kind === 'risks-grown')!;
    expect([grown.planned.traps, grown.now.traps]).toEqual([2, 1]);
    expect(grown.now.missed).toBeGreaterThan(grown.planned.missed);
  });

  it('with no trap telling is out of sight, and the advice says so too', () => {
    const none = truth({ traps: two(), checks: checksOn(mondays.slice(0, 1)) }, '2025-07-01');
    expect(none.effects).toContainEqual({ kind: 'out-of-sight' });
    expect(none.advice).toMatchObject([{ field: 'F1', verb: 'blind' }]);
  });

  it('before the hanging date has no effect on any advice', () => {
    expect(truth({ traps: [] }, '2025-05-20').effects).toEqual([]);
  });
});

describe('the places of traps', () => {
  const at = (trapId: string, latitude: number | null, over = {}) =>
    trapOf({ trapId, station: trapId, latitude, longitude: latitude === null ? null : -30, ...over });

  it('on one spot count as one for precision, and are named', () => {
    // 0.0001° of latitude is 11.1 m.
    const traps = [at('T1', 45), at('T2', 45.0001), at('T3', 45.01)];
    expect(placingQuestions(traps)).toMatchObject([{ kind: 'one-spot', trapIds: ['T1', 'T2'] }]);
    expect(independentTraps(traps)).toBe(2);
  });

  it('of different insects may share a spot: they draw on different moths', () => {
    expect(placingQuestions([at('T1', 45), at('T2', 45, { insect: 'ostrinia-nubilalis' })])).toEqual([]);
  });

  it('without coordinates are named by station and still count', () => {
    const traps = [at('T1', null), at('T2', null)];
    expect(placingQuestions(traps).map((one) => one.kind)).toEqual(['no-coordinates', 'no-coordinates']);
    expect(independentTraps(traps)).toBe(2);
  });
});

it('a farm’s driving is known only where something of it has a place', () => {
  const driven = (fields: Program['fields']) => {
    const prepared = prepare(programOf({ traps: [], fields, rules }), { on: day('2025-02-01') });
    const request = { season: 2025, insects: ['helicoverpa-zea'], checkWeekdays: [1], stated };
    return plannedDriving(prepared, planLures(prepared, seasonPlan(prepared, request), { 'helicoverpa-zea': 28 }));
  };
  expect(driven([fieldOf()])).toEqual([{ farm: 'Test Farm', hours: null, km: null }]);
  const north = fieldOf({ fieldId: 'F2', latitude: 45.1, longitude: -30 });
  const [farm] = driven([fieldOf({ latitude: 45, longitude: -30 }), north]);
  // Hanging and 12 Mondays past two fields 11.12 km apart by the great circle.
  expect(farm!.km).toBeCloseTo(13 * 11.1195 * 1.3, 1);
  // 13 × 2 stops of 4 minutes and 13 visits to 4 traps of 5 minutes.
  expect(farm!.hours).toBeCloseTo(farm!.km! / 40 + (13 * 8 + 13 * 4 * 5) / 60, 9);
});
