import { describe, expect, test } from 'vitest';
import { CellFault, cellReader, cellText, wanted } from './cells.ts';
import { asFahrenheit } from './columns.ts';
import { recordSchemas } from './program.ts';
import { allTables, tables } from './tables.ts';

const column = (table: keyof typeof tables, name: string) => tables[table].columns.find((candidate) => candidate.name === name)!;
const read = (table: keyof typeof tables, name: string, cell: string, decimalComma = false) =>
  cellReader(column(table, name), { decimalComma })(cell);

test.each(allTables.map((table) => [table.kind, table] as const))(
  '%s has a column for each property of its record, and no other',
  (kind, table) => {
    const properties = Object.keys(recordSchemas[kind].shape).filter((key) => key !== 'visit');
    expect(table.columns.map(({ key }) => key)).toEqual(properties);
  },
);

test('limits and words come from the schema of the record', () => {
  expect(wanted(column('checks', 'target_count'))).toBe('a whole number from 0 to 1000000');
  expect(wanted(column('fields', 'latitude'))).toBe('a number from -90 to 90');
  expect(wanted(column('traps', 'design'))).toBe('one of bucket, mesh-cone, wire-cone, delta, other');
  expect(asFahrenheit(column('weather', 'tmax_c'))).toMatchObject({ name: 'tmax_f', key: 'tmaxC', minimum: -130, maximum: 140 });
});

describe('a cell', () => {
  test.each([
    ['checks', 'target_count', ' 12 ', 12],
    ['checks', 'target_count', '', null],
    ['checks', 'emptied', '', true],
    ['checks', 'emptied', 'No', false],
    ['checks', 'condition', 'FIT', 'fit'],
    ['traps', 'design', 'Mesh Cone', 'mesh-cone'],
    ['traps', 'informs', ' a ; b;', ['a', 'b']],
    ['fields', 'field_id', ' two words ', 'two words'],
    ['checks', 'note', ' as written ', ' as written '],
  ] as const)('of %s.%s written %j is %j', (table, name, cell, value) => {
    expect(read(table, name, cell)).toEqual(value);
  });

  test('takes a decimal comma only where the file parts its cells by something else', () => {
    expect(read('weather', 'tmin_c', '12,5', true)).toBe(12.5);
    expect(read('weather', 'tmin_c', '12,5')).toMatchObject({ fix: 'Write 12.5 if the comma is a decimal comma.' });
    expect(read('weather', 'tmin_c', '1.234,5', true)).toBeInstanceOf(CellFault);
  });

  test.each([['0x10'], ['1e999'], ['NaN'], ['1 000'], ['--3'], ['']])('%j is no threshold', (cell) => {
    expect(read('rules', 'threshold', cell)).toBeInstanceOf(CellFault);
  });

  test('is written as the shortest text of its value', () => {
    expect(cellText(column('weather', 'tmin_c'), 0.1 + 0.2)).toBe('0.30000000000000004');
    expect(cellText(column('checks', 'emptied'), false)).toBe('no');
    expect(cellText(column('traps', 'informs'), ['a', 'b'])).toBe('a;b');
  });
});
