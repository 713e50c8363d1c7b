import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { inferNoaaUnits } from './noaa-units.ts';
import { readNoaaDaily } from './read-noaa-daily.ts';

/** Real Seattle–Tacoma daily extremes 2012–2015 (NOAA, public domain), from npm vega-datasets: °C and mm. */
const seattle = readFileSync(new URL('../data/seattle-weather.csv', import.meta.resolve('vega-datasets')), 'utf8')
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => {
    const [date = '', rain, tmax, tmin] = line.split(',');
    return { date, rain: Number(rain), tmax: Number(tmax), tmin: Number(tmin) };
  });

/** The file as a station order hands it out: quoted, with a name that holds a comma and attribute columns. */
const asNoaa = (temperature: (c: number) => string, precipitation: (mm: number) => string) =>
  [
    '"STATION","NAME","DATE","PRCP","PRCP_ATTRIBUTES","TMAX","TMAX_ATTRIBUTES","TMIN","TMIN_ATTRIBUTES"',
    ...seattle.map(
      ({ date, rain, tmax, tmin }) =>
        `"USW00024233","SEATTLE TACOMA, WA US","${date}","${precipitation(rain)}",",,W","${temperature(tmax)}",",,W","${temperature(tmin)}",",,W"`,
    ),
  ].join('\n');

describe('NOAA daily summaries of a real station', () => {
  test.each([
    [
      'metric',
      asNoaa(
        (c) => c.toFixed(1),
        (mm) => mm.toFixed(1),
      ),
      1e-9,
      1e-9,
    ],
    [
      'tenths',
      asNoaa(
        (c) => String(Math.round(c * 10)),
        (mm) => String(Math.round(mm * 10)),
      ),
      1e-9,
      1e-9,
    ],
    [
      'standard',
      asNoaa(
        (c) => String(Math.round(c * 1.8 + 32)),
        (mm) => (mm / 25.4).toFixed(2),
      ),
      0.5 / 1.8 + 1e-9,
      0.127 + 1e-9,
    ],
  ])('are read in %s units without being told, since no other reading is possible', (_, text, withinC, withinMm) => {
    const read = readNoaaDaily(text, 'seattle.csv');
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    expect(read.value).toHaveLength(seattle.length);
    read.value.forEach((record, index) => {
      const day = seattle[index]!;
      expect(record.sourceId).toBe('USW00024233');
      expect(record.date).toBe(day.date);
      expect(Math.abs(record.tmaxC! - day.tmax)).toBeLessThanOrEqual(withinC);
      expect(Math.abs(record.tminC! - day.tmin)).toBeLessThanOrEqual(withinC);
      expect(Math.abs(record.precipitationMm! - day.rain)).toBeLessThanOrEqual(withinMm);
    });
  });
});

const file = (...rows: string[]) => ['STATION,DATE,TMAX,TMIN,PRCP', ...rows].join('\n');

test('whole figures between 0 and 140 could be °F or tenths of °C: the units are asked for', () => {
  const text = file('S,2025-01-01,50,30,0', 'S,2025-01-02,95,35,0');
  expect(readNoaaDaily(text, 'w.csv')).toMatchObject({
    ok: false,
    problems: [
      {
        where: { file: 'w.csv', column: 'TMAX, TMIN' },
        got: 'TMAX from 50 to 95, which could be in more than one unit',
        expected: expect.stringContaining('standard (°F, inches), metric (°C, mm) or tenths'),
      },
    ],
  });
  const standard = readNoaaDaily(text, 'w.csv', { units: 'standard' });
  expect(standard.ok && standard.value[0]).toEqual({
    sourceId: 'S',
    date: '2025-01-01',
    tminC: -2 / 1.8,
    tmaxC: 10,
    precipitationMm: 0,
  });
  const tenths = readNoaaDaily(text, 'w.csv', { units: 'tenths' });
  expect(tenths.ok && tenths.value[0]!.tmaxC).toBe(5);
});

test.each([
  ['tenths of °C, because no °F reaches 250', ['250', '120'], ['3'], 'tenths'],
  ['metric, because only that has decimals', ['25.0', '12.5'], ['0'], 'metric'],
  ['standard, because 78 is no °C and rain has decimals', ['78', '55'], ['0.12'], 'standard'],
  ['unclear, because whole °F and tenths look alike', ['78', '55'], ['0', '3'], null],
  ['unclear, because no such file has decimals in °F', ['78.5', '55'], ['0.12'], null],
])('%s', (_, temperatures, precipitation, units) => {
  expect(inferNoaaUnits(temperatures, precipitation)).toBe(units);
});

test('missing figures stay missing: empty cells and -9999', () => {
  const read = readNoaaDaily(file('S,20250101,,-9999,'), 'w.csv', { units: 'metric' });
  expect(read.ok && read.value).toEqual([{ sourceId: 'S', date: '2025-01-01', tminC: null, tmaxC: null, precipitationMm: null }]);
});

test('wrong units, wrong dates and doubled days are each named by row', () => {
  const read = readNoaaDaily(file('S,2025-07-01,78,55,0', 'S,07/12/2025,20,10,0'), 'w.csv', { units: 'metric' });
  expect(read).toMatchObject({
    ok: false,
    problems: [
      { where: { file: 'w.csv', row: 2, column: 'TMAX' }, got: '78', expected: 'a number from -90 to 60' },
      { where: { file: 'w.csv', row: 3, column: 'DATE' }, got: '07/12/2025', fix: expect.stringContaining('2025-12-07') },
    ],
  });
  expect(readNoaaDaily(file('S,2025-07-01,20,10,0', 'S,2025-07-01,21,10,0'), 'w.csv', { units: 'metric' })).toMatchObject({
    ok: false,
    problems: [{ where: { row: 3 }, expected: expect.stringContaining('row 2 has it already') }],
  });
  expect(readNoaaDaily('STATION,DATE,TMAX\nS,2025-07-01,20', 'w.csv')).toMatchObject({
    ok: false,
    problems: [{ where: { file: 'w.csv', row: 1, column: 'TMIN' } }],
  });
});
