/** Real weather: daily extremes of Seattle 2012–2015, NOAA, as carried by the package vega-datasets (BSD-3-Clause). */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { addDays, day, dayOf, daysBetween, formatDay, yearOf } from '../base/day.ts';
import { modelsFor } from '../catalogue/index.ts';
import { CLIMATES, FIRST_YEAR, simulatedWeather } from '../forecast/simulated-weather.testing.ts';
import { heatTrack } from '../heat/index.ts';
import type { WeatherRecord } from '../records/schema.ts';
import { seriesFromRecords } from '../weather/index.ts';
import { hangBy, openingEvent } from './hanging-date.ts';

const file = new URL('../../../../node_modules/vega-datasets/data/seattle-weather.csv', import.meta.url);

function seattleRecords(): WeatherRecord[] {
  const [header, ...lines] = readFileSync(file, 'utf8').trim().split('\n');
  const columns = header!.split(',');
  return lines.map((line) => {
    const cells = line.split(',');
    const cell = (column: string): string => cells[columns.indexOf(column)]!;
    return {
      sourceId: 'seattle',
      date: cell('date'),
      tminC: Number(cell('temp_min')),
      tmaxC: Number(cell('temp_max')),
      precipitationMm: Number(cell('precipitation')),
    };
  });
}

const borer = openingEvent(modelsFor('ostrinia-nubilalis'))!;
const seattle = seattleRecords();
const track = (records: readonly WeatherRecord[], opening = borer) =>
  heatTrack(opening.model.heat, seriesFromRecords(records).get('seattle')!);
const years = (...wanted: number[]) => seattle.filter(({ date }) => wanted.includes(Number(date.slice(0, 4))));
const north = { season: 2016, latitude: 47.6 };

/** The first day of a year by whose end the modified average above 50 °F, capped at 86 °F, has summed to 374 °F·d. */
function firstMothByHand(year: number): string {
  const fahrenheit = (c: number) => Math.min(86, Math.max(50, c * 1.8 + 32));
  let sum = 0;
  for (const { date, tminC, tmaxC } of years(year)) {
    sum += (fahrenheit(tminC!) + fahrenheit(tmaxC!)) / 2 - 50;
    if (sum >= 374) return date;
  }
  throw new Error('never');
}

/** Half a year on, as weather of the other hemisphere. */
const turnedRound = (records: readonly WeatherRecord[]) =>
  records.map((record) => {
    const on = day(record.date);
    const start = dayOf(yearOf(on), 1, 1);
    return { ...record, date: formatDay(addDays(dayOf(yearOf(on), 7, 1), daysBetween(start, on))) };
  });

describe('the hanging date', () => {
  it('in Seattle leads the earliest plausible first moth, each year’s summed by hand', () => {
    const dates = [2012, 2013, 2014, 2015].map(firstMothByHand);
    const waits = dates.map((date) => daysBetween(dayOf(Number(date.slice(0, 4)), 1, 1), day(date)));
    const [earliest, second, third, latest] = [...waits].sort((a, b) => a - b) as [number, number, number, number];
    const answer = hangBy(borer, track(seattle), { ...north, leadDays: 7 });
    if (answer.basis !== 'heat') throw new Error(answer.basis);
    const { spread } = answer;
    expect(spread.years.map((year) => year.kind === 'reached' && year.on)).toEqual(dates);
    const in2016 = (wait: number) => formatDay(addDays(day('2016-01-01'), wait));
    expect([spread.earliest, spread.latest]).toEqual([in2016(earliest), in2016(latest)]);
    expect(spread.median).toBe(in2016(Math.round((second + third) / 2)));
    // One more year of four, by their own scatter or by that of the heat: mean − t·s·√(1 + 1/4), t(0.9; 11) = 1.363.
    const mean = waits.reduce((sum, wait) => sum + wait) / 4;
    const variance = waits.reduce((sum, wait) => sum + (wait - mean) ** 2, 0) / 3;
    const [widest, narrowest] = [2, 0.5].map((times) => Math.round(mean - 1.363 * Math.sqrt(times * variance * 1.25)));
    expect(spread.plausible <= in2016(Math.min(earliest, narrowest!))).toBe(true);
    expect(spread.plausible >= in2016(widest!)).toBe(true);
    expect(daysBetween(day(answer.on), day(spread.plausible))).toBe(7);
    expect(answer.caution).toBeNull();
  });

  it('moves by less than two weeks when a year is added, from two years on, in real and in simulated weather', () => {
    const dates = (heat: typeof seattleTrack, seasons: readonly number[]) =>
      seasons.map((season) => hangBy(borer, heat, { season, latitude: 47.6 })).map(({ on }) => dayOfYear(on!));
    const dayOfYear = (on: string) => daysBetween(dayOf(yearOf(day(on)), 1, 1), day(on));
    const moves = (days: readonly number[]) => days.slice(1).map((each, i) => Math.abs(each - days[i]!));
    const seattleTrack = track(seattle);
    for (const move of moves(dates(seattleTrack, [2014, 2015, 2016]))) expect(move).toBeLessThan(14);
    const seasons = Array.from({ length: 24 }, (_, i) => FIRST_YEAR + 2 + i);
    const simulated = Array.from({ length: 12 }, (_, seed) =>
      moves(dates(heatTrack(borer.model.heat, simulatedWeather(seed + 1, 26, CLIMATES.lasting)), seasons)),
    ).flat();
    expect(simulated.filter((move) => move >= 14).length / simulated.length).toBeLessThan(0.01);
    // January for a flight in May was the mark of two years read as if nothing else were known of the weather.
    for (const on of dates(seattleTrack, [2014, 2015]))
      expect(on).toBeGreaterThan(daysBetween(dayOf(2014, 1, 1), dayOf(2014, 4, 10)));
  });

  it('takes a published date for setting out traps as it is, without a further lead', () => {
    const cutworm = openingEvent(modelsFor('agrotis-ipsilon'))!;
    const answer = hangBy(cutworm, track(seattle, cutworm), north);
    expect(answer).toMatchObject({ basis: 'heat', leadDays: 0, spread: { event: 'set-out-traps', from: 90 } });
    if (answer.basis === 'heat') expect(answer.on).toBe(answer.spread.plausible);
  });

  it('looks only at years before the season planned', () => {
    const answer = hangBy(borer, track(seattle), { ...north, season: 2014 });
    expect(answer.basis === 'heat' && answer.spread.years.map(({ season }) => season)).toEqual([2012, 2013]);
  });

  it('from one year alone keeps a stated margin before that year’s flight, and says that it is one year', () => {
    const answer = hangBy(borer, track(years(2015)), { ...north, leadDays: 7 });
    if (answer.basis !== 'heat') throw new Error(answer.basis);
    expect(answer.caution).toBe('one-year');
    expect(answer.spread.earliest).toBe(answer.spread.latest);
    expect(daysBetween(day(answer.on), day(answer.spread.earliest))).toBe(14 + 7);
  });

  it('without weather is the user’s day, or not known', () => {
    expect(hangBy(borer, null, { ...north, stated: '2016-04-20' })).toEqual({
      basis: 'stated',
      on: '2016-04-20',
      why: 'no-weather',
      years: [],
    });
    expect(hangBy(borer, null, north)).toMatchObject({ basis: 'unknown', on: null, why: 'no-weather' });
  });

  it('of an insect that no model dates from the calendar is the user’s day, or not known', () => {
    const earworm = openingEvent(modelsFor('helicoverpa-zea'));
    expect(earworm).toBeNull();
    expect(hangBy(earworm, track(seattle), north)).toMatchObject({ basis: 'unknown', why: 'no-model' });
  });

  it('where the heat never suffices is not made up: every year is shown with the heat it had', () => {
    const cold = seattle.map((record) => ({ ...record, tminC: record.tminC! - 18, tmaxC: record.tmaxC! - 18 }));
    const answer = hangBy(borer, track(cold), north);
    expect(answer).toMatchObject({ basis: 'unknown', why: 'never-reached' });
    if (answer.basis !== 'unknown') throw new Error('made up');
    expect(answer.years).toHaveLength(4);
    for (const year of answer.years) expect(year.kind === 'not-reached' && year.heat < 374).toBe(true);
  });

  it('uses the years that reach the event and says that others did not', () => {
    const mixed = seattle.map((record) =>
      record.date < '2013' ? { ...record, tminC: record.tminC! - 18, tmaxC: record.tmaxC! - 18 } : record,
    );
    expect(hangBy(borer, track(mixed), north)).toMatchObject({ basis: 'heat', caution: 'some-years-without' });
  });

  it('passes over a year with a long gap before the flight, and names the gap', () => {
    const holed = seattle.filter(({ date }) => date < '2013-03-01' || date > '2013-03-20');
    const answer = hangBy(borer, track(holed), north);
    if (answer.basis !== 'heat') throw new Error(answer.basis);
    expect(answer.spread.years[1]).toEqual({ season: 2013, kind: 'unknown', from: '2013-03-01', to: '2013-03-20' });
    expect(answer.spread.years.filter(({ kind }) => kind === 'reached')).toHaveLength(3);
  });

  it('south of the equator follows the season across new year: the same weather half a year on gives the same waits', () => {
    const southern = hangBy(borer, track(turnedRound(seattle)), { season: 2016, latitude: -41 });
    const northern = hangBy(borer, track(seattle), north);
    if (southern.basis !== 'heat' || northern.basis !== 'heat') throw new Error('no heat');
    const wait = (from: string, to: string) => daysBetween(day(from), day(to));
    expect(southern.spread.years.map(({ season }) => season)).toEqual([2012, 2013, 2014, 2015]);
    expect(wait('2016-07-01', southern.on)).toBe(wait('2016-01-01', northern.on));
    const summer = hangBy({ ...borer, event: { ...borer.event, from: 1800 } }, track(turnedRound(seattle)), {
      season: 2016,
      latitude: -41,
    });
    expect(summer.on! > '2017-01-01').toBe(true);
  });
});
