/** Workbooks as grids: XLSX and ODS, and the old XLS. */
import { type IsoDay, ok, type Result, refuse } from '@duskwatch/core';
import type { Cell, CellValue, Sheet } from 'hucre/xlsx';
import { type CellFaultText, EMPTY_CELL, type Grid, type SheetCell, type Sheets } from './grid.ts';
import { unpackedBytes } from './unpacked-bytes.ts';

/** No season of counts comes near it; a file made to fill the memory says more. */
const MOST_UNPACKED_MB = 256;

/** Opens an XLSX or ODS workbook. */
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
  try {
    const { sheets } = isOpenDocument(bytes)
      ? await (await import('hucre/ods')).readOds(bytes)
      : await (await import('hucre/xlsx')).readXlsx(bytes);
    return ok(sheetsOf(sheets, file));
  } catch {
    return unreadable(file, 'a zip file that is not a workbook, or a damaged or protected one');
  }
}

/** A workbook of LibreOffice and its like says so at its start (OpenDocument 1.3 part 2, 3.3). */
const isOpenDocument = (bytes: Uint8Array): boolean =>
  new TextDecoder('latin1').decode(bytes.subarray(30, 100)).startsWith('mimetypeapplication/vnd.oasis.opendocument.spreadsheet');

const unreadable = (file: string, got: string): Result<never> =>
  refuse({
    where: { file },
    got,
    expected: 'an XLSX workbook',
    fix: 'Open it without its pass phrase, save it again as XLSX or CSV, and try that.',
  });

function sheetsOf(sheets: readonly Sheet[], file: string): Sheets {
  const filled = sheets.filter((sheet) => sheet.rows.some((row) => row.some((value) => value !== null && value !== '')));
  return {
    sheets: filled.map(({ name }) => name),
    hidden: filled.filter(({ hidden, veryHidden }) => hidden || veryHidden).map(({ name }) => name),
    read: (name) => ok(gridOf(filled.find((sheet) => sheet.name === name)!, file)),
  };
}

function gridOf(sheet: Sheet, file: string): Grid {
  const faults = new Map<string, CellFaultText>();
  const rows = sheet.rows.map((values, row) =>
    values.map((value, column): SheetCell => {
      const fault = faultOf(sheet.cells?.get(`${row},${column}`));
      if (fault === null) return cellOf(value);
      faults.set(`${row},${column}`, fault);
      return EMPTY_CELL;
    }),
  );
  return { file, sheet: sheet.name, rows, decimalComma: false, faults };
}

/** Why a cell's value cannot be relied on; null where it can. */
function faultOf(cell: Cell | undefined): CellFaultText | null {
  if (cell?.type === 'error') return { got: `the error ${cell.value}`, fix: 'Mend the formula, or empty the cell.' };
  if (cell?.type === 'formula' && cell.formulaResult === null)
    return { got: 'a formula without a result', fix: 'Write the value in place of the formula, or empty the cell.' };
  return null;
}

function cellOf(value: CellValue): SheetCell {
  if (value === null) return EMPTY_CELL;
  if (!(value instanceof Date)) return { text: plainSpace(String(value)), day: null };
  if (Number.isNaN(value.getTime())) return EMPTY_CELL;
  const day: IsoDay = value.toISOString().slice(0, 10);
  return { text: day, day };
}

/** Line breaks and hard spaces within a cell are how it was laid out, not what it says. */
export const plainSpace = (text: string): string => text.replace(/[\s\u00a0]+/g, ' ').trim();

/** Opens an XLS workbook, by a reader that is loaded only for one. */
export async function openOldWorkbook(bytes: Uint8Array, file: string): Promise<Result<Sheets>> {
  try {
    const { read, utils } = await import('@e965/xlsx');
    const book = read(bytes, { type: 'array', cellDates: true, dense: true, UTC: true });
    const sheets = book.SheetNames.flatMap((name) => {
      const sheet = book.Sheets[name];
      if (sheet === undefined) return [];
      const rows = utils.sheet_to_json<readonly CellValue[]>(sheet, {
        header: 1,
        raw: true,
        defval: null,
        blankrows: true,
        UTC: true,
      });
      // Rows above the first filled cell are left out there.
      const skipped = sheet['!ref'] === undefined ? 0 : utils.decode_range(sheet['!ref']).s;
      const lead = skipped === 0 ? { r: 0, c: 0 } : skipped;
      const padded = [
        ...Array.from({ length: lead.r }, (): CellValue[] => []),
        ...rows.map((row) => [...Array.from({ length: lead.c }, () => null), ...row]),
      ];
      return [{ name, rows: padded, hidden: (book.Workbook?.Sheets?.find((each) => each.name === name)?.Hidden ?? 0) > 0 }];
    });
    return ok(sheetsOf(sheets as unknown as Sheet[], file));
  } catch {
    return unreadable(file, 'an old workbook that is damaged or protected, or another document of that age');
  }
}
