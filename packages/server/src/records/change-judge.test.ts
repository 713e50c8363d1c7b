import type { CheckRecord, TrapRecord } from '@duskwatch/core';
import { describe, expect, it } from 'vitest';
import { smallProgram } from '../small-program.testing.ts';
import { ChangeJudge } from './change-judge.ts';

const program = smallProgram();
const [trap] = program.traps as [TrapRecord];
const [first, second] = program.checks as [CheckRecord, CheckRecord];
const key = ({ trapId, checkedOn, visit }: CheckRecord) => `${trapId}|${checkedOn}|${visit}`;

describe('a change is judged on what it would leave behind', () => {
  it('a trap that was visited cannot be removed, nor hung after its first visit, nor renamed away from its visits', () => {
    const draft = new ChangeJudge(program);
    expect(draft.change('traps', 'T1', null)[0]).toMatchObject({ where: { column: 'trap_id' }, got: 'T1' });
    expect(draft.change('traps', 'T1', { ...trap, hungOn: '2026-07-10' })[0]).toMatchObject({ got: '2026-07-08' });
    expect(draft.change('traps', 'T1', { ...trap, trapId: 'T2' })[0]).toMatchObject({ got: 'T1' });
    // Refused changes leave no trace.
    expect(draft.change('checks', null, { ...first, checkedOn: '2026-07-09' })).toEqual([]);
  });

  it('a trap taken down before its last visit is refused; once that visit is gone it is not', () => {
    const draft = new ChangeJudge(program);
    const down = { ...trap, takenDownOn: '2026-07-10' };
    expect(draft.change('traps', 'T1', down)).toHaveLength(1);
    expect(draft.change('checks', key(second), null)).toEqual([]);
    expect(draft.change('traps', 'T1', down)).toEqual([]);
    expect(draft.change('checks', null, { ...second, checkedOn: '2026-07-11' })[0]).toMatchObject({ got: '2026-07-11' });
  });

  it('a trap may come with the field it informs, in that order', () => {
    const north = program.fields[0]!;
    const informs = { ...trap, trapId: 'T2', informs: ['south'] };
    expect(new ChangeJudge(program).change('traps', null, informs)[0]).toMatchObject({ got: 'south' });
    const draft = new ChangeJudge(program);
    expect(draft.change('fields', null, { ...north, fieldId: 'south' })).toEqual([]);
    expect(draft.change('traps', null, informs)).toEqual([]);
    expect(draft.change('fields', 'south', null)[0]).toMatchObject({ where: { column: 'informs' }, got: 'south' });
  });

  it('what was wrong before is nobody’s fault now', () => {
    const draft = new ChangeJudge({ ...program, checks: [...program.checks, { ...first, checkedOn: '2026-06-01' }] });
    expect(draft.change('checks', null, { ...first, checkedOn: '2026-07-12' })).toEqual([]);
    expect(draft.change('checks', null, { ...first, checkedOn: '2026-06-02' })).toHaveLength(1);
  });

  it('a visit moved to another day leaves its old day free', () => {
    const draft = new ChangeJudge(program);
    expect(draft.change('checks', key(first), { ...first, checkedOn: '2026-07-09' })).toEqual([]);
    expect(draft.change('checks', null, { ...first, visit: 2 })).toEqual([]);
    // The same count again as a second visit that day would be the first said twice.
    expect(draft.change('checks', null, { ...first, visit: 3 })[0]!.expected).toContain('second visit');
  });

  it('weather must not turn upside down, and a field’s source must be there', () => {
    const draft = new ChangeJudge(program);
    const cold = { sourceId: 'yard', date: '2026-07-14', tminC: 25, tmaxC: 12, precipitationMm: null };
    expect(draft.change('weather', null, cold)).toHaveLength(1);
    expect(draft.change('weather', null, { ...cold, tminC: 10 })).toEqual([]);
    expect(draft.change('fields', 'north', { ...program.fields[0]!, weatherSource: 'nowhere' })[0]).toMatchObject({
      got: 'nowhere',
    });
    expect(draft.change('fields', 'north', { ...program.fields[0]!, weatherSource: 'yard' })).toEqual([]);
  });
});
