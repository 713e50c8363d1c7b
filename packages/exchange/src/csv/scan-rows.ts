/**
 * Reads delimited text (RFC 4180, with any delimiter and line end). Lines without a quote, nearly all of them in
 * tables of counts, are split whole; only records with a quote are walked cell by cell.
 */
export type OnRow = (cells: string[], row: number, end: number) => void;

/** Calls `onRow` for each record but blank lines, numbering rows from 1 as a spreadsheet does. Returns the row whose quote never closes, or null. */
export function scanRows(text: string, delimiter: string, onRow: OnRow): number | null {
  const lineEnd = text.includes('\n') || !text.includes('\r') ? '\n' : '\r';
  let at = 0;
  let row = 0;
  let nextQuote = text.indexOf('"');
  while (at < text.length) {
    row += 1;
    if (nextQuote !== -1 && nextQuote < at) nextQuote = text.indexOf('"', at);
    const end = indexOrEnd(text, lineEnd, at);
    if (nextQuote === -1 || nextQuote >= end) {
      const line = withoutReturn(text.slice(at, end));
      if (line !== '') onRow(line.split(delimiter), row, end);
      at = end + 1;
    } else {
      const record = scanQuotedRecord(text, at, delimiter, lineEnd);
      if (record === null) return row;
      onRow(record.cells, row, record.end);
      at = record.end + 1;
    }
  }
  return null;
}

function scanQuotedRecord(
  text: string,
  start: number,
  delimiter: string,
  lineEnd: string,
): { cells: string[]; end: number } | null {
  const cells: string[] = [];
  let at = start;
  for (;;) {
    let cell = '';
    if (text[at] === '"') {
      const quoted = scanQuotedCell(text, at + 1);
      if (quoted === null) return null;
      cell = quoted.value;
      at = quoted.end;
    }
    const ofRecord = indexOrEnd(text, lineEnd, at);
    const stop = Math.min(indexOrEnd(text, delimiter, at), ofRecord);
    const rest = text.slice(at, stop);
    cells.push(cell + (stop === ofRecord ? withoutReturn(rest) : rest));
    if (stop === ofRecord) return { cells, end: stop };
    at = stop + 1;
  }
}

function scanQuotedCell(text: string, start: number): { value: string; end: number } | null {
  let value = '';
  let from = start;
  for (;;) {
    const quote = text.indexOf('"', from);
    if (quote === -1) return null;
    value += text.slice(from, quote);
    if (text[quote + 1] !== '"') return { value, end: quote + 1 };
    value += '"';
    from = quote + 2;
  }
}

function indexOrEnd(text: string, sought: string, from: number): number {
  const index = text.indexOf(sought, from);
  return index === -1 ? text.length : index;
}

const withoutReturn = (line: string): string => (line.endsWith('\r') ? line.slice(0, -1) : line);

/** The delimiter that parts the first line most often: comma, semicolon or tab. */
export function delimiterOf(text: string): ',' | ';' | '\t' {
  const firstLine = /^[\r\n]*([^\r\n]*)/.exec(text)?.[1]?.replace(/"[^"]*"/g, '') ?? '';
  const count = (delimiter: string) => firstLine.split(delimiter).length - 1;
  const [commas, semicolons, tabs] = [count(','), count(';'), count('\t')];
  if (tabs > commas && tabs >= semicolons) return '\t';
  return semicolons > commas ? ';' : ',';
}
