/** A column that a schema gains goes through forms and history by itself. */
import type { CheckRecord, RecordKind } from '@duskwatch/core';
import { describe, expect, test, vi } from 'vitest';
import type { Labels } from '../../text/record-labels.ts';

vi.mock('../../../../core/src/records/schema.ts', async (actual) => {
  const { schemaWithMoon } = await import('../../../../core/src/records/made-up-column.testing.ts');
  return schemaWithMoon(await actual());
});
vi.mock('../../../../core/src/records/column-words.ts', async (actual) => {
  const { wordsWithMoon } = await import('../../../../core/src/records/made-up-column.testing.ts');
  return wordsWithMoon(await actual());
});

const { tables } = await import('@duskwatch/core');
const { formTextsOf, readForm } = await import('./form-texts.ts');
const { changesBetween } = await import('../history/versions.ts');

const check: CheckRecord & { readonly moonPhase: string } = {
  trapId: 'T1',
  checkedOn: '2026-07-01',
  visit: 1,
  targetCount: 3,
  otherCount: null,
  condition: 'fit',
  emptied: true,
  unfitReason: null,
  note: null,
  photo: null,
  moonPhase: 'full',
};
const trap = {
  trapId: 'T1',
  station: 'Gate',
  insect: 'helicoverpa-zea',
  design: 'bucket',
  latitude: null,
  longitude: null,
  hungOn: '2026-06-01',
  takenDownOn: null,
  informs: [],
} as const;
const form = { kept: { visit: 1 }, around: { traps: [{ ...trap, informs: [] }] } };

describe('a made-up column of checks', () => {
  test('is a box of the form, filled from the record and read back from it', () => {
    expect(tables.checks.columns.some(({ key }) => key === 'moonPhase')).toBe(true);
    const draft = formTextsOf('checks', check);
    expect(draft.moonPhase).toBe('full');
    expect(readForm('checks', { ...draft, moonPhase: 'new' }, form).value).toMatchObject({ moonPhase: 'new' });
    expect([...readForm('checks', { ...draft, moonPhase: 'half' }, form).problems.keys()]).toEqual(['moonPhase']);
  });

  test('has no label until somebody writes one, and then the forms do not compile', () => {
    type WithMoon = {
      readonly [K in RecordKind]: K extends 'checks' ? Labels['checks'] & { readonly moonPhase: object } : Labels[K];
    };
    const labels = {} as Labels;
    // @ts-expect-error: a label is missing.
    const all: WithMoon = labels;
    expect(all).toBe(labels);
  });

  test('is told among the changes of a record', () => {
    expect(changesBetween(check, { ...check, moonPhase: 'new' })).toEqual([
      { property: 'moonPhase', before: 'full', after: 'new' },
    ]);
  });
});
