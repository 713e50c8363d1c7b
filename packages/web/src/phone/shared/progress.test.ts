import type { CheckRecord, RoundStop, RoundTrap, RoundView } from '@duskwatch/core';
import { describe, expect, it } from 'vitest';
import { roundTrap as trap } from '../../shared/check/invented-round.testing.ts';
import { newRevision } from '../../sync/new-revision.ts';
import type { OutboxEntry } from '../../sync/types.ts';
import { nextPlace, planOrder, progressOf, type Round, visitNumber } from './progress.ts';
import { writtenRecords } from './written.ts';

const stop = (station: string, latitude: number, traps: RoundTrap[]): RoundStop => ({
  station,
  latitude,
  longitude: -64,
  due: traps.some(({ due }) => due),
  traps,
  fields: [],
});
const later = { due: false, checkDue: '2025-07-15' };
const view: RoundView = {
  program: { name: 'Invented', invented: true },
  on: '2025-07-12',
  stops: [
    stop('A', 44.0, [trap('A1'), trap('A2', later)]),
    stop('B', 44.1, [trap('B1', later)]),
    stop('C', 44.2, [trap('C1'), trap('C2')]),
  ],
  dueLengthKm: 0,
};
const round: Round = { startedOn: '2025-07-12', afterPlace: 1, order: ['A', 'C'], all: false };

const saved = (place: number, trapId: string, value: Partial<CheckRecord> = {}): OutboxEntry => ({
  place,
  person: 'p',
  revision: newRevision('checks', {
    trapId,
    checkedOn: '2025-07-12',
    visit: 1,
    targetCount: 3,
    otherCount: null,
    condition: 'fit',
    emptied: true,
    note: null,
    ...value,
  }),
  state: 'pending',
  problems: [],
  answeredMs: null,
});
const skipped = (place: number, trapId: string): OutboxEntry => ({
  ...saved(place, trapId),
  revision: newRevision('skips', { trapId, skippedOn: '2025-07-12', reason: 'locked', note: null }),
});
const after = (...entries: OutboxEntry[]) => progressOf(view, round, writtenRecords(entries));
const place = (station: string, trapId: string) => ({ station, trapId });

describe('a round', () => {
  it('asks for the traps that are due, and for every trap when told so', () => {
    expect(planOrder(view, false, 'C').order).toEqual(['C', 'A']);
    expect(planOrder(view, true, 'A').order).toEqual(['A', 'B', 'C']);
    expect(after().total).toBe(3);
    expect(progressOf(view, { ...round, all: true, order: ['A', 'B', 'C'] }, []).total).toBe(5);
  });

  it('knows what was counted in it from the outbox alone, so that a dead battery takes nothing', () => {
    const { saved: done, stops } = after(saved(2, 'A1'));
    expect(done).toBe(1);
    expect(stops[0]).toMatchObject({ done: true });
  });

  it('does not take a check from before its start for its own, whatever the clock said', () => {
    expect(after(saved(1, 'A1')).saved).toBe(0);
  });

  it('goes to the next trap at the station, then on along the road, then round to what was left', () => {
    expect(nextPlace(after(), null)).toEqual(place('A', 'A1'));
    expect(nextPlace(after(), place('C', 'C1'))).toEqual(place('C', 'C2'));
    expect(nextPlace(after(saved(2, 'C1')), place('C', 'C2'))).toEqual(place('A', 'A1'));
    expect(nextPlace(after(saved(2, 'A1'), saved(3, 'C1'), saved(4, 'C2')), place('C', 'C2'))).toBeNull();
  });

  it('holds a skipped trap apart from a counted one: not checked is not zero', () => {
    const passed = after(skipped(2, 'C1'));
    expect(passed).toMatchObject({ saved: 0, skipped: 1, total: 3 });
    expect(passed.stops[1]!.traps[0]!.state).toMatchObject({ kind: 'skipped', skip: { reason: 'locked' } });
    expect(after(skipped(2, 'C1'), saved(3, 'C1'))).toMatchObject({ saved: 1, skipped: 0 });
    expect(after(skipped(1, 'C1')).skipped).toBe(0);
  });

  it('counts a trap that was not due when somebody saved it all the same', () => {
    expect(after(saved(2, 'A2'))).toMatchObject({ total: 4, saved: 1 });
  });

  it('is 22.2 km long over a fifth of a degree of latitude', () => {
    // 0.2° on a sphere of 6371.0088 km.
    expect(after().lengthKm).toBeCloseTo((0.2 * Math.PI * 6371.0088) / 180, 6);
  });
});

describe('the number of a visit', () => {
  it('is one more than any known visit of that trap and day, by whomever', () => {
    const seen = trap('A1', {
      lastVisit: { on: '2025-07-12', visit: 2, count: 1, condition: 'fit', emptied: true, unfitReason: null },
    });
    expect(visitNumber(trap('A1'), '2025-07-12', [])).toBe(1);
    expect(visitNumber(seen, '2025-07-12', [])).toBe(3);
    expect(visitNumber(seen, '2025-07-13', [])).toBe(1);
    expect(visitNumber(seen, '2025-07-12', writtenRecords([saved(2, 'A1', { visit: 3 })]))).toBe(4);
  });
});
