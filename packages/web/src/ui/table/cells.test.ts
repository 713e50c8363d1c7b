import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { asCsv, asText, type CellValue, fileName, nextSort, sorted } from './cells.ts';

const cell = fc.oneof(fc.double(), fc.integer(), fc.string(), fc.constant(null));
const itself = (value: CellValue) => value;

describe('a table that is sorted', () => {
  test('puts trap B2 before B10, and a trap without a rate last whichever way it stands', () => {
    expect(sorted(['B10', 'B2', 'A7'], itself, false)).toEqual(['A7', 'B2', 'B10']);
    expect(sorted([0.4, null, 12, 3], itself, false)).toEqual([0.4, 3, 12, null]);
    expect(sorted([0.4, null, 12, 3], itself, true)).toEqual([12, 3, 0.4, null]);
  });

  test('leaves visits of one day in the order they came', () => {
    const visits = [
      { on: '2025-07-12', trap: 'C' },
      { on: '2025-07-12', trap: 'A' },
      { on: '2025-07-05', trap: 'B' },
    ];
    const order = (down: boolean) => sorted(visits, ({ on }) => on, down).map(({ trap }) => trap);
    expect(order(false)).toEqual(['B', 'C', 'A']);
    expect(order(true)).toEqual(['C', 'A', 'B']);
  });

  test('holds the rows it held, each no later than the next, whatever they hold', () => {
    fc.assert(
      fc.property(fc.array(cell), fc.boolean(), (cells, down) => {
        const once = sorted(cells, itself, down);
        expect([...once].map(String).sort()).toEqual(cells.map(String).sort());
        expect(sorted(once, itself, down)).toEqual(once);
        const empty = once.findIndex((value) => value === null || value === '' || Number.isNaN(value));
        if (empty >= 0)
          expect(once.slice(empty).every((value) => value === null || value === '' || Number.isNaN(value))).toBe(true);
      }),
    );
  });
});

test('a head that is pressed shows the highest catch first, then the lowest, then the order it came in', () => {
  const first = nextSort(null, 2, true);
  expect(first).toEqual({ by: 2, down: true });
  const second = nextSort(first, 2, true);
  expect(second).toEqual({ by: 2, down: false });
  expect(nextSort(second, 2, true)).toBeNull();
  expect(nextSort(first, 0, false)).toEqual({ by: 0, down: false });
});

describe('a table that is taken along', () => {
  test('reads back from CSV cell by cell, with commas, quotation marks and line breaks in names', () => {
    // An independent reader judges: RFC 4180, section 2.
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.string(), fc.integer()), { minLength: 1 }), (rows) => {
        const read = parse(asCsv(['field, farm', 'moths'], rows), { relax_column_count: false, skip_empty_lines: false });
        const plain = rows.map(([text, number]) => [/^[=+\-@\t\r]/.test(text) ? `'${text}` : text, String(number)]);
        expect(read).toEqual([['field, farm', 'moths'], ...plain]);
      }),
    );
  });

  test('never hands a formula to a spreadsheet, and keeps negative numbers as they are', () => {
    expect(asCsv(['a', 'b'], [['=HYPERLINK("x")', -3]])).toBe('a,b\r\n"\'=HYPERLINK(""x"")",-3');
  });

  test('leaves out of a message what nobody wrote down', () => {
    expect(asText([['Acre', null, 3, '']])).toBe('Acre; 3');
  });

  test('names its file in letters that every system takes', () => {
    expect(fileName('Vuelos: oruga del elote, ½ ha')).toBe('vuelos-oruga-del-elote-ha');
    expect(fileName('…')).toBe('table');
  });
});
