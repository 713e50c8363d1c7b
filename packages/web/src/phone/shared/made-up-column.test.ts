/** A column that a schema gains is kept by a phone whose form does not ask for it. */
import type { CheckRecord } from '@duskwatch/core';
import { describe, expect, test, vi } from 'vitest';

vi.mock('../../../../core/src/records/schema.ts', async (actual) => {
  const { schemaWithMoon } = await import('../../../../core/src/records/made-up-column.testing.ts');
  return schemaWithMoon(await actual());
});
vi.mock('../../../../core/src/records/column-words.ts', async (actual) => {
  const { wordsWithMoon } = await import('../../../../core/src/records/made-up-column.testing.ts');
  return wordsWithMoon(await actual());
});

const { checkFrom, unsavedOf } = await import('../../shared/check/unsaved-check.ts');
const { revisionsFor, writtenRecords } = await import('./written.ts');
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
const visit = { trapId: 'T1', checkedOn: '2026-07-01', visit: 1 };

describe('a made-up column of checks', () => {
  test('survives a correction on the phone, whose form does not ask for it', () => {
    const draft = { ...unsavedOf(check, { changed: false, lifeDays: null }), target: '4' };
    expect(checkFrom(draft, visit, null, check)).toEqual({ ...check, targetCount: 4 });
  });

  test('makes a phone send the record anew when nothing else has changed', () => {
    const revision = newRevision('checks', check, null, 0);
    const written = writtenRecords([{ place: 1, state: 'pending', revision } as never]);
    const plan = (value: object) =>
      revisionsFor([{ kind: 'checks', value: value as CheckRecord }], written, written, 1).revisions;
    expect(plan({ ...check })).toEqual([]);
    expect(plan({ ...check, moonPhase: 'new' })).toMatchObject([{ value: { moonPhase: 'new' } }]);
  });
});
