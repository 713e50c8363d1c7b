import type { RoundStop, RoundTrap } from '@duskwatch/core';
import { describe, expect, it } from 'vitest';
import { roundTrap, visitOf } from '../../shared/check/invented-round.testing.ts';
import { whyDue } from './due-why.ts';
import { takeAlong } from './take-along.ts';
import { mapHref, wayFrom } from './way.ts';

const trap = (trapId: string, rest: Partial<RoundTrap> = {}): RoundTrap =>
  roundTrap(trapId, { lastVisit: visitOf('2025-07-09', 3), most: 3, ...rest });
const spent = { placedOn: '2025-06-12', lifeDays: 28, ageDays: 30, change: true };
const unfit = { on: '2025-07-09', visit: 1, count: null, condition: 'unfit', emptied: true, unfitReason: 'down' } as const;
const stop = (station: string, ...traps: RoundTrap[]): RoundStop => ({
  station,
  latitude: null,
  longitude: null,
  due: true,
  traps,
  fields: [],
});

describe('what to take along', () => {
  it('is added up from the stops, by insect, with the numbers of the stops that need it', () => {
    const borer = { insect: 'melittia-cucurbitae', insectName: { en: 'squash vine borer', es: 'barrenador' } };
    const stops = [
      stop('A', trap('A1')),
      stop('B', trap('B1', { lure: spent }), trap('B2', { ...borer, lure: spent })),
      stop('C', trap('C1', { lure: spent, due: false }), trap('C2', { lastVisit: unfit, design: 'mesh-cone' })),
    ];
    const taken = takeAlong(stops, () => true);
    expect(taken.lures.map(({ name, count }) => [name.en, count])).toEqual([
      ['corn earworm', 2],
      ['squash vine borer', 1],
    ]);
    expect(taken).toMatchObject({ lureStops: [2, 3], unfitStops: [3], liveStops: [3] });
  });

  it('leaves out traps that the round does not ask for', () => {
    const stops = [stop('A', trap('A1', { lure: spent }), trap('A2', { lastVisit: unfit }))];
    expect(takeAlong(stops, ({ trapId }) => trapId === 'none')).toEqual({
      lures: [],
      lureStops: [],
      unfitStops: [],
      liveStops: [],
    });
  });
});

describe('why a trap is due', () => {
  it('is a check late by days, a lure past its life, a trap found down, a skip that nobody has made up for', () => {
    const on = '2025-07-14';
    expect(whyDue(trap('T'), on)).toEqual([{ kind: 'check', daysLate: 2, first: false }]);
    expect(whyDue(trap('T', { due: false, lure: spent }), on)).toEqual([{ kind: 'lure', daysLeft: -2 }]);
    expect(whyDue(trap('T', { lastVisit: unfit }), on)).toEqual([{ kind: 'unfit', reason: 'down' }]);
    const skipped = { on: '2025-07-12', reason: 'locked' } as const;
    expect(whyDue(trap('T', { skipped, lastVisit: null }), on)).toEqual([
      { kind: 'check', daysLate: 2, first: true },
      { kind: 'skipped', ...skipped },
    ]);
    expect(whyDue(trap('T', { due: false }), on)).toEqual([]);
  });
});

describe('the way to a stop', () => {
  const here = { latitude: 44, longitude: -64 };

  it('is told by distance and one of eight winds', () => {
    expect(wayFrom(here, { latitude: 44.1, longitude: -64 })).toEqual({ distance: '11 km', wind: 'north' });
    expect(wayFrom(here, { latitude: 43.95, longitude: -64.07 })?.wind).toBe('south-west');
    expect(wayFrom(here, { latitude: 44.02, longitude: -64.002 })?.wind).toBe('north');
    expect(wayFrom(here, { latitude: null, longitude: null })).toBeNull();
  });

  it('is handed over to the phone’s own map by an address that it knows', () => {
    expect(mapHref(here, 'Gate & barn', 'Android')).toBe('geo:44,-64?q=44,-64(Gate%20%26%20barn)');
    expect(mapHref(here, 'Gate', 'iPhone')).toBe('maps:?ll=44,-64&q=Gate');
    expect(mapHref({ latitude: null, longitude: null }, 'Gate', 'Android')).toBeNull();
  });
});
