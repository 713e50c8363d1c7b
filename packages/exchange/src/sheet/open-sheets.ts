/** Opens whatever holds a sheet: text in any encoding, XLSX, ODS, XLS. */
import { ok, type Result, refuse } from '@duskwatch/core';
import { scanRows } from '../csv/scan-rows.ts';
import { decodeSheetText } from '../files/decode-sheet-text.ts';
import type { Grid, SheetCell, Sheets } from './grid.ts';
import { plainSpace } from './read-workbook.ts';

async function openSheets(bytes: Uint8Array, file: string): Promise<Result<Sheets>> {
  if (startsWith(bytes, 0x50, 0x4b, 3, 4)) return (await import('./read-workbook.ts')).openWorkbook(bytes, file);
  if (startsWith(bytes, 0xd0, 0xcf, 0x11, 0xe0)) return (await import('./read-workbook.ts')).openOldWorkbook(bytes, file);
  const text = decodeSheetText(bytes);
  if (text === null)
    return refuse({
      where: { file },
      got: 'a file that is neither text nor a workbook',
      expected: 'CSV, TSV, XLSX, XLS or ODS',
      fix: 'Open it where it was made, and save it as CSV or XLSX.',
    });
  return ok({ sheets: [''], hidden: [], read: () => textGrid(text, file) });
}

export interface OpenedGrids {
  readonly grids: readonly Grid[];
  /** Hidden sheets, which are read only where they are named or where there is no other. */
  readonly hidden: readonly string[];
}

/** The grids of all sheets that a person sees, or of the one named. A sheet that is not there is refused. */
export async function openGrids(bytes: Uint8Array, file: string, wanted: string | null): Promise<Result<OpenedGrids>> {
  const opened = await openSheets(bytes, file);
  if (!opened.ok) return opened;
  const { sheets, read } = opened.value;
  const hidden = opened.value.hidden.length < sheets.length ? opened.value.hidden : [];
  const names = sheets.filter((name) => (wanted === null ? !hidden.includes(name) : name === wanted));
  if (names.length === 0) {
    const got = wanted === null ? 'a workbook with nothing in it' : `no sheet ${wanted}; there are ${sheets.join(', ')}`;
    return refuse({
      where: { file },
      got,
      expected: 'a sheet of counts',
      fix: 'Name a sheet that is there, or choose another file.',
    });
  }
  const grids: Grid[] = [];
  for (const name of names) {
    const grid = read(name);
    if (!grid.ok) return grid;
    grids.push(grid.value);
  }
  return ok({ grids, hidden: wanted === null ? hidden : [] });
}

const startsWith = (bytes: Uint8Array, ...signature: number[]): boolean =>
  signature.every((byte, index) => bytes[index] === byte);

function textGrid(text: string, file: string): Result<Grid> {
  const rows: SheetCell[][] = [];
  const delimiter = delimiterOfSheet(text);
  const unclosed = scanRows(text, delimiter, (cells, row) => {
    while (rows.length < row - 1) rows.push([]);
    rows.push(cells.map((cell) => ({ text: plainSpace(cell), day: null })));
  });
  if (unclosed === null) return ok({ file, sheet: null, rows, decimalComma: delimiter !== ',', faults: new Map() });
  const got = 'a double quote that opens a cell and never closes';
  return refuse({ where: { file, row: unclosed }, got, expected: 'a closing double quote', fix: 'Close the quote.' });
}

const DELIMITERS = [',', ';', '\t', '|'] as const;
const LINES_LOOKED_AT = 60;

/** The sign that parts most lines, and each alike: titles above a table have none, and remarks have commas. */
function delimiterOfSheet(text: string): string {
  const lines = text
    .slice(0, 50_000)
    .split(/\r\n|\n|\r/)
    .slice(0, LINES_LOOKED_AT)
    .map((line) => line.replace(/"[^"]*"/g, ''));
  const scored = DELIMITERS.map((delimiter) => {
    const widths = lines.map((line) => line.split(delimiter).length - 1).filter((width) => width > 0);
    const most = mode(widths);
    return { delimiter, score: widths.filter((width) => width === most).length * Math.min(most, 4) };
  });
  return scored.toSorted((a, b) => b.score - a.score)[0]!.delimiter;
}

function mode(values: readonly number[]): number {
  const times = new Map<number, number>();
  for (const value of values) times.set(value, (times.get(value) ?? 0) + 1);
  return [...times].toSorted((a, b) => b[1] - a[1] || b[0] - a[0])[0]?.[0] ?? 0;
}
