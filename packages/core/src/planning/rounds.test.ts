import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { prepare } from '../advice/index.ts';
import { programOf, trapOf, treatmentOf } from '../advice/test-program.ts';
import { day } from '../base/day.ts';
import { distanceKm } from '../base/distance.ts';
import { dueStations } from './due-stations.ts';
import type { DueStation, RoundScout } from './round-types.ts';
import { planRounds } from './rounds.ts';

const MONDAY = '2026-06-15';
const TUESDAY = '2026-06-16';
const NOON = 12 * 60;
const station = (id: string, over: Partial<DueStation> = {}): DueStation => ({
  id,
  latitude: 45,
  longitude: -30,
  due: MONDAY,
  traps: 1,
  minutes: 10,
  ...over,
});
const scout = (over: Partial<RoundScout> = {}): RoundScout => ({
  id: 'Ana',
  home: null,
  startMinute: 8 * 60,
  capacityHours: 8,
  ...over,
});
const stationsOf = (rounds: ReturnType<typeof planRounds>['rounds']) =>
  rounds.flatMap(({ stops }) => stops.map((stop) => stop.station));

describe('stations due', () => {
  it('are those with a check due by the day, closed while a re-entry interval holds at a field they inform', () => {
    const at = { latitude: 45, longitude: -30 };
    const traps = [
      trapOf({ ...at, hungOn: '2026-06-08' }),
      trapOf({ trapId: 'T2', station: 'S2', hungOn: '2026-06-12', informs: [] }),
    ];
    // Applied on the 14th: 30 hours counted from the end of that day reach into the 16th.
    const treatments = [treatmentOf('2026-06-14', { reentryHours: 30 })];
    const prepared = prepare(programOf({ traps, treatments }), { on: day(MONDAY) });
    const [only, ...others] = dueStations(prepared, day(TUESDAY));
    expect(only).toEqual({ id: 'S1', ...at, due: MONDAY, traps: 1, window: null, keepOutUntil: TUESDAY });
    expect(others).toEqual([]);
    expect(dueStations(prepared, day('2026-06-19'))[1]).toMatchObject({ id: 'S2', latitude: null, keepOutUntil: null });
  });
});

describe('rounds', () => {
  it('add up by hand: 40 km/h and roads 1.3 times the great circle', () => {
    const [a, b] = [station('A'), station('B', { longitude: -29.9 })];
    const { rounds } = planRounds({ stations: [a, b], scouts: [scout()], days: [MONDAY] });
    const km = distanceKm(a, b)! * 1.3;
    expect(rounds).toHaveLength(1);
    expect(rounds[0]!.km).toBeCloseTo(km, 9);
    expect(rounds[0]!.driveMinutes).toBeCloseTo((km / 40) * 60, 9);
    expect(rounds[0]!.minutes).toBeCloseTo((km / 40) * 60 + 20, 9);
  });

  it('follow the user’s own minutes, also where they differ both ways', () => {
    // A ring A → B → C → home that is quick one way only.
    const ids = ['Ana', 'A', 'B', 'C'];
    const minutes = ids.map((_, i) => ids.map((__, j) => (i === j ? 0 : j === (i + 1) % 4 ? 5 : 50)));
    const { rounds } = planRounds({
      stations: ['C', 'A', 'B'].map((id) => station(id)),
      scouts: [scout({ home: { latitude: 45, longitude: -30 } })],
      days: [MONDAY],
      travel: { ids, minutes },
    });
    expect(stationsOf(rounds)).toEqual(['A', 'B', 'C']);
    expect([rounds[0]!.driveMinutes, rounds[0]!.minutes]).toEqual([20, 50]);
  });

  it('come before noon where a station must be seen by then, even by a longer way', () => {
    // On one road from home: the morning station lies behind six that take an hour each.
    const six = Array.from({ length: 6 }, (_, i) => station(`N${i}`, { longitude: -29.99 + i * 0.001, minutes: 60 }));
    const far = station('M', { longitude: -29.8, window: { fromMinute: 0, toMinute: NOON } });
    const { rounds, unserved } = planRounds({
      stations: [...six, far],
      scouts: [scout({ home: { latitude: 45, longitude: -30 } })],
      days: [MONDAY],
    });
    expect(unserved).toEqual([]);
    const morning = rounds[0]!.stops.find((stop) => stop.station === 'M')!;
    expect(morning.begins).toBeLessThanOrEqual(NOON);
    expect(rounds[0]!.stops).toHaveLength(7);
  });

  it('send nobody else out for a station that one scout can see', () => {
    const stations = [station('A'), station('B', { longitude: -29.9 }), station('C', { longitude: -29.85 })];
    const { rounds } = planRounds({ stations, scouts: [scout(), scout({ id: 'Ben' })], days: [MONDAY] });
    expect(rounds.map(({ stops }) => stops.length)).toEqual([3]);
  });

  it('wait for a window to open', () => {
    const late = station('A', { window: { fromMinute: 9 * 60, toMinute: NOON } });
    const { rounds } = planRounds({ stations: [late], scouts: [scout()], days: [MONDAY] });
    expect(rounds[0]!.stops[0]).toMatchObject({ arrives: 480, begins: 540, leaves: 550 });
  });

  it('keep off a treated field until its re-entry time is over', () => {
    const treated = station('A', { keepOutUntil: MONDAY });
    const two = planRounds({ stations: [treated], scouts: [scout()], days: [MONDAY, TUESDAY] });
    expect(two.rounds.map((round) => [round.day, round.stops[0]!.daysLate])).toEqual([[TUESDAY, 1]]);
    const one = planRounds({ stations: [treated], scouts: [scout()], days: [MONDAY] });
    expect(one).toEqual({ rounds: [], unserved: [{ station: 'A', why: 'keep-out' }] });
  });

  it('end with the hours: what does not fit goes to another scout, another day, or is named', () => {
    const many = Array.from({ length: 5 }, (_, i) => station(`S${i}`, { minutes: 60 }));
    const ana = scout({ capacityHours: 3 });
    const alone = planRounds({ stations: many, scouts: [ana], days: [MONDAY] });
    expect(stationsOf(alone.rounds)).toHaveLength(3);
    expect(alone.unserved.map(({ why }) => why)).toEqual(['no-time', 'no-time']);
    const withBen = planRounds({ stations: many, scouts: [ana, { ...ana, id: 'Ben' }], days: [MONDAY] });
    expect(withBen.rounds.map((round) => round.scout)).toEqual(['Ana', 'Ben']);
    const twoDays = planRounds({ stations: many, scouts: [ana], days: [MONDAY, TUESDAY] });
    expect(twoDays.rounds.map((round) => round.day)).toEqual([MONDAY, TUESDAY]);
    expect([...withBen.unserved, ...twoDays.unserved]).toEqual([]);
    expect(planRounds({ stations: many, scouts: [], days: [MONDAY] }).unserved[0]!.why).toBe('no-scout');
  });

  it('see a station on its day, though a drive past it comes the day before', () => {
    const stations = [station('A'), station('B', { due: TUESDAY, longitude: -29.7 })];
    const { rounds } = planRounds({ stations, scouts: [scout()], days: [MONDAY, TUESDAY] });
    expect(rounds.map(({ day: on, stops }) => [on, stops.map((stop) => stop.station)])).toEqual([
      [MONDAY, ['A']],
      [TUESDAY, ['B']],
    ]);
  });

  it('put a station without coordinates last, say that no way is known, and count only the work there', () => {
    const lost = station('L', { latitude: null, longitude: null });
    const { rounds } = planRounds({ stations: [lost, station('A')], scouts: [scout()], days: [MONDAY] });
    expect(rounds[0]!.stops.map((stop) => [stop.station, stop.placeUnknown])).toEqual([
      ['A', false],
      ['L', true],
    ]);
    expect([rounds[0]!.km, rounds[0]!.minutes]).toEqual([null, 20]);
  });

  it('visit every station once or name it, within hours and windows, and never undercut their bound', () => {
    const place = fc.record({
      latitude: fc.option(fc.double({ min: 44.9, max: 45.1, noNaN: true }), { freq: 8 }),
      longitude: fc.double({ min: -30.1, max: -29.9, noNaN: true }),
      window: fc.option(fc.constant({ fromMinute: 500, toMinute: NOON })),
      keepOutUntil: fc.option(fc.constant(MONDAY)),
    });
    const home = fc.option(fc.constant({ latitude: 45, longitude: -30 }));
    fc.assert(
      fc.property(fc.array(place, { maxLength: 14 }), home, fc.integer({ min: 1, max: 4 }), (places, at, capacityHours) => {
        const stations = places.map((over, i) => station(`S${i}`, { ...over, minutes: 20 }));
        const { rounds, unserved } = planRounds({
          stations,
          scouts: [scout({ home: at, capacityHours }), scout({ id: 'Ben', home: at, capacityHours })],
          days: [MONDAY, TUESDAY],
        });
        const seen = [...stationsOf(rounds), ...unserved.map((one) => one.station)];
        expect(seen.sort()).toEqual(stations.map(({ id }) => id).sort());
        for (const round of rounds) {
          expect(round.minutes).toBeLessThanOrEqual(capacityHours * 60);
          expect(round.boundMinutes).toBeLessThanOrEqual(round.driveMinutes + 1e-6);
          for (const stop of round.stops) {
            const { window, keepOutUntil } = stations.find(({ id }) => id === stop.station)!;
            if (window) expect(stop.begins).toBeLessThanOrEqual(window.toMinute);
            if (keepOutUntil) expect(round.day > keepOutUntil).toBe(true);
          }
        }
      }),
      { numRuns: 20 },
    );
  });
});
