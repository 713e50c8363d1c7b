import { type IsoDay, ok, type Problem, type Result, refuse } from '@duskwatch/core';
import type { CellValue, Worksheet } from 'exceljs';
import { EMPTY_CELL, type Grid, type SheetCell, type Sheets } from './grid.ts';

/** Opens an XLSX workbook. A sheet is read only when asked for, and refused whole with all its problems. */
export async function openWorkbook(bytes: Uint8Array, file: string): Promise<Result<Sheets>> {
  const { default: excel } = await import('exceljs');
  const workbook = new excel.Workbook();
  try {
    await workbook.xlsx.load(bytes.slice().buffer);
  } catch {
    const got = 'a zip file that is not a workbook, or a damaged or protected one';
    return refuse({
      where: { file },
      got,
      expected: 'an XLSX workbook',
      fix: 'Open it, save it again as XLSX or CSV, and try that.',
    });
  }
  const worksheets = workbook.worksheets.filter((sheet) => sheet.actualRowCount > 0);
  return ok({
    sheets: worksheets.map((sheet) => sheet.name),
    read: (name) => readSheet(worksheets.find((sheet) => sheet.name === name)!, file),
  });
}

function readSheet(sheet: Worksheet, file: string): Result<Grid> {
  const problems: Problem[] = mergedRanges(sheet).map((range) => ({
    where: { file, ...placeOf(range) },
    got: `merged cells ${range} on sheet ${sheet.name}`,
    expected: 'one value in each cell',
    fix: 'Unmerge them (Merge & Center off), and write the value into every cell it holds for.',
  }));
  const rows: SheetCell[][] = [];
  for (let number = 1; number <= sheet.rowCount; number++) {
    const cells: SheetCell[] = [];
    sheet.getRow(number).eachCell({ includeEmpty: true }, (cell, column) => {
      const read = readValue(cell.formula === undefined ? cell.value : (cell.result ?? NO_RESULT));
      if (read instanceof Unreadable) {
        const where = { file, row: number, column: cell.address.replace(/\d+$/, '') };
        problems.push({ where, got: read.got, expected: 'a value', fix: read.fix });
      }
      cells[column - 1] = read instanceof Unreadable ? EMPTY_CELL : read;
    });
    rows.push(Array.from(cells, (cell) => cell ?? EMPTY_CELL));
  }
  if (problems.length > 0) return { ok: false, problems };
  return ok({ file, sheet: sheet.name, rows, decimalComma: false });
}

const mergedRanges = (sheet: Worksheet): readonly string[] => (sheet.model as { merges?: string[] }).merges ?? [];

function placeOf(range: string): { row: number; column: string } {
  const [, column = 'A', row = '1'] = /^([A-Z]+)(\d+)/.exec(range) ?? [];
  return { row: Number(row), column };
}

class Unreadable {
  readonly got: string;
  readonly fix: string;
  constructor(got: string, fix: string) {
    this.got = got;
    this.fix = fix;
  }
}

const NO_RESULT = new Unreadable('a formula without a result', 'Write the value in place of the formula, or empty the cell.');

function readValue(value: CellValue | Unreadable): SheetCell | Unreadable {
  if (value === null || value === undefined) return EMPTY_CELL;
  if (value instanceof Unreadable) return value;
  if (value instanceof Date) return dateCell(value);
  if (typeof value !== 'object') return { text: String(value).trim(), day: null };
  if ('error' in value) return new Unreadable(`the error ${value.error}`, 'Mend the formula, or empty the cell.');
  if ('richText' in value)
    return {
      text: value.richText
        .map((run) => run.text)
        .join('')
        .trim(),
      day: null,
    };
  if ('hyperlink' in value) return readValue(value.text as CellValue);
  return NO_RESULT;
}

function dateCell(value: Date): SheetCell {
  if (Number.isNaN(value.getTime())) return EMPTY_CELL;
  const day: IsoDay = value.toISOString().slice(0, 10);
  return { text: day, day };
}
