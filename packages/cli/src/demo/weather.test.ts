import { addDays, findGaps, formatDay, seriesFromRecords } from '@duskwatch/core';
import { expect, test } from 'vitest';
import { heatSinceNewYear } from './flights.ts';
import { trueWeather, WEATHER_FROM, WEATHER_SOURCE, WEATHER_THROUGH, weatherRecords } from './weather.ts';

const truth = trueWeather();

test('the station lost the temperature of two days that can be bridged, and six whole days after a season', () => {
  const series = seriesFromRecords(weatherRecords(truth)).get(WEATHER_SOURCE)!;
  const gaps = findGaps(series, WEATHER_FROM, WEATHER_THROUGH).map(({ from, to }) => [formatDay(from), formatDay(to)]);
  expect(gaps).toEqual([
    ['2024-11-12', '2024-11-17'],
    ['2026-05-23', '2026-05-24'],
  ]);
});

test('no day is colder at its warmest than at its coldest, and wet days are narrower than dry ones', () => {
  const range = (wet: boolean) => {
    const days = truth.filter((d) => d.precipitationMm > 0 === wet).map((d) => d.tmaxC - d.tminC);
    expect(Math.min(...days)).toBeGreaterThanOrEqual(0);
    return days.reduce((sum, x) => sum + x, 0) / days.length;
  };
  expect(range(false) - range(true)).toBeGreaterThan(3);
});

test('in mid-July 2026 the corn borer stands between its first summer moths (1400 °F·d) and second hatch (1550)', () => {
  const heat = heatSinceNewYear(truth);
  expect(heat.at(-1)).toBeGreaterThan(1400);
  expect(heat.at(-1)).toBeLessThan(1550);
});

test('heat starts anew each 1 January and never falls within a year', () => {
  const heat = heatSinceNewYear(truth);
  const falls = [...heat.keys()].filter((i) => i > 0 && heat[i]! < heat[i - 1]!).map((i) => formatDay(addDays(WEATHER_FROM, i)));
  expect(falls).toEqual(['2025-01-01', '2026-01-01']);
});
