import { describe, expect, it } from 'vitest';
import { prepare } from '../advice/index.ts';
import {
  checkOf,
  fieldOf,
  lureAt,
  programOf,
  ruleOf,
  stageAt,
  steadyWeather,
  trapOf,
  treatmentOf,
} from '../advice/test-program.ts';
import { day } from '../base/day.ts';
import type { Program } from '../records/program.ts';
import type { FieldInsectView } from './field-schema.ts';
import { fieldView } from './index.ts';

/** Sweet corn in silk, with a mesh cone that was visited every four nights. */
const silk = (counts: readonly number[], more: Partial<Program> = {}) =>
  programOf({
    fields: [fieldOf({ harvestOn: '2025-08-02' })],
    traps: [trapOf()],
    stages: [stageAt('silk')],
    lures: [lureAt('2025-07-01', 40)],
    checks: counts.map((count, index) => checkOf(`2025-07-${String(5 + 4 * index).padStart(2, '0')}`, count)),
    weather: steadyWeather('2025-01-01', '2025-07-13', 60, 82),
    ...more,
  });
const insectOn = (program: Program, on = '2025-07-13'): FieldInsectView =>
  fieldView(prepare(program, { on: day(on) }), 'F1')!.insects.find(({ insect }) => insect.id === 'helicoverpa-zea')!;

/** Figures of the catch table for silking sweet corn: UConn Sweet Corn IPM Action Thresholds, reviewed 2012. */
const TABLE = [0.2, 0.5, 1, 13];

describe('the rules of a field', () => {
  const { advice, rules } = insectOn(silk([4, 4, 8]));
  const [used] = rules;

  it('begin with the one in use, with the step in force that the catch stands in', () => {
    expect(advice.verb).toBe('decide');
    expect(used).toMatchObject({ inUse: true, says: 'decide', kind: 'catch' });
    expect(used!.steps.map(({ fromPerNight }) => fromPerNight)).toEqual(TABLE);
    const force = used!.steps.filter(({ inForce }) => inForce);
    expect(force).toHaveLength(1);
    expect(force[0]!.fromPerNight <= advice.rate! && advice.rate! < force[0]!.belowPerNight!).toBe(true);
    expect(force[0]!.intervalDays).toBe(advice.intervalDays);
  });

  it('say what the others would have said, or nothing where the records give them nothing', () => {
    const others = rules.filter(({ inUse }) => !inUse);
    expect(others.length).toBeGreaterThan(0);
    expect(others.filter(({ kind }) => kind === 'infestation').map(({ says }) => says)).toEqual(
      others.filter(({ kind }) => kind === 'infestation').map(() => null),
    );
  });

  it('have no step in force while none is in use', () => {
    const quiet = insectOn(silk([0, 0, 0]));
    expect(quiet.rules.flatMap(({ steps }) => steps).filter(({ inForce }) => inForce)).toEqual([]);
  });
});

describe('what would change the verb', () => {
  const changes = (insect: FieldInsectView) => insect.otherwise.map(({ when, verb }) => [when, verb]);

  it('of a decision: less caught, more caught, a treatment, a decision not to, and no check in time', () => {
    const insect = insectOn(silk([4, 4, 8]));
    expect(changes(insect)).toEqual([
      ['catch-below', 'watch'],
      ['catch-over', 'decide'],
      ['treated', 'covered'],
      ['decided-not', 'watch'],
      ['no-check', 'blind'],
    ]);
    expect(insect.otherwise[0]).toMatchObject({ perNight: 0.2 });
    expect(insect.otherwise[1]).toMatchObject({ perNight: 13, intervalDays: 3 });
  });

  it('the last count is too old on the day on which advice turns blind, and not the day before', () => {
    const program = silk([4, 4, 8]);
    const { on } = insectOn(program).otherwise.find(({ when }) => when === 'no-check')!;
    const before = `${on!.slice(0, 8)}${String(Number(on!.slice(8)) - 1).padStart(2, '0')}`;
    expect(insectOn(program, before).advice.verb).not.toBe('blind');
    expect(insectOn(program, on!).advice.verb).toBe('blind');
  });

  it('of a cover: its end', () => {
    const covered = insectOn(silk([4, 4, 8], { treatments: [treatmentOf('2025-07-12')] }));
    expect(covered.advice.verb).toBe('covered');
    expect(covered.otherwise).toContainEqual(expect.objectContaining({ when: 'cover-over', on: covered.advice.by }));
    expect(covered.treatments[0]!.coversUntil).toBe(covered.advice.by);
  });
});

describe('the decisions ahead', () => {
  it('come at the rule’s interval while the catch holds, and end where the rule stops before harvest', () => {
    const { advice, ahead } = insectOn(silk([4, 4, 8]));
    expect(advice.intervalDays).toBe(4);
    // Fewer than five days are left to 2 August from 29 July on.
    expect(ahead).toEqual({ again: ['2025-07-17', '2025-07-21', '2025-07-25'], noneFrom: '2025-07-29' });
  });

  it('the rule asks on the last day before that end, and no more from it on', () => {
    const late = (on: string) =>
      insectOn(
        silk([], {
          stages: [stageAt('silk', '2025-07-26')],
          checks: [checkOf('2025-07-24', 8), checkOf('2025-07-28', 16)],
          weather: steadyWeather('2025-01-01', '2025-07-28', 60, 82),
        }),
        on,
      ).advice.verb;
    expect(late('2025-07-28')).toBe('decide');
    expect(late('2025-07-29')).toBe('none');
  });

  it('have no end where the rule names none before harvest', () => {
    const rules = [ruleOf({ threshold: 0.2, intervalDays: 4 })];
    const { advice, ahead } = insectOn(silk([4, 4, 8], { rules }));
    expect(advice.rule!.id).toBe('own-rule');
    expect(ahead).toEqual({ again: ['2025-07-17', '2025-07-21', '2025-07-25', '2025-07-29'], noneFrom: null });
  });

  it('are none where nothing is to be decided', () => {
    expect(insectOn(silk([0, 0, 0])).ahead.again).toEqual([]);
  });
});
