import { addDays, day, formatDay } from '@duskwatch/core';
import { describe, expect, test } from 'vitest';
import { folderOf, SOUND_FILES } from '../testing/folder-of.ts';
import { readProgramFolder } from './read-folder.ts';

const read = async (change: (text: string) => string) => {
  const files = Object.fromEntries(Object.entries(SOUND_FILES).map(([file, text]) => [file, change(text)]));
  const result = await readProgramFolder(await folderOf(files));
  if (!result.ok) throw new Error(JSON.stringify(result.problems, null, 1));
  const { settings, ...records } = result.value;
  return records;
};

/** As a spreadsheet in a country of decimal commas saves it; `;` within a cell then needs quotes. */
const withSemicolons = (text: string) =>
  text
    .replace('"down, wind"', 'down~ wind')
    .replace(/[\w-]+(;[\w-]+)+/g, '"$&"')
    .replaceAll(',', '§')
    .replaceAll('.', ',')
    .replaceAll('§', ';')
    .replace('down~ wind', '"down, wind"');

describe('what spreadsheets do to a table changes nothing', () => {
  test.each<[string, (text: string) => string]>([
    ['a byte order mark', (text) => `\uFEFF${text}`],
    ['Windows line ends', (text) => text.replaceAll('\n', '\r\n')],
    ['line ends of old Macs', (text) => text.replaceAll('\n', '\r')],
    ['blank lines at the end', (text) => `${text}\n\r\n\n`],
    ['rows of empty cells at the end', (text) => `${text}${','.repeat(text.split('\n')[0]!.split(',').length - 1)}\n`],
    ['empty columns to the right', (text) => text.replaceAll('\n', ',,\n')],
    ['semicolons with decimal commas', withSemicolons],
    ['tabs', (text) => text.replace('"down, wind"', 'down~ wind').replaceAll(',', '\t').replace('~', ',')],
    ['headers in capitals with spaces', (text) => text.replace(/^.*/, (line) => line.toUpperCase().replaceAll('_', ' '))],
    [
      'every cell in quotes',
      (text) =>
        text
          .replace('"down, wind"', 'down~ wind')
          .replace(/[^,\n]+/g, '"$&"')
          .replace('~', ','),
    ],
    ['no line end after the last row', (text) => text.trimEnd()],
  ])('%s', async (_, change) => {
    expect(await read(change)).toEqual(await read((text) => text));
  });
});

test('a second visit on a day is numbered in the order of the rows', async () => {
  const checks = `${SOUND_FILES['checks.csv']}T1,2025-07-01,1,,fit,yes,second look\n`;
  const result = await readProgramFolder(await folderOf({ 'checks.csv': checks }));
  expect(result.ok && result.value.checks.map(({ trapId, visit }) => [trapId, visit])).toEqual([
    ['T1', 1],
    ['T1', 1],
    ['T2', 1],
    ['T1', 2],
  ]);
});

test('a folder with only fields, traps and checks is a program; its name is the folder’s', async () => {
  const others = Object.keys(SOUND_FILES).filter((file) => !['fields.csv', 'traps.csv', 'checks.csv'].includes(file));
  const dir = await folderOf(Object.fromEntries(others.map((file) => [file, null])));
  const result = await readProgramFolder(dir);
  expect(result.ok && [result.value.weather, result.value.settings]).toEqual([
    [],
    { name: dir.split('/').at(-1), invented: false, pinnedOn: null },
  ]);
});

test('temperatures in °F are stored in °C, and written and read again without change', async () => {
  const weather = 'source_id,date,tmin_f,tmax_f\nstation,2025-07-01,50,77.9\n';
  const result = await readProgramFolder(await folderOf({ 'weather.csv': weather }));
  expect(result.ok && result.value.weather[0]).toMatchObject({ tminC: 10, tmaxC: (77.9 - 32) / 1.8 });
});

test('normals in °F are stored in °C like the days they stand for', async () => {
  const normals = 'source_id,month,tmin_f,tmax_f\nstation,7,59,86\n';
  const result = await readProgramFolder(await folderOf({ 'normals.csv': normals }));
  expect(result.ok && result.value.normals).toEqual([{ sourceId: 'station', month: 7, tminC: 15, tmaxC: 30 }]);
});

test('reading tells how far it is, never going back, up to the whole', async () => {
  const rows = Array.from({ length: 9_000 }, (_, i) => `T1,${formatDay(addDays(day('2025-06-01'), i))},3,,fit,,\n`).join('');
  const header = 'trap_id,checked_on,target_count,other_count,condition,emptied,note\n';
  const told: [number, number][] = [];
  const dir = await folderOf({ 'checks.csv': header + rows });
  const result = await readProgramFolder(dir, { onProgress: (done, total) => told.push([done, total]) });
  expect(result.ok && result.value.checks).toHaveLength(9_000);
  expect(told.length).toBeGreaterThan(4);
  expect(told.map(([done]) => done)).toEqual(told.map(([done]) => done).toSorted((a, b) => a - b));
  expect(new Set(told.map(([, total]) => total)).size).toBe(1);
  expect(told.at(-1)![0]).toBe(told.at(-1)![1]);
});
