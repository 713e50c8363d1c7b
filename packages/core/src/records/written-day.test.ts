import fc from 'fast-check';
import { expect, test } from 'vitest';
import { dayOf, formatDay } from '../base/day.ts';
import { dayReadings, explainDay, spreadsheetDay } from './written-day.ts';

test.each([
  ['07/12/2025', { dmy: '2025-12-07', mdy: '2025-07-12' }],
  ['7.12.25', { dmy: '2025-12-07', mdy: '2025-07-12' }],
  ['31-7-2025', { dmy: '2025-07-31' }],
  ['7/31/2025', { mdy: '2025-07-31' }],
  ['2025/7/4', { ymd: '2025-07-04' }],
  ['29/2/2025', {}],
  ['12', {}],
  ['7/12-2025', {}],
])('%s can be read as %j', (written, readings) => {
  expect(dayReadings(written)).toEqual(readings);
});

test('a day written in any order is among its readings', () => {
  const someDay = fc.integer({ min: dayOf(2000, 1, 1), max: dayOf(2099, 12, 31) });
  fc.assert(
    fc.property(someDay, fc.constantFrom('/', '.', '-'), (number, sign) => {
      const iso = formatDay(number as ReturnType<typeof dayOf>);
      const [year, month, date] = iso.split('-').map(String);
      expect(dayReadings([date, month, year].join(sign)).dmy).toBe(iso);
      expect(dayReadings([month, date, year].join(sign)).mdy).toBe(iso);
      expect(dayReadings([year, month, date].join(sign)).ymd).toBe(iso);
    }),
  );
});

test.each([
  ['2025-02-29', /2025-02 has 28 days/, /Correct the day/],
  ['2025-13-01', /months run from 01 to 12/, /Correct the day/],
  ['2025-7-4', /YYYY-MM-DD/, /Write 2025-07-04\./],
  ['2025-07-04T10:00', /YYYY-MM-DD/, /Leave the time out: write 2025-07-04/],
  ['next week', /YYYY-MM-DD/, /for example 2025-07-12/],
  ['5/5/2025', /YYYY-MM-DD/, /Write 2025-05-05\./],
])('%s is explained', (written, expected, fix) => {
  expect(explainDay(written).expected).toMatch(expected);
  expect(explainDay(written).fix).toMatch(fix);
});

/** ECMA-376 part 1, 18.17.4.1: serial 1 January 2008 is 39448 in the 1900 date system. */
test("a spreadsheet's day number is the day it shows", () => {
  expect(spreadsheetDay(39448)).toBe('2008-01-01');
  expect(spreadsheetDay(39448.75)).toBe('2008-01-01');
});
