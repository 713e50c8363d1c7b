import { expect, test } from 'vitest';
import { readNormals } from './NormalsForm.tsx';

const about = { sourceId: 'mill', unit: 'F' } as const;
const year = (low = '50', high = '86') => Array.from({ length: 12 }, () => ({ low, high }));
const but = (month: number, low: string, high: string) => year().map((each, i) => (i === month - 1 ? { low, high } : each));

test('twelve months in °F are written down in °C', () => {
  const read = readNormals(year(), about);
  expect(read).toHaveLength(12);
  expect(read[6]).toEqual({ sourceId: 'mill', month: 7, tminC: 10, tmaxC: 30 });
});

test('a decimal comma is read as one, and a month below zero too', () => {
  expect(readNormals(year('-9,5', '-1.5'), { ...about, unit: 'C' })[0]).toMatchObject({ tminC: -9.5, tmaxC: -1.5 });
});

test.each([
  ['a month left out', but(3, '', ''), 'March'],
  ['one temperature of a month', but(7, '50', ''), 'July'],
  ['the highest below the lowest', but(7, '80', '50'), 'July'],
  ['a letter', but(12, '5O', '80'), 'December'],
  ['a heat that no month has', but(1, '50', '400'), 'January'],
])('%s is not written, and the month to mend is named', (_, boxes, month) => {
  expect(readNormals(boxes, about)).toContain(month);
});
