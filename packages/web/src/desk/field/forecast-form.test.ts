import { expect, test } from 'vitest';
import { readForecast } from './ForecastForm.tsx';

const about = { sourceId: 'mill', madeOn: '2026-07-14', unit: 'F' } as const;
const day = (low: string, high: string) => ({ low, high });
const empty = day('', '');

test('a forecast in °F is written down in °C, one record for each day in order, saying when it was made', () => {
  expect(readForecast([day('50', '86'), day('59', '77'), empty], '2026-07-15', about)).toEqual([
    { sourceId: 'mill', date: '2026-07-15', tminC: 10, tmaxC: 30, precipitationMm: null, forecastMadeOn: '2026-07-14' },
    { sourceId: 'mill', date: '2026-07-16', tminC: 15, tmaxC: 25, precipitationMm: null, forecastMadeOn: '2026-07-14' },
  ]);
});

test('a decimal comma is read as one', () => {
  expect(readForecast([day('9,5', '21')], '2026-07-15', { ...about, unit: 'C' })).toMatchObject([{ tminC: 9.5, tmaxC: 21 }]);
});

test.each([
  ['nothing at all', [empty, empty]],
  ['a day left out', [day('50', '80'), empty, day('50', '80')]],
  ['one temperature of a day', [day('50', '')]],
  ['the highest below the lowest', [day('80', '50')]],
  ['a letter', [day('5O', '80')]],
  ['a heat that no day has', [day('50', '400')]],
])('%s is not written, and what to mend is said', (_, boxes) => {
  expect(readForecast(boxes, '2026-07-15', about)).toEqual(expect.any(String));
});
