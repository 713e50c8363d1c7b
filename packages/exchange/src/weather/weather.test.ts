/** Weather as loggers, stations and archives hand it out, and what each cell must become. */
import { emptyProgram } from '@duskwatch/core';
import { describe, expect, test } from 'vitest';
import { answerMatch } from '../sheet/answers.ts';
import { applyAnyMatch } from '../sheet/apply-match.ts';
import { proposeMatch } from '../sheet/propose-match.ts';
import { elementOf, precipitationUnitIn, temperatureUnitIn } from './weather-headings.ts';

const bytes = (lines: readonly string[]) => new TextEncoder().encode(lines.join('\n'));

const asked = async (lines: readonly string[]) => {
  const looked = await proposeMatch(bytes(lines), 'log.csv');
  if (!looked.ok) throw new Error(JSON.stringify(looked.problems));
  return looked.value.proposal;
};

const weather = async (lines: readonly string[], answers: Readonly<Record<string, string>> = {}) => {
  const { match, questions } = await asked(lines);
  const answered = answerMatch(match!, questions, answers);
  if (!answered.ok) return answered.problems;
  const read = await applyAnyMatch(bytes(lines), answered.value, emptyProgram(), 'log.csv');
  return read.ok
    ? read.value.weather!.map(({ sourceId, date, tminC, tmaxC, precipitationMm }) => [
        sourceId,
        date,
        tminC,
        tmaxC,
        precipitationMm,
      ])
    : read.problems;
};

describe('headings', () => {
  test.each([
    ['Max Temp (°F)', 'tmax'],
    ['Temp High', 'tmax'],
    ['Low °C', 'tmin'],
    ['tmn', 'tmin'],
    ['Temperatura mínima', 'tmin'],
    ['Temp, °C', 'temperature'],
    ['Avg Temp', null],
    ['Soil Temp Max', null],
    ['Dew Point', null],
    ['Rain (in)', 'precipitation'],
    ['Precipitación mm', 'precipitation'],
    ['CEW', undefined],
    ['North gate', undefined],
    ['High Street', undefined],
    ['Water tower', undefined],
    ['Low', 'tmin'],
  ] as const)('%s', (heading, element) => {
    expect(elementOf(heading)).toBe(element);
  });

  test.each([
    ['Max Temp (°F)', 'F'],
    ['tmin_c', 'C'],
    ['Temp, °C', 'C'],
    ['High F', 'F'],
    ['TMAX (tenths of °C)', 'tenths-C'],
    ['TMAX', null],
  ] as const)('%s is in %s', (heading, unit) => {
    expect(temperatureUnitIn(heading)).toBe(unit);
  });

  test('precipitation says its unit, or is asked about', () => {
    expect(['Rain in.', 'Precip (mm)', 'PRCP tenths of mm', 'Rain'].map(precipitationUnitIn)).toEqual([
      'in',
      'mm',
      'tenths-mm',
      null,
    ]);
  });
});

describe('daily tables', () => {
  test('°F, inches, a trace and missing days, dated as in the United States', async () => {
    const lines = [
      'Date,Max Temp (°F),Min Temp (°F),Precip (in)',
      '7/1/2025,86,59,0.50',
      '7/2/2025,M,60,T',
      '7/13/2025,-40,-40,M',
    ];
    expect(await weather(lines, { source: 'barn' })).toEqual([
      ['barn', '2025-07-01', 15, 30, 12.7],
      ['barn', '2025-07-02', 15.555556, null, 0],
      ['barn', '2025-07-13', -40, -40, null],
    ]);
  });

  test('units that nothing names are asked, and never guessed', async () => {
    const lines = ['date,tmin,tmax', '2025-07-01,15,30', '2025-07-02,16,31'];
    expect((await asked(lines)).questions.map(({ id, suggestion }) => [id, suggestion])).toEqual([
      ['temperatureUnit', 'C'],
      ['source', 'log'],
    ]);
    expect(await weather(lines, { source: 'barn' })).toMatchObject([
      { where: { column: 'temperatureUnit' }, got: 'no answer yet' },
    ]);
  });

  test('figures that no weather has are refused with what may be wrong', async () => {
    const lines = ['STATION,DATE,TMIN,TMAX', 'S1,2025-07-01,150,305'];
    expect(await weather(lines, { temperatureUnit: 'C' })).toMatchObject([
      { where: { row: 2, column: 'C' }, got: '150', fix: expect.stringContaining('tenths of °C') },
      { where: { row: 2, column: 'D' }, got: '305' },
    ]);
    expect(await weather(lines, { temperatureUnit: 'tenths-C' })).toEqual([['S1', '2025-07-01', 15, 30.5, null]]);
  });

  test('a decimal comma, and columns that are read for nothing, are told apart', async () => {
    const lines = ['fecha;tmin °C;tmax °C;humedad;viento', '13/07/2025;12,5;28,1;80;3', '14/07/2025;13;27,9;81;2'];
    expect(await weather(lines, { source: 'estación' })).toEqual([
      ['estación', '2025-07-13', 12.5, 28.1, null],
      ['estación', '2025-07-14', 13, 27.9, null],
    ]);
  });

  test('a word in a cell is named by its place', async () => {
    const lines = ['date,tmin_c,tmax_c', '2025-07-01,cold,30'];
    expect(await weather(lines, { source: 'barn' })).toMatchObject([{ where: { row: 2, column: 'B' }, got: 'cold' }]);
  });
});

describe('loggers', () => {
  const readings = (day: string, hours: readonly number[]) =>
    hours.map((hour) => `${day} ${String(hour).padStart(2, '0')}:00,${10 + hour / 2},0.1`);
  const all = Array.from({ length: 24 }, (_, hour) => hour);

  test('a day has the extremes and the sum of its readings; with too few of them it stays unknown', async () => {
    const lines = [
      'Time,"Temp, °C",Rain mm',
      ...readings('2025-07-01', all),
      ...readings('2025-07-02', all),
      ...readings('2025-07-03', all.slice(0, 9)),
    ];
    expect(await weather(lines, { source: 'log' })).toEqual([
      ['log', '2025-07-01', 10, 21.5, 2.4],
      ['log', '2025-07-02', 10, 21.5, 2.4],
      ['log', '2025-07-03', null, null, null],
    ]);
  });

  test('world time is asked about and moved to the day of the site', async () => {
    const stamps = ['01', '02', '03'].flatMap((day) => ['03', '09', '15', '21'].map((hour) => `2025-07-${day}T${hour}:00Z`));
    const lines = ['Time,"Temp, °C"', ...stamps.map((stamp, index) => `${stamp},${index}`)];
    expect((await asked(lines)).questions.map(({ id }) => id)).toContain('clock');
    // Three of the last day's four readings are enough; the one of the day before the first is not.
    expect(await weather(lines, { source: 'log', clock: '-4' })).toEqual([
      ['log', '2025-06-30', null, null, null],
      ['log', '2025-07-01', 1, 4, null],
      ['log', '2025-07-02', 5, 8, null],
      ['log', '2025-07-03', 9, 11, null],
    ]);
  });
});

test('a year of an archive has one figure a row, in tenths, and leaves out what failed its quality check', async () => {
  const lines = [
    'US1XX,20250701,TMAX,305,,,W,2400',
    'US1XX,20250701,TMIN,150,,,W,2400',
    'US1XX,20250701,PRCP,127,,,W,2400',
    'US1XX,20250702,TMAX,900,,G,W,2400',
    'US1XX,20250702,TMIN,161,,,W,2400',
    'US1XX,20250702,SNOW,0,,,W,',
  ];
  expect(await weather(lines)).toEqual([
    ['US1XX', '2025-07-01', 15, 30.5, 12.7],
    ['US1XX', '2025-07-02', 16.1, null, null],
  ]);
});
