import { describe, expect, it } from 'vitest';
import { prepare } from '../advice/prepare.ts';
import { checkOf, fieldOf, programOf, steadyWeather, trapOf } from '../advice/test-program.ts';
import { addDays, day, formatDay } from '../base/day.ts';
import { normalCdf } from '../flight/normal.ts';
import type { CheckRecord } from '../records/schema.ts';
import { fieldFlights } from './field-flights.ts';
import { yearsAgainst } from './year-against-year.ts';

const insect = 'ostrinia-nubilalis';
const traps = [2024, 2025].map((year) =>
  trapOf({ trapId: `T${year}`, insect, hungOn: `${year}-01-01`, takenDownOn: `${year}-12-30` }),
);
/** 60 to 80 °F: 20 °F·d a day in 2024; 65 to 85 °F: 25 °F·d a day in 2025 (mean less 50). */
const weather = [...steadyWeather('2024-01-01', '2024-12-31', 60, 80), ...steadyWeather('2025-01-01', '2025-12-31', 65, 85)];

/** Visits every three days of a flight of 200 moths about 631 °F·d, the heat at which the catalogue's model puts its peak. */
function flight(year: number, perDay: number): CheckRecord[] {
  const start = day(`${year}-01-01`);
  return Array.from({ length: 30 }, (_, i) => {
    const share = (days: number) => normalCdf((perDay * days - 631) / 100);
    const count = Math.round(200 * (share(3 * i + 3) - share(3 * i)));
    return checkOf(formatDay(addDays(start, 3 * i + 3)), count, { trapId: `T${year}` });
  });
}
const program = programOf({ traps, checks: [...flight(2024, 20), ...flight(2025, 25)], weather });
const on = day('2025-06-01');

describe('one year laid over another', () => {
  const { curves, heat } = yearsAgainst(program, { on, insect });
  const half = curves.map(({ points }) => points.find(({ shareSoFar }) => shareSoFar! >= 0.5)!);

  it('a warm year is early on the calendar and in step on the heat axis', () => {
    expect(curves.map(({ season }) => season.year)).toEqual([2024, 2025]);
    expect(half[0]!.drawnTo - half[1]!.drawnTo).toBeGreaterThanOrEqual(5);
    expect(Math.abs(half[0]!.heatTo! - half[1]!.heatTo!)).toBeLessThanOrEqual(60);
    expect(heat).toMatchObject({ modelId: 'ostrinia-nubilalis-calendar', sourceId: 'station' });
  });

  it('12 March lies on 12 March, leap year or not', () => {
    const stretch = curves[0]!.points.find(({ from }) => formatDay(from) >= '2024-03-01')!;
    expect(formatDay(stretch.drawnFrom)).toBe(formatDay(stretch.from).replace('2024', '2025'));
  });

  it('without weather there is no heat axis, and it says why', () => {
    const blind = yearsAgainst({ ...program, weather: [] }, { on, insect });
    expect(blind).toMatchObject({ heat: null, noHeat: 'no-weather-source' });
    expect(blind.curves[0]!.points.every(({ heatTo }) => heatTo === null)).toBe(true);
  });

  it('may be asked of one farm alone', () => {
    expect(yearsAgainst(program, { on, insect, farm: 'Other Farm' }).curves).toEqual([]);
  });
});

describe('flights at a field', () => {
  const at = (on: string) => fieldFlights(prepare(program, { on: day(on) }), fieldOf(), insect);

  it('one flight where the model dates its peak agrees with the model, and is over', () => {
    const { flights, models } = at('2025-04-01');
    expect(flights!.read.flights).toHaveLength(1);
    expect(flights!.read.flights[0]).toMatchObject({ status: 'over', peak: { date: { status: 'came' } } });
    expect(Math.abs(flights!.read.flights[0]!.peak.heat - 631)).toBeLessThan(20);
    expect(flights!.agreement.find(({ event }) => event.event === 'peak-flight' && event.generation === 1)).toMatchObject({
      flight: 1,
      verdict: 'agrees',
    });
    const calendar = models.find(({ model }) => model.id === 'ostrinia-nubilalis-calendar')!;
    // 631 °F·d at 25 a day: within the 26th day of the year.
    const peak = calendar.events.find(({ event }) => event.event === 'peak-flight' && event.generation === 1)!;
    expect(peak.begins).toEqual({ status: 'came', on: day('2025-01-26') });
  });

  it('a date ahead is the heat still missing at the pace of the days', () => {
    const { models } = at('2025-01-20');
    const peak = models[0]!.events.find(({ event }) => event.event === 'peak-flight')!;
    // 20 days of 25 °F·d are 500; 131 more take 6 days at this pace, 7 at last year's.
    if (peak.begins.status !== 'ahead') throw new Error(peak.begins.status);
    expect(peak.begins.remaining).toBeCloseTo(131, 6);
    expect(peak.begins.window.middle).toBe(day('2025-01-26'));
  });

  it('say what they lack', () => {
    const lacking = (over: Partial<typeof program>) =>
      fieldFlights(prepare({ ...program, ...over }, { on }), fieldOf(), insect).noFlights;
    expect(lacking({ traps: [] })).toBe('no-trap');
    expect(lacking({ weather: [] })).toBe('no-weather-source');
    expect(lacking({ checks: [] })).toBe('nothing-caught');
  });
});
