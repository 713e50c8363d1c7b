import { describe, expect, it } from 'vitest';
import { prepare } from '../advice/index.ts';
import { checkOf, fieldOf, lureAt, programOf, trapOf } from '../advice/test-program.ts';
import { day } from '../base/day.ts';
import { checkOfVisit, trapsView, trapView, trapVisit } from './index.ts';

const north = { latitude: 45, longitude: -63 };
/** About 44 m and 111 m to the north: one degree of latitude is 111.2 km. */
const near = { latitude: 45.0004, longitude: -63 };
const far = { latitude: 45.001, longitude: -63 };
const nowhere = { latitude: null, longitude: null };

const places = (traps: Parameters<typeof trapOf>[0][], on = '2025-07-15') =>
  trapsView(prepare(programOf({ fields: [fieldOf()], traps: traps.map(trapOf) }), { on: day(on) })).places.map(
    ({ place, places: of, movedM, inUse, traps: standing }) => [place, of, movedM, inUse, standing.map(({ trapId }) => trapId)],
  );

describe('a station', () => {
  it('is one place while its traps stand within 50 m, whoever set them up', () => {
    expect(
      places([
        { trapId: 'A', station: 'Gate', ...north },
        { trapId: 'B', station: 'Gate', ...near },
      ]),
    ).toEqual([[1, 1, null, true, ['A', 'B']]]);
  });

  it('that stood somewhere else last year is another place under the same name', () => {
    const last = { trapId: 'A', station: 'Gate', hungOn: '2024-06-01', takenDownOn: '2024-09-01', ...north };
    expect(places([last, { trapId: 'B', station: 'Gate', ...far }])).toEqual([
      [2, 2, 111, true, ['B']],
      [1, 2, null, false, ['A']],
    ]);
  });

  it('takes in a trap without coordinates when it has one place, and leaves it apart when it has two', () => {
    const lost = { trapId: 'C', station: 'Gate', hungOn: '2025-07-02', ...nowhere };
    expect(places([{ trapId: 'A', station: 'Gate', ...north }, lost]).map((row) => row[4])).toEqual([['C', 'A']]);
    const three = places([{ trapId: 'A', station: 'Gate', ...north }, { trapId: 'B', station: 'Gate', ...far }, lost]);
    expect(three.map((row) => row[4])).toEqual([['C'], ['B'], ['A']]);
    expect(three[0]![2]).toBeNull();
  });

  it('of another name at the same spot is a station of its own', () => {
    expect(
      places([
        { trapId: 'A', station: 'Gate', ...north },
        { trapId: 'B', station: 'Barn', ...north },
      ]),
    ).toHaveLength(2);
  });
});

describe('a trap in the table', () => {
  const program = programOf({
    fields: [fieldOf()],
    traps: [
      trapOf({ hungOn: '2024-07-01' }),
      trapOf({ trapId: 'T2', takenDownOn: '2025-07-10' }),
      trapOf({ trapId: 'T3', hungOn: '2025-08-01' }),
    ],
    lures: [lureAt('2025-06-20', 20)],
    checks: [
      checkOf('2024-07-05', 8),
      checkOf('2025-06-30', 100),
      checkOf('2025-07-04', 20),
      checkOf('2025-07-08', null, { condition: 'unfit' }),
      checkOf('2025-07-12', 12, { note: 'wet', photo: 'a'.repeat(64) }),
      checkOf('2025-07-20', 1),
    ],
  });
  const view = trapsView(prepare(program, { on: day('2025-07-18') }));
  const trap = (id: string) => view.places.flatMap(({ traps }) => traps).find(({ trapId }) => trapId === id)!;

  it('sums each growing year by itself: nights before an unfit visit say nothing, and later days are not known yet', () => {
    expect(trap('T1').seasons).toEqual([
      {
        from: '2025-01-01',
        firstVisit: '2025-06-30',
        lastVisit: '2025-07-12',
        visits: 4,
        unfitVisits: 1,
        count: 132,
        // 360 nights since the visit of July 2024, then four and four; the four before the unfit visit are not known.
        nights: 368,
        peak: { on: '2025-07-04', perNight: 5 },
      },
      {
        from: '2024-01-01',
        firstVisit: '2024-07-05',
        lastVisit: '2024-07-05',
        visits: 1,
        unfitVisits: 0,
        count: 8,
        nights: 4,
        peak: { on: '2024-07-05', perNight: 2 },
      },
    ]);
  });

  it('says what is due: a visit overdue, a lure past its stated life', () => {
    expect(trap('T1')).toMatchObject({
      state: 'hanging',
      check: { due: '2025-07-16', state: 'overdue', daysLate: 2 },
      lure: { placedOn: '2025-06-20', ageDays: 28, ends: '2025-07-10', spent: true },
      newest: { from: '2025-07-08', to: '2025-07-12', nights: 4, perNight: 3 },
      lastVisit: { on: '2025-07-12', note: 'wet', photo: 'a'.repeat(64) },
    });
    expect(view.places.find(({ traps }) => traps.includes(trap('T1')))!.due).toBe(true);
  });

  it('tells of a visit all that its check says of it, so that the one can be read from the other', () => {
    const said = { otherCount: 3, unfitReason: 'full' as const, note: 'wet', photo: 'a'.repeat(64) };
    const check = checkOf('2025-07-12', 12, said);
    expect(checkOfVisit('T1', trapVisit(check))).toEqual(check);
  });

  it('is planned before it is hung and due for nothing once it is down', () => {
    expect(trap('T2')).toMatchObject({ state: 'taken-down', check: null });
    expect(trap('T3')).toMatchObject({ state: 'planned', check: null, lastVisit: null });
  });

  it('has every visit and lure on its own page, newest first, up to the day looked at', () => {
    const page = trapView(prepare(program, { on: day('2025-07-18') }), 'T1')!;
    expect(page.visits.map(({ on, count }) => [on, count])).toEqual([
      ['2025-07-12', 12],
      ['2025-07-08', null],
      ['2025-07-04', 20],
      ['2025-06-30', 100],
      ['2024-07-05', 8],
    ]);
    expect(page.lures).toEqual([{ placedOn: '2025-06-20', lifeDays: 20 }]);
    expect(trapView(prepare(program, { on: day('2025-07-18') }), 'T9')).toBeNull();
  });

  it('is drawn by the season of its newest visit, with the nights that tell nothing', () => {
    const { chart } = trapView(prepare(program, { on: day('2025-07-18') }), 'T1')!;
    expect(chart.from).toBe('2025-01-01');
    expect(chart.withoutInformation).toContainEqual({ from: '2025-07-04', to: '2025-07-08', why: 'unfit' });
    const gap = chart.points.find(({ from }) => from === '2025-07-04')!;
    expect(gap).toMatchObject({ perNight: null, low: null, high: null });
    const last = chart.points.at(-1)!;
    expect(last).toMatchObject({ from: '2025-07-08', to: '2025-07-12', perNight: 3 });
    expect(last.low!).toBeLessThan(3);
    expect(last.high!).toBeGreaterThan(3);
  });

  it('stands beside the nearest traps of its insect and design, and no others', () => {
    const checked = (trapId: string) => checkOf('2025-07-10', 5, { trapId });
    const hung = { station: 'Gate', ...north };
    const beside = programOf({
      fields: [fieldOf()],
      traps: [
        trapOf({ trapId: 'A', ...hung }),
        trapOf({ trapId: 'B', ...hung, ...far }),
        trapOf({ trapId: 'C', ...hung, ...near }),
        trapOf({ trapId: 'D', ...hung, design: 'bucket' }),
        trapOf({ trapId: 'E', ...hung, insect: 'ostrinia-nubilalis' }),
        trapOf({ trapId: 'F', ...hung, latitude: 46 }),
      ],
      checks: ['A', 'B', 'C', 'D', 'E', 'F'].map((trapId) => checked(trapId)),
    });
    const { chart } = trapView(prepare(beside, { on: day('2025-07-12') }), 'A')!;
    expect(chart.neighbours.map(({ trapId }) => trapId)).toEqual(['C', 'B']);
    expect(chart.neighbours[0]!.points.at(-1)).toMatchObject({ to: '2025-07-10' });
  });

  it('comes with advice on height and siting for its design, and cautions before facts', () => {
    expect(view.designs.find(({ design }) => design === 'mesh-cone')).toMatchObject({ heightM: 0.6, standing: 'practice' });
    expect(view.practices.find(({ id }) => id === 'in-crop-or-upwind')).toMatchObject({ act: 'siting', standing: 'published' });
    expect(view.practices[0]).toMatchObject({ act: 'setting-posts', weight: 'caution' });
  });
});
