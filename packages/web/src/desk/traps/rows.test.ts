import type { StationPlace, StationTrap, TrapsView } from '@duskwatch/core';
import { describe, expect, test } from 'vitest';
import { asCsv } from '../../ui/table/cells.ts';
import { csvCells, selectRows } from './rows.ts';

const trapOf = (trapId: string, over: Partial<StationTrap> = {}): StationTrap => ({
  trapId,
  insect: { id: 'helicoverpa-zea', scientificName: 'Helicoverpa zea', commonName: { en: 'corn earworm', es: 'gusano' } },
  design: 'mesh-cone',
  state: 'hanging',
  hungOn: '2026-06-01',
  takenDownOn: null,
  latitude: null,
  longitude: null,
  informs: [{ fieldId: 'north', name: 'North piece', farm: 'Hill' }],
  check: { due: '2026-07-20', state: 'not-due', daysLate: 0 },
  lure: null,
  lastVisit: null,
  skipped: null,
  newest: null,
  seasons: [],
  ...over,
});
const placeOf = (station: string, traps: readonly StationTrap[]): StationPlace => ({
  station,
  place: 1,
  places: 1,
  latitude: null,
  longitude: null,
  movedM: null,
  firstHungOn: '2026-06-01',
  inUse: true,
  due: false,
  traps,
});
const rate = (perNight: number) => ({ from: '2026-07-01', to: '2026-07-08', nights: 7, perNight });
const view: TrapsView = {
  program: { name: 'Small', invented: true },
  on: '2026-07-15',
  designs: [],
  practices: [],
  places: [
    placeOf('Elm', [
      trapOf('E1', { newest: rate(9) }),
      trapOf('E0', { state: 'taken-down', check: null, takenDownOn: '2026-06-30', newest: rate(1) }),
    ]),
    placeOf('Oak', [
      trapOf('O1', { newest: rate(10.5), check: { due: '2026-07-10', state: 'overdue', daysLate: 5 } }),
      trapOf('O2', { informs: [{ fieldId: 'south', name: 'South piece', farm: 'Dale' }] }),
    ]),
  ],
};
const ids = (search: Parameters<typeof selectRows>[1]) => selectRows(view, search).map(({ trap }) => trap.trapId);

describe('the table of traps', () => {
  test('shows what hangs, unless asked for more', () => {
    expect(ids({})).toEqual(['E1', 'O1', 'O2']);
    expect(ids({ state: 'all' })).toEqual(['E0', 'E1', 'O1', 'O2']);
    expect(ids({ state: 'due' })).toEqual(['O1']);
    expect(ids({ state: 'taken-down' })).toEqual(['E0']);
  });

  test('finds by station, trap, field or farm, in any order of words', () => {
    expect(ids({ find: 'dale OAK' })).toEqual(['O2']);
    expect(ids({ farm: 'Hill', find: 'e1' })).toEqual(['E1']);
  });

  test('sorts rates as numbers, and puts a trap without one last both ways', () => {
    expect(ids({ sort: 'rate' })).toEqual(['E1', 'O1', 'O2']);
    expect(ids({ sort: 'rate', down: 'yes' })).toEqual(['O1', 'E1', 'O2']);
  });

  test('goes to a spreadsheet without a formula in it', () => {
    const [row] = selectRows({ ...view, places: [placeOf('=1+1, "Elm"', [trapOf('-E1', { latitude: -44.5 })])] }, {});
    const text = asCsv(['a'], [csvCells(row!)]);
    expect(text).toContain(`"'=1+1, ""Elm""",'-E1,`);
    expect(text).toContain(',-44.5,');
  });
});
