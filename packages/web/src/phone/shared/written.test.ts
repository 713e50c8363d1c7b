import type { CheckRecord } from '@duskwatch/core';
import { describe, expect, it } from 'vitest';
import type { EntryState, NewRevision, OutboxEntry } from '../../sync/types.ts';
import { ofKind, revisionsBack, revisionsFor, standing, type WantedRecord, type Written, writtenRecords } from './written.ts';

const check = (targetCount: number, rest: Partial<CheckRecord> = {}): WantedRecord<'checks'> => ({
  kind: 'checks',
  value: {
    trapId: 'T1',
    checkedOn: '2025-07-12',
    visit: 1,
    targetCount,
    otherCount: null,
    condition: 'fit',
    emptied: true,
    note: null,
    ...rest,
  },
});
const lure: WantedRecord<'lures'> = { kind: 'lures', value: { trapId: 'T1', placedOn: '2025-07-12', lifeDays: 28 } };

/** An outbox that keeps what it is given, each in the state named. */
class Pocket {
  entries: OutboxEntry[] = [];

  keep(revisions: readonly NewRevision[], state: EntryState = 'pending') {
    for (const revision of revisions) {
      this.entries.push({ place: this.entries.length + 1, person: 'p', revision, state, problems: [], answeredMs: null });
    }
  }

  say(wanted: readonly WantedRecord[], before: readonly Written[] = [], state: EntryState = 'pending') {
    const plan = revisionsFor(wanted, before, this.written(), 1_752_300_000_000);
    this.keep(plan.revisions, state);
    this.entries = this.entries.filter(({ revision }) => !plan.replaces.includes(revision.revisionId));
    return plan;
  }

  written = () => writtenRecords(this.entries);
  standing = () => standing(this.written());
}

describe('what the phone says about a record', () => {
  it('corrects a saved check by a revision that builds on the one before', () => {
    const pocket = new Pocket();
    pocket.say([check(12)]);
    const [first] = pocket.written();
    const { revisions } = pocket.say([check(14)], [first!]);
    expect(revisions).toEqual([
      expect.objectContaining({ recordId: first!.recordId, baseRevisionId: first!.entries[0]!.revision.revisionId }),
    ]);
    expect(pocket.standing().checks.map(({ targetCount }) => targetCount)).toEqual([14]);
  });

  it('says nothing when nothing changed', () => {
    const pocket = new Pocket();
    pocket.say([check(12), lure]);
    expect(pocket.say([check(12), lure], pocket.written()).revisions).toEqual([]);
  });

  it('takes back a check by a removal, and says the same record again when it is counted anew', () => {
    const pocket = new Pocket();
    pocket.say([check(12)]);
    pocket.say([], pocket.written());
    expect(pocket.standing().checks).toEqual([]);
    pocket.say([check(13)], pocket.written());
    expect(new Set(pocket.entries.map(({ revision }) => revision.recordId)).size).toBe(1);
    expect(pocket.entries.map(({ revision }) => (revision.value as CheckRecord | null)?.targetCount)).toEqual([
      12,
      undefined,
      13,
    ]);
  });

  it('takes back all that one save said: what was new goes, and a stage is again what it was', () => {
    const pocket = new Pocket();
    const stage = (word: string): WantedRecord => ({
      kind: 'stages',
      value: { fieldId: 'F', observedOn: '2025-07-12', stage: word },
    });
    const skip: WantedRecord = { kind: 'skips', value: { trapId: 'T1', skippedOn: '2025-07-12', reason: 'locked', note: null } };
    pocket.say([stage('tassel'), skip]);
    const was = pocket.written();
    const plan = pocket.say([check(12), lure, stage('silk')], ofKind(was, 'skips'));
    expect(pocket.standing()).toMatchObject({ checks: [{ targetCount: 12 }], skips: [] });
    const back = revisionsBack(plan, was, pocket.written(), 1_752_300_000_000);
    pocket.keep(back.revisions);
    expect(pocket.standing()).toMatchObject({
      checks: [],
      lures: [],
      stages: [{ stage: 'tassel' }],
      skips: [{ reason: 'locked' }],
    });
  });

  it('removes a lure that a correction no longer says', () => {
    const pocket = new Pocket();
    pocket.say([check(12), lure]);
    pocket.say([check(12)], pocket.written());
    expect(pocket.standing()).toMatchObject({ lures: [], checks: [{ targetCount: 12 }] });
  });

  it('edits a stage seen earlier that day rather than saying a second one', () => {
    const pocket = new Pocket();
    const stage = (word: string): WantedRecord => ({
      kind: 'stages',
      value: { fieldId: 'F', observedOn: '2025-07-12', stage: word },
    });
    pocket.say([stage('tassel')]);
    pocket.say([stage('silk')]);
    expect(ofKind(pocket.written(), 'stages')).toHaveLength(1);
    expect(pocket.standing().stages.map(({ stage: word }) => word)).toEqual(['silk']);
  });

  it('puts a check right that was refused as new: as a new record, and the refused one is given up', () => {
    const pocket = new Pocket();
    pocket.say([check(12)], [], 'refused');
    const refused = pocket.entries[0]!.revision.revisionId;
    const plan = pocket.say([check(14)], pocket.written());
    expect(plan).toMatchObject({ replaces: [refused], revisions: [{ baseRevisionId: null }] });
    expect(pocket.standing().checks.map(({ targetCount }) => targetCount)).toEqual([14]);
  });

  it('builds on what the server has when only the correction was refused', () => {
    const pocket = new Pocket();
    pocket.say([check(12)], [], 'acknowledged');
    const known = pocket.entries[0]!.revision.revisionId;
    pocket.say([check(99)], pocket.written(), 'refused');
    expect(pocket.say([check(14)], pocket.written())).toMatchObject({ revisions: [{ baseRevisionId: known }] });
  });

  it('says a refused check again even as it was, and only gives up a refused one that is taken back', () => {
    const pocket = new Pocket();
    pocket.say([check(12)], [], 'refused');
    expect(revisionsFor([check(12)], pocket.written(), pocket.written(), 0).revisions).toHaveLength(1);
    expect(revisionsFor([], pocket.written(), pocket.written(), 0)).toMatchObject({
      revisions: [],
      replaces: [expect.any(String)],
    });
  });
});
