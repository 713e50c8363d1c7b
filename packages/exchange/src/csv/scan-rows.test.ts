import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { delimiterOf, scanRows } from './scan-rows.ts';
import { writeRows } from './write-rows.ts';

const scanned = (text: string, delimiter = ','): string[][] => {
  const rows: string[][] = [];
  expect(scanRows(text, delimiter, (cells) => rows.push(cells))).toBeNull();
  return rows;
};

const cell = fc.oneof(fc.string({ unit: fc.constantFrom('a', ',', '"', '\n', '\r', ' ', ';', 'é'), maxLength: 6 }), fc.string());
/** A row of one empty cell is a blank line, which holds no record. */
const table = fc
  .integer({ min: 2, max: 5 })
  .chain((width) => fc.array(fc.array(cell, { minLength: width, maxLength: width }), { minLength: 1, maxLength: 6 }));

test('what is written is read back, and csv-parse, an independent reader, reads the same', () => {
  fc.assert(
    fc.property(table, (rows) => {
      const text = writeRows(rows);
      expect(scanned(text)).toEqual(rows);
      expect(parse(text, { record_delimiter: '\n' })).toEqual(rows);
    }),
    { numRuns: 500 },
  );
});

test('rows keep the numbers that a spreadsheet shows: blank lines count, line ends within a cell do not', () => {
  const rows: [number, string[]][] = [];
  scanRows('a,b\r\n\r\n"x\r\ny",2\r\n3,4', ',', (cells, row) => rows.push([row, cells]));
  expect(rows).toEqual([
    [1, ['a', 'b']],
    [3, ['x\r\ny', '2']],
    [4, ['3', '4']],
  ]);
});

test('a quote that never closes is reported by the row where it opens', () => {
  expect(scanRows('a,b\n1,2\n"3,4\n5,6\n', ',', () => {})).toBe(3);
});

test.each([
  ['a,b,c', ','],
  ['a;b;"c,d,e,f"', ';'],
  ['a\tb\tc,d', '\t'],
  ['single', ','],
])('%j is parted by %j', (line, delimiter) => {
  expect(delimiterOf(`${line}\n1,2;3,4;5`)).toBe(delimiter);
});
