import { describe, expect, it } from 'vitest';
import { prepare } from '../advice/index.ts';
import {
  checkOf,
  decisionOf,
  fieldOf,
  lureAt,
  programOf,
  stageAt,
  steadyWeather,
  trapOf,
  treatmentOf,
} from '../advice/test-program.ts';
import { day } from '../base/day.ts';
import { scopeProgram } from '../records/scope.ts';
import { english, spanish } from '../text/index.ts';
import { ownFieldsSchema, ownFieldsView } from './index.ts';

const on = '2025-07-11';
const silk = (fieldId: string) => stageAt('silk', '2025-07-08', fieldId);
const named = (fieldId: string, farm = 'Test Farm') => fieldOf({ fieldId, name: fieldId, farm });

/** A field for each of what can be said, and one of somebody else. */
const program = programOf({
  fields: [
    named('quiet'),
    named('blind'),
    named('covered'),
    named('due'),
    named('late'),
    named('grapes'),
    named('elsewhere', 'Other Farm'),
  ].map((field) => (field.fieldId === 'grapes' ? { ...field, crop: 'field-corn' } : field)),
  traps: [
    trapOf({ trapId: 'few', informs: ['quiet', 'grapes'] }),
    trapOf({ trapId: 'down', informs: ['blind'] }),
    trapOf({ trapId: 'many', informs: ['covered', 'due', 'elsewhere'] }),
    trapOf({ trapId: 'long', informs: ['late'] }),
  ],
  stages: ['quiet', 'blind', 'covered', 'due', 'late', 'grapes', 'elsewhere'].map(silk),
  lures: ['few', 'down', 'many', 'long'].map((trap) => lureAt('2025-07-01', 28, trap)),
  checks: [
    checkOf('2025-07-11', 0, { trapId: 'few' }),
    checkOf('2025-07-11', null, { trapId: 'down', condition: 'unfit' }),
    checkOf('2025-07-11', 60, { trapId: 'many' }),
    checkOf('2025-07-04', 30, { trapId: 'long' }),
    checkOf('2025-07-11', 60, { trapId: 'long' }),
  ],
  treatments: [treatmentOf('2025-07-10', { fieldId: 'covered' })],
  weather: steadyWeather('2025-06-01', '2025-07-10', 60, 82),
});
const grower = { id: 'g', name: 'G', role: 'grower', farms: ['Test Farm'], language: 'en', disabled: false } as const;
const own = (parts = program, today = on) => ownFieldsView(prepare(scopeProgram(parts, grower), { on: day(today) }));

describe('a grower’s own fields', () => {
  const view = own();

  it('come the most urgent first: the longest due, then due, then not seen, then covered', () => {
    expect(view.acting.map(({ fieldId, lead }) => [fieldId, lead.verb])).toEqual([
      ['late', 'decide'],
      ['due', 'decide'],
      ['blind', 'blind'],
      ['covered', 'covered'],
    ]);
    expect(view.acting[0]!.lead.dueSince).toBe('2025-07-08');
    expect(ownFieldsSchema.parse(view)).toEqual(view);
  });

  it('leave out what is of others, and put what only rests or no rule judges apart', () => {
    expect(view.resting.map(({ fieldId }) => fieldId)).toEqual(['quiet', 'grapes']);
    expect(view.resting[0]!.nextCheck).not.toBeNull();
    expect([...view.acting, ...view.resting].map(({ farm }) => farm)).not.toContain('Other Farm');
  });

  it('put a field back among what rests once all that was due is answered', () => {
    const answers = (['not-treated', 'not-scouted'] as const).map((decision) => decisionOf(on, { fieldId: 'due', decision }));
    const one = own({ ...program, decisions: answers.slice(0, 1) });
    expect(one.acting.map(({ fieldId, lead }) => [fieldId, lead.verb])).toContainEqual(['due', 'scout']);
    const both = own({ ...program, decisions: answers });
    expect(both.acting.map(({ fieldId }) => fieldId)).not.toContain('due');
    expect(both.resting.map(({ fieldId }) => fieldId)).toContain('due');
  });

  it('name what else there is to do in the same field, and nothing that is only watched', () => {
    const two = own({
      ...program,
      traps: [
        ...program.traps,
        trapOf({ trapId: 'second', insect: 'spodoptera-frugiperda', design: 'bucket', informs: ['due', 'quiet'] }),
      ],
      lures: [...program.lures, lureAt('2025-07-01', 28, 'second')],
      checks: [...program.checks, checkOf('2025-07-11', null, { trapId: 'second', condition: 'unfit' })],
    });
    const due = two.acting.find(({ fieldId }) => fieldId === 'due')!;
    expect(due.further).toEqual([expect.objectContaining({ insect: 'spodoptera-frugiperda', verb: 'blind' })]);
    expect(two.acting.find(({ fieldId }) => fieldId === 'quiet')!.lead.insect).toBe('spodoptera-frugiperda');
  });

  it('are nobody’s while there are none, or no insect is followed', () => {
    expect(own(programOf({ fields: [], traps: [] }))).toMatchObject({ acting: [], resting: [], countsTo: null });
    expect(own(programOf({ traps: [] })).acting).toEqual([]);
  });

  it('give the reason in a few words of both languages, with the adviser beside a decision', () => {
    const en = english({ temperature: 'F', dayOrder: 'month-day' });
    const es = spanish({ temperature: 'C' });
    const due = view.acting.find(({ fieldId }) => fieldId === 'due')!.lead;
    expect(en.inShort(due)).toBe('Moths at 6 a night. Silk seen Tue July 8. Decide with a licensed adviser.');
    expect(es.inShort(due)).toMatch(/^6 polillas por noche\. .*Decida con un asesor autorizado\.$/);
    const blind = view.acting.find(({ lead }) => lead.verb === 'blind')!.lead;
    expect(en.inShort(blind)).toMatch(/^Trap down \(mesh cone\) was found unfit.*look at the plants yourself\.$/);
    for (const { lead } of [...view.acting, ...view.resting])
      for (const said of [en.inShort(lead), es.inShort(lead)]) expect(said).not.toMatch(/spray|aspersi|undefined|NaN/i);
  });
});
