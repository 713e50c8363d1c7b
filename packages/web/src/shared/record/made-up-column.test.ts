/** A column that a schema gains goes through forms, history and the phone by itself. */
import type { CheckRecord, RecordKind } from '@duskwatch/core';
import { describe, expect, test, vi } from 'vitest';
import { z } from 'zod';
import type { Labels } from '../../text/record-labels.ts';

vi.mock('../../../../core/src/records/schema.ts', async (original) => {
  const actual = await original<typeof import('../../../../core/src/records/schema.ts')>();
  return { ...actual, checkSchema: actual.checkSchema.extend({ moonPhase: z.enum(['new', 'full']).nullable().optional() }) };
});
vi.mock('../../../../core/src/records/column-words.ts', async (original) => {
  const { columnWords } = await original<typeof import('../../../../core/src/records/column-words.ts')>();
  const moon_phase = ['The moon at the visit.', { extension: true }];
  return { columnWords: { ...columnWords, checks: { ...columnWords.checks, moon_phase } } };
});

const { tables } = await import('@duskwatch/core');
const { draftOf, readDraft } = await import('./draft.ts');
const { changesBetween } = await import('../history/versions.ts');
const { checkFrom, draftOf: phoneDraftOf } = await import('../../phone/shared/draft.ts');
const { planSaying, writtenRecords } = await import('../../phone/shared/written.ts');
const { newRevision } = await import('../../sync/new-revision.ts');

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
const visit = { trapId: 'T1', checkedOn: '2026-07-01', visit: 1 };

describe('a made-up column of checks', () => {
  test('is a box of the form, filled from the record and read back from it', () => {
    expect(tables.checks.columns.some(({ key }) => key === 'moonPhase')).toBe(true);
    const draft = draftOf('checks', check);
    expect(draft.moonPhase).toBe('full');
    expect(readDraft('checks', { ...draft, moonPhase: 'new' }, form).value).toMatchObject({ moonPhase: 'new' });
    expect([...readDraft('checks', { ...draft, moonPhase: 'half' }, form).problems.keys()]).toEqual(['moonPhase']);
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

  test('survives a correction on the phone, whose form does not ask for it', () => {
    const draft = { ...phoneDraftOf(check, { changed: false, lifeDays: null }), target: '4' };
    expect(checkFrom(draft, visit, null, check)).toEqual({ ...check, targetCount: 4 });
  });

  test('makes a phone send the record anew when nothing else has changed', () => {
    const revision = newRevision('checks', check, null, 0);
    const written = writtenRecords([{ place: 1, state: 'pending', revision } as never]);
    const plan = (value: object) => planSaying([{ kind: 'checks', value: value as CheckRecord }], written, written, 1).revisions;
    expect(plan({ ...check })).toEqual([]);
    expect(plan({ ...check, moonPhase: 'new' })).toMatchObject([{ value: { moonPhase: 'new' } }]);
  });
});
