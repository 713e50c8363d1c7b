/** What a table's cells hold beside what they show: plain numbers and ISO days, to sort by, to copy and to export. */
export type CellValue = string | number | null;

/** How a table stands: by which column, and whether the greatest comes first. */
export interface Sort {
  /** Place of the column, from 0. */
  readonly by: number;
  readonly down: boolean;
}

/** Names in the order of the reader's alphabet, with `B2` before `B10`. */
const byName = new Intl.Collator(undefined, { numeric: true });

/**
 * Rows by what a column holds. Rows that hold alike stay as they came; those that hold nothing come last either way.
 * Numbers come before words.
 */
export function sorted<R>(rows: readonly R[], value: (row: R) => CellValue, down: boolean): R[] {
  const held = rows.map((row) => ({ row, value: blankAsNull(value(row)) }));
  const sign = down ? -1 : 1;
  return held.sort((a, b) => compared(a.value, b.value, sign)).map(({ row }) => row);
}

const blankAsNull = (value: CellValue): CellValue => (value === '' || Number.isNaN(value) ? null : value);

function compared(a: CellValue, b: CellValue, sign: 1 | -1): number {
  if (a === null || b === null) return a === b ? 0 : a === null ? 1 : -1;
  if (typeof a === 'number' && typeof b === 'number') return sign * (a - b);
  if (typeof a === 'string' && typeof b === 'string') return sign * byName.compare(a, b);
  return sign * (typeof a === 'number' ? -1 : 1);
}

/** The next way to stand when a column's head is pressed: figures from the greatest, words from A; then turned; then as it came. */
export function nextSort(sort: Sort | null, by: number, isNumber: boolean): Sort | null {
  if (sort?.by !== by) return { by, down: isNumber };
  return sort.down === isNumber ? { by, down: !isNumber } : null;
}

/** Text that a spreadsheet takes for a formula is made plain: a name may begin with = + - @. */
function quoted(value: CellValue): string {
  const written = value === null ? '' : String(value);
  const text = typeof value === 'string' && /^[=+\-@\t\r]/.test(written) ? `'${written}` : written;
  return /[",\n\r]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** As RFC 4180 has it: commas, CRLF between lines, quotation marks where a cell needs them. */
export const asCsv = (head: readonly string[], rows: readonly (readonly CellValue[])[]): string =>
  [head, ...rows].map((cells) => cells.map(quoted).join(',')).join('\r\n');

/** To paste into a message: a line to a row, without what is empty. */
export const asText = (rows: readonly (readonly CellValue[])[]): string =>
  rows.map((cells) => cells.filter((cell) => cell !== null && cell !== '').join('; ')).join('\n');

/** A name for a file that every system takes. */
export const fileName = (said: string): string =>
  said
    .normalize('NFD')
    .replaceAll(/\p{M}/gu, '')
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-|-$/g, '')
    .slice(0, 60) || 'table';
