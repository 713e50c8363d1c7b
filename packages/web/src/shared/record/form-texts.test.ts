import type { CheckRecord, TrapRecord } from '@duskwatch/core';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formTextsOf, readForm } from './form-texts.ts';

const trap: TrapRecord = {
  trapId: 'T1',
  station: 'Oak',
  insect: 'helicoverpa-zea',
  design: 'mesh-cone',
  latitude: 44.9,
  longitude: -63.5,
  hungOn: '2026-06-01',
  takenDownOn: null,
  informs: ['north', 'south'],
};
const field = (fieldId: string) => ({
  fieldId,
  farm: 'Hill',
  name: fieldId,
  crop: 'sweet-corn',
  growthHabit: null,
  plantedOn: null,
  harvestOn: null,
  latitude: null,
  longitude: null,
  timeZone: null,
  weatherSource: null,
});
const fields = [field('north'), field('south')];
const problemsAt = (read: ReturnType<typeof readForm>, property: string) => read.problems.get(property) ?? [];

describe('a record in boxes', () => {
  test('comes back as it was written', () => {
    expect(readForm('traps', formTextsOf('traps', trap), { around: { fields } }).value).toEqual(trap);
    const count = fc.option(fc.nat(1_000_000), { nil: null });
    const note = fc.option(fc.string({ minLength: 1, maxLength: 40 }), { nil: null }).filter((text) => text?.trim() !== '');
    fc.assert(
      fc.property(count, note, fc.boolean(), (otherCount, text, emptied) => {
        const check: CheckRecord = {
          trapId: 'T1',
          checkedOn: '2026-06-09',
          visit: 1,
          targetCount: 3,
          otherCount,
          condition: 'fit',
          emptied,
          note: text?.includes('\0') ? null : text,
        };
        const { value } = readForm('checks', formTextsOf('checks', check), {
          kept: { trapId: 'T1', visit: 1 },
          around: { fields, traps: [trap] },
        });
        expect(value).toEqual(check);
      }),
    );
  });

  test('takes a figure with a decimal comma', () => {
    const draft = { ...formTextsOf('traps', trap), latitude: '44,9' };
    expect(readForm('traps', draft, { around: { fields } }).value?.latitude).toBe(44.9);
  });

  test('says beside each box what was got, what was expected, and what to do', () => {
    const draft = { ...formTextsOf('traps', trap), hungOn: '6/1/26', latitude: '144', station: '' };
    const read = readForm('traps', draft, { around: { fields } });
    expect(read.value).toBeNull();
    expect([...read.problems.keys()].sort()).toEqual(['hungOn', 'latitude', 'station']);
    expect(problemsAt(read, 'latitude')[0]).toMatchObject({ got: '144', expected: 'a number from -90 to 90' });
    for (const [problem] of read.problems.values()) expect(problem!.fix).not.toBe('');
  });

  test('may be asked for more than its table asks for', () => {
    const draft = { ...formTextsOf('traps', trap), takenDownOn: '' };
    expect(readForm('traps', draft, { around: { fields } }).value).toEqual(trap);
    const read = readForm('traps', draft, { around: { fields }, demanded: ['takenDownOn'] });
    expect(read.value).toBeNull();
    expect([...read.problems.keys()]).toEqual(['takenDownOn']);
  });

  test('is judged against what it refers to: order of days, fields that exist, a count that is missing', () => {
    const backwards = { ...formTextsOf('traps', trap), takenDownOn: '2026-05-01' };
    expect(problemsAt(readForm('traps', backwards, { around: { fields } }), 'takenDownOn')).toHaveLength(1);
    const astray = { ...formTextsOf('traps', trap), informs: 'north;norht' };
    expect(problemsAt(readForm('traps', astray, { around: { fields } }), 'informs')[0]!.fix).toContain('north');
    const check = { checkedOn: '2026-06-08', condition: 'fit', targetCount: '', emptied: 'yes' };
    const read = readForm('checks', check, { kept: { trapId: 'T1', visit: 1 }, around: { fields, traps: [trap] } });
    expect(problemsAt(read, 'targetCount')[0]!.expected).toContain('not counted is not zero');
    const early = { ...check, targetCount: '3', checkedOn: '2026-05-20' };
    const before = readForm('checks', early, { kept: { trapId: 'T1', visit: 1 }, around: { fields, traps: [trap] } });
    expect(problemsAt(before, 'checkedOn')[0]!.expected).toContain('2026-06-01');
  });

  test('may replace the record of its own key, unless it is a new one', () => {
    const around = { fields, traps: [{ ...trap, design: 'bucket' as const }] };
    expect(readForm('traps', formTextsOf('traps', trap), { around }).value).toEqual(trap);
    expect(problemsAt(readForm('traps', formTextsOf('traps', trap), { around, fresh: true }), 'trapId')).toHaveLength(1);
  });

  test('is contradicted by no list that is not here, as without signal', () => {
    expect(readForm('traps', formTextsOf('traps', trap), { around: { fields: [] } }).value).toEqual(trap);
    expect(readForm('traps', formTextsOf('traps', trap), { around: { fields: [field('north')] } }).value).toBeNull();
  });
});
