import { recordSchemas } from '@duskwatch/core';
import fc from 'fast-check';
import { readXlsx } from 'hucre/xlsx';
import { describe, expect, it } from 'vitest';
import { readTable } from '../table/read-table.ts';
import { writeTable } from '../table/write-table.ts';
import { anyProgram } from '../testing/any-program.ts';
import { tablesToWrite } from './data-package.ts';
import { DICTIONARY_SHEET, programWorkbook } from './program-workbook.ts';

/** A sheet as its cells stand, as the text of a CSV table. */
const asCsv = (rows: readonly (readonly unknown[])[]) =>
  rows
    .map((row) =>
      row.map((cell) => (cell === null || cell === undefined ? '' : `"${String(cell).replaceAll('"', '""')}"`)).join(','),
    )
    .join('\n');

describe('a program as a workbook', () => {
  it('gives every table back as the CSV of the folder does, read by a workbook reader', async () => {
    await fc.assert(
      fc.asyncProperty(anyProgram, async (program) => {
        const { sheets } = await readXlsx(await programWorkbook(program));
        const kinds = tablesToWrite(program);
        expect(sheets.map(({ name }) => name)).toEqual([DICTIONARY_SHEET, ...kinds]);
        for (const kind of kinds) {
          const width = sheets.find(({ name }) => name === kind)!.rows[0]!.length;
          const rows = sheets
            .find(({ name }) => name === kind)!
            .rows.map((row) => Array.from({ length: width }, (_, i) => row[i]));
          const ofSheet = readTable(kind, asCsv(rows), `${kind}.csv`);
          const ofFolder = readTable(kind, writeTable(kind, program[kind] as never), `${kind}.csv`);
          expect(ofSheet).toEqual(ofFolder);
        }
      }),
      { numRuns: 8 },
    );
  });

  it('says of every column what it holds', async () => {
    const [program] = fc.sample(anyProgram, { numRuns: 1, seed: 7 });
    const { sheets } = await readXlsx(await programWorkbook(program!));
    const told = sheets[0]!.rows.slice(1).map(([table, column]) => `${table}.${column}`);
    for (const { name, rows } of sheets.slice(1)) for (const column of rows[0]!) expect(told).toContain(`${name}.${column}`);
    expect(Object.keys(recordSchemas)).toEqual(expect.arrayContaining(sheets.slice(1).map(({ name }) => name)));
  });

  it('holds what looks like a formula as the text that it is', async () => {
    const [program] = fc.sample(anyProgram, { numRuns: 1, seed: 7 });
    const name = '=HYPERLINK("http://nowhere.invalid")';
    const field = { ...program!.fields[0]!, name };
    const { sheets } = await readXlsx(await programWorkbook({ ...program!, fields: [field] }));
    const { rows, cells } = sheets.find((sheet) => sheet.name === 'fields')!;
    expect(rows[1]).toContain(name);
    expect([...(cells?.values() ?? [])].filter((cell) => cell.formula !== undefined)).toEqual([]);
  });
});
