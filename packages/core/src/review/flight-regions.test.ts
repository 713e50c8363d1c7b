import { describe, expect, it } from 'vitest';
import { prepare } from '../advice/prepare.ts';
import { checkOf, fieldOf, programOf, steadyWeather, trapOf } from '../advice/test-program.ts';
import { addDays, type Day, day, dayOf, formatDay } from '../base/day.ts';
import { normalCdf } from '../flight/normal.ts';
import type { CheckRecord } from '../records/schema.ts';
import { fieldFlights } from './field-flights.ts';
import type { FlightCache } from './flight-regions.ts';

const insect = 'ostrinia-nubilalis';
/** 65 to 85 °F all year: 25 °F·d a day above 50. */
const weather = [2023, 2024, 2025].flatMap((year) => steadyWeather(`${year}-01-01`, `${year}-12-31`, 65, 85));

/** Three fields along one meridian, the second 30 km and the third 200 km north of the first. */
const places = { here: 45, near: 45.27, far: 46.8 } as const;
const fields = Object.entries(places).map(([fieldId, latitude]) => fieldOf({ fieldId, latitude, longitude: -64 }));
const trapId = (fieldId: string) => `T-${fieldId}`;
const traps = Object.keys(places).map((fieldId) =>
  trapOf({ trapId: trapId(fieldId), insect, informs: [fieldId], hungOn: '2023-01-01', takenDownOn: null }),
);

/** Visits every three days of a flight of `moths` about 631 °F·d, in each of the years, until `on`. */
function flights(fieldId: string, moths: number, on: Day, years: readonly number[] = [2025]): CheckRecord[] {
  return years.flatMap((year) => {
    const start = dayOf(year, 1, 1);
    const share = (days: number) => normalCdf((25 * days - 631) / 100);
    return Array.from({ length: 20 }, (_, i) => {
      const checkedOn = formatDay(addDays(start, 3 * i + 3));
      return checkOf(checkedOn, Math.round(moths * (share(3 * i + 3) - share(3 * i))), { trapId: trapId(fieldId) });
    }).filter(({ checkedOn }) => day(checkedOn) <= on);
  });
}

const at = (fieldId: string, checks: CheckRecord[], on: Day, cache?: FlightCache) => {
  const prepared = prepare(programOf({ fields, traps, checks, weather }), { on });
  return fieldFlights(prepared, prepared.fields.get(fieldId)!, insect, cache);
};

describe('the flights of a region', () => {
  const on = day('2025-03-20');

  it('are read from every trap of the design within 50 km, and from none beyond', () => {
    const checks = [...flights('here', 200, on), ...flights('near', 150, on), ...flights('far', 100, on)];
    const together = (fieldId: string) => at(fieldId, checks, on).flights!.together.map((trap) => trap.trapId);
    expect(together('here')).toEqual(['T-here', 'T-near']);
    expect(together('near')).toEqual(['T-here', 'T-near']);
    expect(together('far')).toEqual(['T-far']);
  });

  it('are told at a field whose own trap caught almost nothing, with its own number of moths', () => {
    const checks = [...flights('here', 300, on), ...flights('near', 6, on)];
    const { flights: read } = at('near', checks, on);
    expect(read!.moths).toBeLessThan(10);
    expect(read!.read.flights).toHaveLength(1);
    const [flight] = read!.read.flights;
    expect(Math.abs(flight!.peak.heat - 631)).toBeLessThan(25);
    expect(flight!.moths.estimate).toBeLessThan(20);
  });

  it('are expected when the model dates them, while the program has no season of its own', () => {
    const { read, pastSeasons } = at('here', flights('here', 200, on), on).flights!;
    expect(pastSeasons).toEqual([]);
    expect(read.expected.map(({ published, seasons }) => [published, seasons])).toEqual([
      [631, 0],
      [1733, 0],
    ]);
  });

  it('are expected as in the seasons before, newest first, and more narrowly than by the model alone', () => {
    const inFlight = day('2025-01-24');
    const before = flights('here', 200, day('2024-12-31'), [2023, 2024]);
    const fresh = at('here', flights('here', 200, inFlight), inFlight).flights!.read;
    const known = at('here', [...before, ...flights('here', 200, inFlight)], inFlight).flights!;
    expect(known.pastSeasons).toEqual([2024, 2023]);
    expect(known.read.expected[0]).toMatchObject({ seasons: 2, published: 631 });
    const { peak } = known.read.flights[0]!;
    expect(peak.high - peak.low).toBeLessThan(fresh.flights[0]!.peak.high - fresh.flights[0]!.peak.low);
    // 24 January: 23 or 24 days of 25 °F·d.
    const { flown } = known.read.flights[0]!;
    expect(flown.low).toBeLessThan(normalCdf((23.5 * 25 - 631) / 100));
    expect(flown.high).toBeGreaterThan(normalCdf((23.5 * 25 - 631) / 100));
  });

  it('are fitted again only where a count changed', () => {
    const cache: FlightCache = new Map();
    const checks = [...flights('here', 200, on), ...flights('far', 100, on)];
    for (const fieldId of ['here', 'near', 'far']) at(fieldId, checks, on, cache);
    const before = cache.size;
    for (const fieldId of ['here', 'near', 'far']) at(fieldId, checks, on, cache);
    expect(cache.size).toBe(before);
    const changed = checks.map((check, i) => (i === 8 ? { ...check, targetCount: (check.targetCount ?? 0) + 3 } : check));
    for (const fieldId of ['here', 'near', 'far']) at(fieldId, changed, on, cache);
    expect(cache.size).toBe(before + 1);
  });
});
