import type { RoundTrap, RoundView } from '@duskwatch/core';
import { expect, test } from 'vitest';
import { roundTrap, visitOf } from './invented-round.testing.ts';
import { oddCount } from './odd-count.ts';

const ON = '2026-07-15';
const trap = (trapId: string, count: number, over: Partial<RoundTrap> = {}): RoundTrap =>
  roundTrap(trapId, { lastVisit: visitOf('2026-07-12', count), most: count, told: [{ count, nights: 3 }], ...over });
const round = (...traps: RoundTrap[]): RoundView => ({
  program: { name: 'Invented', invented: true },
  on: ON,
  stops: traps.map((each) => ({ station: each.trapId, latitude: null, longitude: null, due: true, traps: [each], fields: [] })),
  dueLengthKm: 0,
});
const asked = (of: RoundTrap, now: number, ...others: RoundTrap[]) => oddCount(of, round(of, ...others), ON, now);

test('nothing where sixty were to be expected is asked about, with what the traps around found', () => {
  expect(asked(trap('A', 60), 0, trap('B', 44), trap('C', 51))).toEqual({
    side: 'low',
    last: 60,
    now: 0,
    most: 60,
    around: [44, 51],
  });
  expect(asked(trap('A', 60), 9)).toBeNull();
});

test('412 after 12 is asked about for being high, and nothing after 12 is not asked about', () => {
  expect(asked(trap('A', 12), 412)).toMatchObject({ side: 'high', last: 12, now: 412 });
  expect(asked(trap('A', 12), 0)).toBeNull();
});

test('moths that were left in are taken off first; fewer than those are no fewer than none', () => {
  const left = trap('A', 60, {
    lastVisit: { ...visitOf('2026-07-12', 60), emptied: false },
  });
  expect(asked(left, 115)).toBeNull();
  expect(asked(left, 60)).toMatchObject({ side: 'low' });
  expect(asked(left, 12)).toMatchObject({ side: 'low' });
});

test('a trap of which nothing is known is never asked about', () => {
  expect(asked(trap('A', 0, { lastVisit: null, told: [], most: null }), 0)).toBeNull();
});
