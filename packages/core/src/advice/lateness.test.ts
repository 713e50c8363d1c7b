import { describe, expect, it } from 'vitest';
import { addDays, day, formatDay } from '../base/day.ts';
import { verbOf } from './decide.ts';
import { adviseAll, adviseCell, asOf, prepare, withChecks } from './index.ts';
import {
  adviceOn,
  checkOf,
  decisionOf,
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
import type { Advice } from './types.ts';

const silk = { stages: [stageAt('silk', '2025-07-05')], lures: [lureAt('2025-07-01')] };
/** 20 moths a night from 8 July on, in checks three days apart. */
const heavy = { ...silk, checks: [checkOf('2025-07-08', 0), checkOf('2025-07-11', 60), checkOf('2025-07-14', 60)] };
const sampleOn = (sampledOn: string, unitsInfested: number) => ({
  fieldId: 'F1',
  insect: 'helicoverpa-zea',
  sampledOn,
  kind: 'ears',
  unitsExamined: 100,
  unitsInfested,
  totalCount: null,
});

describe('a decision that nobody answers', () => {
  it('is due by the day after the catch reached its rule', () => {
    expect(adviceOn('2025-07-11', heavy)).toMatchObject({ verb: 'decide', by: '2025-07-12', dueSince: null });
    expect(adviceOn('2025-07-12', heavy)).toMatchObject({ verb: 'decide', by: '2025-07-12', dueSince: '2025-07-12' });
  });

  it('stays due since that day, whatever later visits find', () => {
    expect(adviceOn('2025-07-15', heavy)).toMatchObject({ verb: 'decide', by: '2025-07-15', dueSince: '2025-07-12' });
  });

  it('is late too where the trap is visited every day', () => {
    const daily = { ...silk, traps: [trapOf({ hungOn: '2025-07-10' })], checks: nightly('2025-07-10', [20, 20, 20, 20, 20]) };
    expect(adviceOn('2025-07-15', daily)).toMatchObject({ verb: 'decide', dueSince: '2025-07-12' });
  });

  it('is not late from before the stage was seen at which the rule holds', () => {
    const stages = [stageAt('whorl', '2025-07-05'), stageAt('silk', '2025-07-13')];
    const caught = { ...heavy, stages, checks: heavy.checks.slice(0, 2) };
    expect(adviceOn('2025-07-12', caught).verb).not.toBe('decide');
    expect(adviceOn('2025-07-14', caught)).toMatchObject({ verb: 'decide', dueSince: '2025-07-13' });
    const seenTwice = { ...caught, stages: [stageAt('silk', '2025-07-05'), stageAt('silk', '2025-07-13')] };
    expect(adviceOn('2025-07-14', seenTwice)).toMatchObject({ verb: 'decide', dueSince: '2025-07-12' });
  });

  it('is not answered by a visit that found the trap down', () => {
    const down = {
      ...heavy,
      checks: [...heavy.checks.slice(0, 2), checkOf('2025-07-13', null, { condition: 'unfit' }), checkOf('2025-07-15', 40)],
    };
    expect(adviceOn('2025-07-13', down).verb).toBe('blind');
    expect(adviceOn('2025-07-15', down)).toMatchObject({ verb: 'decide', dueSince: '2025-07-12' });
  });

  it('is a new question once the catch has been below the rule in between', () => {
    const twice = { ...heavy, checks: [...heavy.checks.slice(0, 2), checkOf('2025-07-14', 0), checkOf('2025-07-17', 60)] };
    expect(adviceOn('2025-07-14', twice).verb).toBe('watch');
    expect(adviceOn('2025-07-18', twice)).toMatchObject({ verb: 'decide', dueSince: '2025-07-18' });
  });
});

describe('a decision is answered', () => {
  it('by a treatment: it is due again when cover ends, and late from then', () => {
    const treated = { ...heavy, treatments: [treatmentOf('2025-07-12', { protectsDays: 7 })] };
    expect(adviceOn('2025-07-14', treated).verb).toBe('covered');
    expect(adviceOn('2025-07-15', treated)).toMatchObject({ verb: 'decide', by: '2025-07-15', dueSince: '2025-07-15' });
    expect(adviceOn('2025-07-17', treated)).toMatchObject({ verb: 'decide', by: '2025-07-17', dueSince: '2025-07-15' });
  });

  const decided = { ...heavy, decisions: [decisionOf('2025-07-12')] };
  it('by a recorded decision not to treat, which holds for the rule’s interval', () => {
    const held = adviceOn('2025-07-14', decided);
    expect(held).toMatchObject({ verb: 'watch', by: '2025-07-15', dueSince: null, rate: 20 });
    expect(held.because[0]).toMatchObject({
      kind: 'decision',
      reason: 'harvest-near',
      holdsUntil: '2025-07-15',
      by: 'rule',
      days: 3,
    });
    expect(adviceOn('2025-07-16', decided)).toMatchObject({ verb: 'decide', by: '2025-07-16', dueSince: '2025-07-15' });
  });

  it('by a decision under a rule without an interval for an assumed one', () => {
    const rules = [ruleOf({ threshold: 10 })];
    const held = adviceOn('2025-07-14', { ...decided, rules });
    expect(evidenceOf(held, 'decision')[0]).toMatchObject({ by: 'assumed', days: 3 });
  });

  it('where a sample had reached its figure, until another sample does', () => {
    const sampled = { ...silk, checks: [checkOf('2025-07-08', 0)], samples: [sampleOn('2025-07-08', 20)] };
    expect(adviceOn('2025-07-10', sampled)).toMatchObject({ verb: 'decide', dueSince: '2025-07-09' });
    expect(adviceOn('2025-07-10', { ...sampled, decisions: [decisionOf('2025-07-09')] }).verb).toBe('watch');
  });
});

describe('scouting that nobody does', () => {
  const near = { ...silk, rules: [ruleOf({ threshold: 10 })], checks: [checkOf('2025-07-08', 0), checkOf('2025-07-11', 27)] };
  it('is due two days after the visit that asked for it, and late from then', () => {
    expect(adviceOn('2025-07-11', near)).toMatchObject({ verb: 'scout', by: '2025-07-13', dueSince: null });
    expect(adviceOn('2025-07-15', near)).toMatchObject({ verb: 'scout', by: '2025-07-15', dueSince: '2025-07-13' });
  });

  it('is answered by a sample, or by a decision not to look', () => {
    expect(adviceOn('2025-07-15', { ...near, samples: [sampleOn('2025-07-13', 0)] }).verb).toBe('watch');
    const decisions = [decisionOf('2025-07-13', { decision: 'not-scouted', reason: 'other-species' })];
    const held = adviceOn('2025-07-15', { ...near, decisions });
    expect(held.verb).toBe('watch');
    expect(evidenceOf(held, 'decision')[0]).toMatchObject({ holdsUntil: '2025-07-20', by: 'sample-life' });
  });
});

it('a check that is late says since when', () => {
  const quiet = { ...silk, checks: [checkOf('2025-07-05', 0), checkOf('2025-07-08', 0), checkOf('2025-07-11', 0)] };
  expect(adviceOn('2025-07-13', quiet)).toMatchObject({ verb: 'watch', by: '2025-07-14', dueSince: null });
  expect(adviceOn('2025-07-16', quiet)).toMatchObject({ verb: 'watch', by: '2025-07-16', dueSince: '2025-07-14' });
});

const asked = ({ verb, by, dueSince, because }: Advice) => ({ verb, by, dueSince, kinds: because.map(({ kind }) => kind) });

describe('a past day is read as it was known then', () => {
  const traps = [
    trapOf({ informs: ['F1', 'F2'] }),
    trapOf({ trapId: 'T2', insect: 'ostrinia-nubilalis', hungOn: '2025-06-01' }),
    trapOf({ trapId: 'T3', design: 'wire-cone', hungOn: '2025-07-04', takenDownOn: '2025-07-20' }),
  ];
  const program = programOf({
    fields: [fieldOf({ plantedOn: '2025-05-10' }), fieldOf({ fieldId: 'F2', harvestOn: '2025-07-24' })],
    traps,
    lures: traps.map(({ trapId, hungOn }) => lureAt(hungOn, 28, trapId)),
    stages: [stageAt('whorl', '2025-06-20'), stageAt('silk', '2025-07-09'), stageAt('silk', '2025-07-06', 'F2')],
    checks: [
      ...nightly('2025-07-01', [0, 3, 9, 0, 1, 0, 0, 2, 40, 31, 12, 25, 0, 0, 8]),
      ...['2025-06-08', '2025-06-15', '2025-06-22', '2025-07-01', '2025-07-06'].map((on) => checkOf(on, 22, { trapId: 'T2' })),
      checkOf('2025-07-07', 4, { trapId: 'T3' }),
      checkOf('2025-07-12', null, { trapId: 'T3', condition: 'unfit' }),
    ],
    samples: [sampleOn('2025-07-06', 2), sampleOn('2025-07-13', 12)],
    treatments: [treatmentOf('2025-07-10')],
    decisions: [decisionOf('2025-07-15', { fieldId: 'F2' })],
    weather: steadyWeather('2024-01-01', '2025-07-16', 58, 82),
  });
  const on = day('2025-07-17');

  it('from what is already prepared, as from the records of that day alone', () => {
    const prepared = prepare(program, { on });
    for (let back = 1; back <= 45; back++) {
      const then = addDays(on, -back);
      const anew = prepare(program, { on: then });
      for (const field of ['F1', 'F2'])
        for (const insect of prepared.insects)
          expect(verbOf(asOf(prepared, then), field, insect).verb, `${field} ${insect} ${formatDay(then)}`).toBe(
            verbOf(anew, field, insect).verb,
          );
    }
  });

  it('and is the same after one more check as if that check had been there from the start', () => {
    const before = prepare(program, { on });
    adviseAll(before);
    const check = checkOf('2025-07-17', 44);
    const written = { ...program, checks: [...program.checks, check] };
    const prepared = withChecks(before, written, new Set([check.trapId]));
    const anew = prepare(written, { on });
    for (const field of ['F1', 'F2'])
      expect(asked(adviseCell(prepared, field, 'helicoverpa-zea'))).toEqual(asked(adviseCell(anew, field, 'helicoverpa-zea')));
  });
});
