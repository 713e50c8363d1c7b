/** Comma-separated text with `\n` line ends; a cell is quoted only when it must be (RFC 4180). */
export function writeRows(rows: Iterable<readonly string[]>): string {
  let text = '';
  for (const row of rows) text += `${row.map(quoteIfNeeded).join(',')}\n`;
  return text;
}

const quoteIfNeeded = (cell: string): string => (/[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);
