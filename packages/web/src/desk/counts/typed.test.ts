import type { RoundTrap, RoundView, UnfitReason } from '@duskwatch/core';
import { describe, expect, it } from 'vitest';
import { roundTrap, visitOf } from '../../shared/check/invented-round.testing.ts';
import { choose, typeCount } from '../../shared/check/unsaved-check.ts';
import { filled, NOTHING, rowsOf, TypedCounts } from './typed.ts';

const ON = '2026-07-15';
const trap = (trapId: string, lastOn: string, count: number): RoundTrap =>
  roundTrap(trapId, { lastVisit: visitOf(lastOn, count), most: count, told: [{ count, nights: 7 }] });
const view: RoundView = {
  program: { name: 'Invented', invented: true },
  on: ON,
  stops: [trap('A1', '2026-07-08', 2), trap('B1', '2026-07-08', 3), trap('C1', ON, 4)].map((each) => ({
    station: each.trapId,
    latitude: null,
    longitude: null,
    due: true,
    traps: [each],
    fields: [],
  })),
  dueLengthKm: 0,
};
const rows = rowsOf(view);
const counted = (text: string) => typeCount(NOTHING, 'target', text);
const unfit = (reason: UnfitReason | null) => ({ ...choose(NOTHING, 'unfit'), unfit: reason });

/** As a window keeps it. */
function storage(): Storage {
  const kept = new Map<string, string>();
  return {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
    removeItem: (key: string) => void kept.delete(key),
  } as Storage;
}

describe('the sheet of a day’s counts', () => {
  it('makes a check of each line that says something, a zero among them, and none of an empty one', () => {
    const { checks, lacking } = filled(view, rows, { A1: counted('0') });
    expect(lacking).toEqual([]);
    expect(checks).toMatchObject([{ trapId: 'A1', checkedOn: ON, visit: 1, targetCount: 0, otherCount: null, condition: 'fit' }]);
  });

  it('names the lines that say too little: an unfit trap without its reason, a remark without a count', () => {
    const { lacking } = filled(view, rows, { A1: unfit(null), B1: { ...NOTHING, note: 'in the ditch' } });
    expect(lacking).toEqual([
      { trapId: 'A1', what: 'unfit-reason' },
      { trapId: 'B1', what: 'count' },
    ]);
    expect(filled(view, rows, { A1: unfit('down') })).toMatchObject({
      lacking: [],
      checks: [{ targetCount: null, condition: 'unfit', unfitReason: 'down' }],
    });
  });

  it('does not count a trap twice whose visit of the day is in the records by now', () => {
    expect(filled(view, rows, { C1: counted('9') }).checks).toEqual([]);
  });

  it('points at counts far above what the visits before let expect', () => {
    expect(filled(view, rows, { A1: counted('3'), B1: counted('400') }).odd).toEqual(['B1']);
  });

  it('keeps what was typed for its day until it is saved, whatever became of the page', () => {
    const window = storage();
    new TypedCounts(ON, window).set({ A1: counted('12'), B1: unfit('stolen') });
    const again = new TypedCounts(ON, window);
    expect(again.of('A1').target).toBe('12');
    expect(again.of('B1')).toMatchObject({ condition: 'unfit', unfit: 'stolen' });
    expect(new TypedCounts('2026-07-14', window).all()).toEqual({});
    again.clear();
    expect(new TypedCounts(ON, window).all()).toEqual({});
    window.setItem(`duskwatch.counts.${ON}`, 'spoilt');
    expect(new TypedCounts(ON, window).all()).toEqual({});
  });
});
