import { describe, expect, it } from 'vitest';
import { prepare } from '../advice/index.ts';
import { checkOf, fieldOf, nightly, programOf, steadyWeather, trapOf } from '../advice/test-program.ts';
import { day } from '../base/day.ts';
import { nextEvent, programFlights } from './farm-flights.ts';
import type { DatesView, FlightMomentView, FlightView } from './flights-schema.ts';

const dates = (middle: string): DatesView => ({
  early: middle,
  middle,
  late: middle,
  lateOpen: false,
  method: 'reached',
  years: 0,
});
const moment = (middle: string): FlightMomentView => ({ heat: 1, low: 1, high: 1, dates: dates(middle) });
const flight = (
  number: number,
  status: FlightView['status'],
  [start, peak, end]: readonly [string, string, string],
): FlightView => ({
  number,
  moths: { estimate: 1, low: 1, high: 1 },
  start: moment(start),
  peak: moment(peak),
  end: moment(end),
  flown: { share: 0.5, low: 0.4, high: 0.6, told: 'share' },
  status,
});

describe('what happens next', () => {
  const first = flight(1, 'over', ['2025-05-20', '2025-06-01', '2025-07-30']);
  const second = flight(2, 'running', ['2025-07-01', '2025-07-12', '2025-07-25']);
  const third = flight(3, 'to-come', ['2025-07-20', '2025-08-12', '2025-08-25']);

  it('is the first moment from the day on of a flight that is not over', () => {
    expect(nextEvent(day('2025-07-10'), [first, second], null)).toMatchObject({ what: 'peak', flight: 2 });
    expect(nextEvent(day('2025-07-12'), [first, second], null)).toMatchObject({ what: 'peak', flight: 2 });
    expect(nextEvent(day('2025-07-13'), [first, second], null)).toMatchObject({ what: 'end', flight: 2 });
    expect(nextEvent(day('2025-07-13'), [first, second, third], null)).toMatchObject({ what: 'start', flight: 3 });
    expect(nextEvent(day('2025-07-13'), [first], null)).toBeNull();
  });

  it('is nothing where nothing is dated', () => {
    const undated = { ...second, peak: { ...second.peak, dates: null }, end: { ...second.end, dates: null } };
    expect(nextEvent(day('2025-07-13'), [undated], null)).toBeNull();
  });
});

describe('the flights of a program', () => {
  const fields = [
    fieldOf({ fieldId: 'F1', farm: 'Home', name: 'East', weatherSource: 'station' }),
    fieldOf({ fieldId: 'F2', farm: 'Home', name: 'West', weatherSource: 'station' }),
    fieldOf({ fieldId: 'F3', farm: 'Other', name: 'South', weatherSource: 'station' }),
  ];
  const traps = [
    trapOf({ trapId: 'A', informs: ['F1', 'F2'], insect: 'ostrinia-nubilalis', hungOn: '2025-05-01' }),
    trapOf({ trapId: 'B', informs: ['F2'], insect: 'ostrinia-nubilalis', hungOn: '2025-05-01' }),
    trapOf({ trapId: 'C', informs: ['F3'], insect: 'ostrinia-nubilalis', hungOn: '2025-05-01' }),
  ];
  const checks = [
    ...nightly('2025-05-20', [0, 1, 3, 6, 9, 12, 9, 6, 3, 1, 0]).map((check) => ({ ...check, trapId: 'A' })),
    checkOf('2025-05-30', 8, { trapId: 'B' }),
    checkOf('2025-05-30', 0, { trapId: 'C' }),
  ];
  const program = programOf({ fields, traps, checks, weather: steadyWeather('2025-01-01', '2025-06-05', 45, 70) });
  const rows = [...programFlights(prepare(program, { on: day('2025-06-05') }), new Map())].map(({ row }) => row);

  it('have one row to a farm and insect, a trap of two fields counted once, the most pressing field first', () => {
    const home = rows.filter(({ farm }) => farm === 'Home');
    expect(home).toHaveLength(1);
    expect(home[0]).toMatchObject({ insect: 'ostrinia-nubilalis', traps: 2, moths: 58 });
    expect(home[0]!.fields.map(({ name }) => name).sort()).toEqual(['East', 'West']);
    expect(rows.map(({ farm }) => farm).sort()).toEqual(['Home', 'Other']);
  });

  it('draw each night once, with the heat of its day, measured days before expected ones', () => {
    const { ridge, list } = rows.find(({ farm }) => farm === 'Home')!;
    expect(list.length).toBeGreaterThan(0);
    expect(ridge!.perNight).toHaveLength(list.length);
    for (const nights of ridge!.perNight) expect(nights).toHaveLength(ridge!.heat.length);
    expect(ridge!.known).toBeGreaterThan(0);
    expect(ridge!.known).toBeLessThanOrEqual(ridge!.heat.length);
    for (let i = 1; i < ridge!.heat.length; i++) expect(ridge!.heat[i]!).toBeGreaterThanOrEqual(ridge!.heat[i - 1]!);
  });
});
