import { describe, expect, it } from 'vitest';
import { adviseCell, prepare } from '../advice/index.ts';
import { fieldOf, programOf, stageAt, trapOf, treatmentOf } from '../advice/test-program.ts';
import { day } from '../base/day.ts';
import { naturalKey } from '../records/index.ts';
import type { SampleRecord } from '../records/schema.ts';
import { standpoint } from '../scouting/walking.ts';
import { scoutingSheets, scoutingView } from './index.ts';

const program = programOf({
  fields: [
    fieldOf(),
    fieldOf({ fieldId: 'F2', name: 'Tomatoes', crop: 'tomato' }),
    fieldOf({ fieldId: 'F3', name: 'Squash', crop: 'squash' }),
    fieldOf({ fieldId: 'F4', name: 'Gone', harvestOn: '2025-07-01' }),
  ],
  traps: [
    trapOf({ insect: 'ostrinia-nubilalis', informs: ['F1', 'F4'] }),
    trapOf({ trapId: 'T2', informs: ['F2'] }),
    trapOf({ trapId: 'T3', insect: 'melittia-cucurbitae', informs: ['F3'] }),
  ],
  stages: [stageAt('tassel', '2025-07-12'), stageAt('fruiting', '2025-07-12', 'F2')],
  treatments: [treatmentOf('2025-07-14', { fieldId: 'F2', reentryHours: 24 })],
});
const on = (date: string, more: Partial<typeof program> = {}) => prepare({ ...program, ...more }, { on: day(date) });
const view = scoutingView(on('2025-07-15'));
const field = (id: string) => view.fields.find(({ fieldId }) => fieldId === id)!;
const pair = (id: string, insect: string) => field(id).pairs.find((each) => each.insect === insect)!;

describe('what may be scouted', () => {
  it('is every field with a crop on it and every insect that lives there', () => {
    expect(view.fields.map(({ fieldId }) => fieldId).sort()).toEqual(['F1', 'F2', 'F3']);
    expect(field('F3').pairs.map(({ insect }) => insect)).toEqual(['melittia-cucurbitae']);
  });

  it('puts first the rule for the stage the crop is at, and names the others', () => {
    expect(pair('F1', 'ostrinia-nubilalis').rules).toEqual([
      { ruleId: 'sweet-corn-corn-borer-tassel', match: 'now' },
      { ruleId: 'sweet-corn-corn-borer-whorl', match: 'over' },
    ]);
  });

  it('brings each plan once, and for an insect without a published figure a count', () => {
    expect(view.plans.map(({ ruleId }) => ruleId)).toContain('tomato-fruitworm-eggs');
    expect(new Set(view.plans.map(({ ruleId }) => ruleId)).size).toBe(view.plans.length);
    expect(pair('F3', 'melittia-cucurbitae').rules).toEqual([]);
    expect(view.counting.map(({ insect }) => insect)).toEqual(['melittia-cucurbitae']);
  });

  it('says what to look for, and which field is not to be entered', () => {
    const looks = view.looks.filter(({ insect, crop }) => insect === 'helicoverpa-zea' && crop === 'tomato');
    expect(looks.map(({ unit }) => unit).sort()).toEqual(['fruit', 'plants']);
    expect(field('F2').keepOut).toMatchObject([{ until: '2025-07-15', hours: 24 }]);
    expect(field('F1').keepOut).toEqual([]);
  });
});

describe('a walk that has ended', () => {
  const plan = view.plans.find(({ ruleId }) => ruleId === 'sweet-corn-corn-borer-tassel')!;
  const walked = (everyNth: number) => {
    const counts: number[] = [];
    do counts.push(Number(counts.length % everyNth === 0));
    while (standpoint(plan, counts).judgement === 'go-on');
    const { samples, infested, judgement } = standpoint(plan, counts);
    const sample: SampleRecord = {
      fieldId: 'F1',
      insect: 'ostrinia-nubilalis',
      sampledOn: '2025-07-15',
      kind: plan.unit,
      unitsExamined: samples,
      unitsInfested: infested,
      totalCount: null,
    };
    const prepared = on('2025-07-15', { samples: [sample] });
    return { judgement, sample, advice: adviseCell(prepared, 'F1', 'ostrinia-nubilalis'), after: scoutingView(prepared) };
  };

  it('above asks for a decision, and the sample is the reason', () => {
    const { judgement, advice } = walked(3);
    expect(judgement).toBe('above');
    expect(advice.verb).toBe('decide');
    expect(advice.because[0]).toMatchObject({ kind: 'sample', verdict: 'above' });
  });

  it('below answers the question, and is shown as the last sample', () => {
    const { judgement, advice, after, sample } = walked(40);
    expect(judgement).toBe('below');
    expect(advice.verb).not.toBe('decide');
    expect(advice.because).toContainEqual(expect.objectContaining({ kind: 'sample', verdict: 'below' }));
    const last = after.fields.find(({ fieldId }) => fieldId === 'F1')!.pairs[0]!.lastSample;
    expect(last).toMatchObject({ examined: sample.unitsExamined, infested: sample.unitsInfested });
    expect(naturalKey.samples(sample)).toBe('F1|ostrinia-nubilalis|2025-07-15|plants');
  });
});

describe('sheets to print', () => {
  const prepared = on('2025-07-15');

  it('hold the plan of the rule that speaks now, judged place by place', () => {
    const sheets = scoutingSheets(prepared, [{ fieldId: 'F1', insect: 'ostrinia-nubilalis' }]);
    if (!sheets.ok) throw new Error('refused');
    const [sheet] = sheets.value;
    expect(sheet!.plan?.ruleId).toBe('sweet-corn-corn-borer-tassel');
    expect(sheet!.lines.map(({ samples }) => samples).slice(0, 6)).toEqual([5, 10, 15, 20, 25, 30]);
    expect(sheet!.lines[3]).toMatchObject({ below: null, above: null });
    expect(sheet!.lines[4]).toMatchObject({ below: 1, above: 6 });
    expect(sheet!.curves!.atM1.below).toBeLessThan(0.1);
  });

  it('of an insect without a figure hold places to count at, and no line that stops', () => {
    const sheets = scoutingSheets(prepared, [{ fieldId: 'F3', insect: 'melittia-cucurbitae' }]);
    if (!sheets.ok) throw new Error('refused');
    expect(sheets.value[0]).toMatchObject({ plan: null, curves: null, counting: { units: 100 } });
    expect(sheets.value[0]!.lines.map(({ samples }) => samples)).toEqual([20, 40, 60, 80, 100]);
  });

  it('are refused for what is not there, each with what was wrong', () => {
    const refused = scoutingSheets(prepared, [
      { fieldId: 'F4', insect: 'ostrinia-nubilalis' },
      { fieldId: 'F1', insect: 'cydia-pomonella' },
      { fieldId: 'F1', insect: 'ostrinia-nubilalis', ruleId: 'tomato-fruitworm-eggs' },
    ]);
    expect(refused.ok ? [] : refused.problems.map(({ where }) => where.parameter)).toEqual(['fieldId', 'insect', 'ruleId']);
    expect(scoutingSheets(prepared, [{ fieldId: 'F1', insect: 'ostrinia-nubilalis' }], { alpha: 0.7 }).ok).toBe(false);
  });

  it('are those of everything to be scouted, when none is named', () => {
    const sheets = scoutingSheets(prepared, null);
    expect(sheets.ok && sheets.value.every(({ pair: { verb } }) => verb === 'scout')).toBe(true);
  });
});
