import { type IsoDay, ok, type Problem, type Result, refuse } from '@duskwatch/core';
import type { Cell, CellValue, Sheet } from 'hucre/xlsx';
import { columnLetters, EMPTY_CELL, type Grid, type SheetCell, type Sheets } from './grid.ts';
import { unpackedBytes } from './unpacked-bytes.ts';

/** No season of counts comes near it; a file made to fill the memory says more. */
const MOST_UNPACKED_MB = 256;

/** Opens an XLSX workbook. A sheet is refused whole, with all its problems, and only when it is asked for. */
export async function openWorkbook(bytes: Uint8Array, file: string): Promise<Result<Sheets>> {
  const unpacked = unpackedBytes(bytes);
  if (unpacked !== null && unpacked > MOST_UNPACKED_MB * 1e6) {
    return refuse({
      where: { file },
      got: `a workbook that unpacks to ${Math.round(unpacked / 1e6)} MB`,
      expected: `at most ${MOST_UNPACKED_MB} MB`,
      fix: 'Copy the counts into a workbook of their own, and try that.',
    });
  }
  const { readXlsx } = await import('hucre/xlsx');
  let sheets: readonly Sheet[];
  try {
    ({ sheets } = await readXlsx(bytes));
  } catch {
    const got = 'a zip file that is not a workbook, or a damaged or protected one';
    return refuse({
      where: { file },
      got,
      expected: 'an XLSX workbook',
      fix: 'Open it, save it again as XLSX or CSV, and try that.',
    });
  }
  const filled = sheets.filter((sheet) => sheet.rows.some((row) => row.some((value) => value !== null)));
  return ok({
    sheets: filled.map((sheet) => sheet.name),
    read: (name) => readSheet(filled.find((sheet) => sheet.name === name)!, file),
  });
}

function readSheet(sheet: Sheet, file: string): Result<Grid> {
  const problems: Problem[] = (sheet.merges ?? []).map(({ startRow, startCol, endRow, endCol }) => {
    const range = `${columnLetters(startCol)}${startRow + 1}:${columnLetters(endCol)}${endRow + 1}`;
    return {
      where: { file, row: startRow + 1, column: columnLetters(startCol) },
      got: `merged cells ${range} on sheet ${sheet.name}`,
      expected: 'one value in each cell',
      fix: 'Unmerge them (Merge & Center off), and write the value into every cell it holds for.',
    };
  });
  const rows = sheet.rows.map((values, row) =>
    values.map((value, column): SheetCell => {
      const fault = faultOf(sheet.cells?.get(`${row},${column}`));
      if (!fault) return cellOf(value);
      problems.push({ where: { file, row: row + 1, column: columnLetters(column) }, expected: 'a value', ...fault });
      return EMPTY_CELL;
    }),
  );
  if (problems.length > 0) return { ok: false, problems };
  return ok({ file, sheet: sheet.name, rows, decimalComma: false });
}

/** Why a cell's value cannot be relied on; null where it can. */
function faultOf(cell: Cell | undefined): Pick<Problem, 'got' | 'fix'> | null {
  if (cell?.type === 'error') return { got: `the error ${cell.value}`, fix: 'Mend the formula, or empty the cell.' };
  if (cell?.type === 'formula' && cell.formulaResult === null)
    return { got: 'a formula without a result', fix: 'Write the value in place of the formula, or empty the cell.' };
  return null;
}

function cellOf(value: CellValue): SheetCell {
  if (value === null) return EMPTY_CELL;
  if (!(value instanceof Date)) return { text: String(value).trim(), day: null };
  if (Number.isNaN(value.getTime())) return EMPTY_CELL;
  const day: IsoDay = value.toISOString().slice(0, 10);
  return { text: day, day };
}
