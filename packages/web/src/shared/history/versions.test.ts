import type { CheckRecord } from '@duskwatch/core';
import { describe, expect, test } from 'vitest';
import type { OutboxEntry } from '../../sync/types.ts';
import type { StoredVersion } from '../record/queries.ts';
import { baseOver, changesBetween, headOf, versionsOf } from './versions.ts';

const check = (targetCount: number | null, over: Partial<CheckRecord> = {}): CheckRecord => ({
  trapId: 'T1',
  checkedOn: '2026-07-08',
  visit: 1,
  targetCount,
  otherCount: null,
  condition: 'fit',
  emptied: true,
  note: null,
  ...over,
});
const said = (revisionId: string, value: CheckRecord | null, over: Partial<StoredVersion> = {}): StoredVersion => ({
  revisionId,
  recordId: 'R',
  kind: 'checks',
  baseRevisionId: null,
  author: 'p1',
  authorName: 'Ann (invented)',
  at: '2026-07-08T10:00:00.000Z',
  countedAt: '2026-07-08T10:00:00.000Z',
  key: 'T1|2026-07-08|1',
  standing: 'past',
  value,
  ...over,
});
const entry = (revisionId: string, value: CheckRecord | null, baseRevisionId: string): OutboxEntry => ({
  place: 1,
  person: 'this-machine',
  state: 'pending',
  problems: [],
  answeredMs: null,
  revision: { revisionId, recordId: 'R', kind: 'checks', baseRevisionId, at: '2026-07-09T10:00:00.000Z', value },
});
const key = 'T1|2026-07-08|1';

describe('versions of a record', () => {
  const history = [
    said('1', check(3)),
    said('2', check(13), { baseRevisionId: '1', standing: 'current' }),
    said('3', check(30), { baseRevisionId: '1', standing: 'rival' }),
  ];

  test('show property by property what each changed against what its writer had seen', () => {
    const versions = versionsOf('checks', key, history, []);
    expect(versions.map((version) => version.said.revisionId)).toEqual(['3', '2', '1']);
    expect(versions[0]!.changes).toEqual([{ property: 'targetCount', before: 3, after: 30 }]);
    expect(versions[1]!.changes).toEqual([{ property: 'targetCount', before: 3, after: 13 }]);
    expect(versions[2]!.changes.map(({ property }) => property)).not.toContain('note');
  });

  test('are edited on top of what holds, and decide over what competes', () => {
    const versions = versionsOf('checks', key, history, []);
    const head = headOf(versions)!;
    expect(head.said.revisionId).toBe('2');
    expect(baseOver(versions, head)).toEqual({ recordId: 'R', revisionId: '2', rivals: ['3'] });
  });

  test('hold what this machine wrote and could not send yet', () => {
    const versions = versionsOf('checks', key, history, [entry('4', check(14), '2')]);
    expect(versions[0]).toMatchObject({ notSent: true, standing: 'current' });
    expect(versions[0]!.changes).toEqual([{ property: 'targetCount', before: 13, after: 14 }]);
    expect(versions.filter(({ standing }) => standing === 'current')).toHaveLength(1);
    expect(headOf(versions)!.said.revisionId).toBe('4');
  });

  test('a removal made here is the last word, and a removed record is brought back on top of it', () => {
    const versions = versionsOf('checks', key, history, [entry('4', null, '2')]);
    expect(headOf(versions)).toMatchObject({ standing: 'removed', said: { revisionId: '4' } });
  });

  test('what has arrived is not told twice, and what was refused is not told', () => {
    const arrived = { ...entry('2', check(13), '1'), state: 'acknowledged' as const };
    const refused = { ...entry('5', check(99), '2'), state: 'refused' as const };
    expect(versionsOf('checks', key, history, [arrived, refused])).toHaveLength(3);
  });
});

test('a property left out and one that is null are the same', () => {
  expect(changesBetween(check(1), { ...check(1), photo: null })).toEqual([]);
});
