import { describe, expect, it } from 'vitest';
import { addDays, type Day, day, dayOf, formatDay, yearOf } from '../base/day.ts';
import { catalogue } from '../catalogue/catalogue.ts';
import { catchIntervals } from '../catch/intervals.ts';
import { check, trap } from '../catch/season.testing.ts';
import type { TrapHistory } from '../catch/types.ts';
import { heatTrack } from '../heat/track.ts';
import type { HeatTrack } from '../heat/types.ts';
import { flightAgreement } from './agreement.ts';
import { fitRegion } from './fit-region.ts';
import { type Generations, readGenerations } from './generations.ts';
import { heatSpans } from './heat-spans.ts';
import { normalCdf } from './normal.ts';

const borer = catalogue.models.find(({ id }) => id === 'ostrinia-nubilalis-calendar')!;
const START = day('2025-01-01');

/** Nothing until April, then 15 °F·d a day (12 and 18 in the two years before), through `on`. */
function weather(on: Day): HeatTrack {
  const start = dayOf(2023, 1, 1);
  const pace: Record<number, number> = { 2023: 12, 2024: 18, 2025: 15 };
  const means = Array.from({ length: on - start + 1 }, (_, i) => {
    const date = addDays(start, i);
    return (50 + (date < dayOf(yearOf(date), 4, 1) ? -10 : pace[yearOf(date)]!) - 32) / 1.8;
  });
  return heatTrack(borer.heat, { sourceId: 'gauge', start, tminC: Float64Array.from(means), tmaxC: Float64Array.from(means) });
}
const heatBy = (on: Day) => Math.max(0, on - day('2025-03-31')) * 15;

/** A trap hung on 15 April and checked every `every` nights that caught exactly what its flights bring, rounded. */
function caught(flights: readonly { moths: number; peak: number; width: number }[], on: Day, every = 3): TrapHistory {
  const hung = day('2025-04-15');
  const checks = [];
  for (let from = hung; addDays(from, every) <= on; from = addDays(from, every)) {
    const [low, high] = [heatBy(addDays(from, -1)), heatBy(addDays(from, every - 1))];
    const count = flights.reduce(
      (sum, { moths, peak, width }) => sum + moths * (normalCdf((high - peak) / width) - normalCdf((low - peak) / width)),
      0,
    );
    checks.push(check(0, Math.round(count), { checkedOn: formatDay(addDays(from, every)) }));
  }
  return catchIntervals(trap({ hungOn: formatDay(hung) }), checks, [], on);
}
function generationsOf(histories: readonly TrapHistory[], on: Day): Generations {
  const track = weather(on);
  return readGenerations(fitRegion(heatSpans(histories, track, START, on), { unit: 'F' }), track, START)!;
}
const spring = { moths: 150, peak: 631, width: 130 };
const summer = { moths: 300, peak: 1733, width: 150 };

describe('a whole season of European corn borer', () => {
  const on = day('2025-09-30');
  const season = generationsOf([caught([spring, summer], on)], on);

  it('shows two flights, surely, each with its start, peak and end on heat and calendar', () => {
    expect(season.unsure).toBe(false);
    expect(season.flights.map(({ number, status }) => [number, status])).toEqual([
      [1, 'over'],
      [2, 'over'],
    ]);
    for (const [g, truth] of [spring, summer].entries()) {
      const { start, peak, end, moths, flown } = season.flights[g]!;
      expect(Math.abs(peak.heat - truth.peak)).toBeLessThan(15);
      expect(Math.abs(start.heat - (truth.peak - 1.645 * truth.width))).toBeLessThan(30);
      expect(Math.abs(end.heat - (truth.peak + 1.645 * truth.width))).toBeLessThan(30);
      expect(moths.low).toBeLessThan(truth.moths);
      expect(moths.high).toBeGreaterThan(truth.moths);
      expect(flown.low).toBeGreaterThan(0.97);
    }
    // 631 °F·d at 15 a day from 1 April: the 43rd day, 13 May.
    const { date } = season.flights[0]!.peak;
    expect(date.status).toBe('came');
    expect(Math.abs((date as { on: Day }).on - day('2025-05-13'))).toBeLessThanOrEqual(1);
  });

  it('names the runner-up with its BIC', () => {
    expect(season.tried[0]!.flights).toBe(2);
    expect(season.tried[1]!.bic).toBeGreaterThan(season.tried[0]!.bic + 6);
  });

  it('agrees with the published peaks of 631 and 1733 °F·d (Apple, Univ. Wisconsin)', () => {
    const [first, second] = flightAgreement(season, borer);
    expect(first).toMatchObject({ flight: 1, compared: 'peak', published: 631, verdict: 'agrees' });
    expect(second).toMatchObject({ flight: 2, compared: 'peak', published: 1733, verdict: 'agrees' });
  });

  it('is early or late when the whole interval lies beyond a tenth of the published heat', () => {
    const shifted = (by: number) =>
      flightAgreement(generationsOf([caught([{ ...spring, peak: 631 + by }, summer], on)], on), borer)[0]!;
    expect(shifted(-150)).toMatchObject({ verdict: 'early', flight: 1 });
    expect(shifted(150)).toMatchObject({ verdict: 'late', flight: 1 });
    expect(shifted(150).difference).toBeGreaterThan(100);
  });

  it('without a flight near the published heat cannot be compared', () => {
    const only = generationsOf([caught([summer], on)], on);
    expect(flightAgreement(only, borer)[0]).toMatchObject({ verdict: 'cannot tell', why: 'no-flight-near', flight: null });
  });

  it('compares emergence where the model dates no peak (squash vine borer, about 1000 °F·d)', () => {
    const vineBorer = catalogue.models.find(({ id }) => id === 'melittia-cucurbitae-emergence')!;
    const flight = generationsOf([caught([{ moths: 200, peak: 1250, width: 150 }], on)], on);
    expect(flightAgreement(flight, vineBorer)).toMatchObject([{ compared: 'start', published: 1000, verdict: 'agrees' }]);
  });
});

describe('a season cut off in mid-flight', () => {
  const on = day('2025-07-20'); // heat 1665: 0.45 σ before the summer peak
  const season = generationsOf([caught([spring, summer], on)], on);

  it('has a second flight still running, its true share inside the interval, its peak ahead', () => {
    const second = season.flights[1]!;
    expect(second.status).toBe('running');
    const truth = normalCdf((heatBy(on) - summer.peak) / summer.width);
    expect(second.flown.low).toBeLessThan(truth);
    expect(second.flown.high).toBeGreaterThan(truth);
    expect(second.start.date.status).toBe('came');
    expect(second.end.date).toMatchObject({ status: 'ahead', window: { method: 'past-years', years: 2 } });
  });

  it('is less sure of the running flight than of the one that is over', () => {
    const width = ({ high, low }: { high: number; low: number }) => high - low;
    expect(width(season.flights[1]!.peak)).toBeGreaterThan(2 * width(season.flights[0]!.peak));
    expect(width(season.flights[1]!.flown)).toBeGreaterThan(width(season.flights[0]!.flown));
  });
});

describe('two traps of one design in a field', () => {
  it('place the flights more surely than one', () => {
    const on = day('2025-09-30');
    const one = generationsOf([caught([spring, summer], on)], on).flights[0]!;
    const both = generationsOf([caught([spring, summer], on), caught([spring, summer], on, 4)], on).flights[0]!;
    expect(both.peak.high - both.peak.low).toBeLessThan(one.peak.high - one.peak.low);
    expect(both.moths.estimate / one.moths.estimate).toBeCloseTo(1, 1);
  });
});
