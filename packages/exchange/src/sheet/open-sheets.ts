import { ok, type Problem, type Result, refuse } from '@duskwatch/core';
import { delimiterOf, scanRows } from '../csv/scan-rows.ts';
import { decodeText } from '../files/read-text.ts';
import type { Grid, SheetCell, Sheets } from './grid.ts';

/** One sheet of a CSV or XLSX file; a workbook of several sheets needs the name of one. */
export async function loadGrid(bytes: Uint8Array, file: string, sheet: string | null): Promise<Result<Grid>> {
  const opened = await openSheets(bytes, file);
  if (!opened.ok) return opened;
  const { sheets, read } = opened.value;
  const name = sheet ?? (sheets.length === 1 ? sheets[0]! : null);
  if (name !== null && (sheets.includes(name) || sheets.length === 0)) return read(name);
  return refuse(whichSheet(file, sheet, sheets));
}

export async function openSheets(bytes: Uint8Array, file: string): Promise<Result<Sheets>> {
  if (isZip(bytes)) {
    const { openWorkbook } = await import('./read-workbook.ts');
    return openWorkbook(bytes, file);
  }
  const text = decodeText(bytes, file);
  return text.ok ? ok({ sheets: [''], read: () => textGrid(text.value, file) }) : text;
}

const isZip = (bytes: Uint8Array): boolean => bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 3 && bytes[3] === 4;

function textGrid(text: string, file: string): Result<Grid> {
  const rows: SheetCell[][] = [];
  const delimiter = delimiterOf(text);
  const unclosed = scanRows(text, delimiter, (cells, row) => {
    while (rows.length < row - 1) rows.push([]);
    rows.push(cells.map((cell) => ({ text: cell.trim(), day: null })));
  });
  if (unclosed === null) return ok({ file, sheet: null, rows, decimalComma: delimiter !== ',' });
  const got = 'a double quote that opens a cell and never closes';
  return refuse({ where: { file, row: unclosed }, got, expected: 'a closing double quote', fix: 'Close the quote.' });
}

function whichSheet(file: string, wanted: string | null, sheets: readonly string[]): Problem {
  const names = sheets.join(', ');
  if (sheets.length === 0) {
    return { where: { file }, got: 'a workbook with nothing in it', expected: 'a sheet of counts', fix: 'Choose another file.' };
  }
  const got = wanted === null ? `${sheets.length} sheets: ${names}` : `no sheet ${wanted}; there are ${names}`;
  return { where: { file }, got, expected: 'the name of one sheet', fix: 'Name the sheet that holds the counts.' };
}
