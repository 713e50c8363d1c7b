/** One cell of a table: text to value with what is wrong said, and value back to the same text. */
import { parseDay } from '../base/day.ts';
import type { Fault, Hint } from '../base/fault.ts';
import { celsius } from '../base/temperature.ts';
import type { Column } from './columns.ts';
import { nearest } from './nearest.ts';
import { explainDay } from './written-day.ts';

/** Why a cell cannot be read; the reader adds where it stands. */
export class CellFault {
  readonly expected: string;
  readonly fix: string;
  /** Null where only files are read, and files are spoken of in English. */
  readonly fault: Fault | null;
  constructor(expected: string, fix: string, fault: Fault | null = null) {
    this.expected = expected;
    this.fix = fix;
    this.fault = fault;
  }
}

export interface CellStyle {
  /** True where `12,5` means twelve and a half: files with semicolons or tabs between cells. */
  readonly decimalComma: boolean;
}

const NUMBER = /^[+-]?(\d+(\.\d*)?|\.\d+)(e[+-]?\d+)?$/i;
const YES = new Set(['yes', 'y', 'true']);
const NO = new Set(['no', 'n', 'false']);

/** Reads trimmed or untrimmed text; an empty cell gives `column.empty`, or a fault where the column needs one. */
export function cellReader(column: Column, style: CellStyle): (cell: string) => unknown {
  const read = readers[column.type](column, style);
  const empty =
    column.needs === 'cell'
      ? new CellFault(
          `${wanted(column)}; this column may not be empty`,
          `Fill in ${column.name}, or remove the row.`,
          unreadable(column, { kind: 'fill-in' }),
        )
      : column.empty;
  const fresh = Array.isArray(empty);
  return (cell) => (isEmpty(cell) ? (fresh ? [] : empty) : read(cell));
}

/** Trims only where the first character may be space: most cells begin with a letter or a figure. */
function isEmpty(cell: string): boolean {
  if (cell === '') return true;
  const first = cell.charCodeAt(0);
  return (first <= 32 || first > 126) && cell.trim() === '';
}

/** Values of a column repeat down a table, so each spelling is examined once. */
function remember<T>(read: (cell: string) => T): (cell: string) => T {
  const seen = new Map<string, T>();
  return (cell) => {
    let value = seen.get(cell);
    if (value === undefined) {
      value = read(cell);
      seen.set(cell, value);
    }
    return value;
  };
}

const readers: Record<Column['type'], (column: Column, style: CellStyle) => (cell: string) => unknown> = {
  text: readText,
  day: readDay,
  whole: (column, style) => readNumber(column, style, true),
  number: (column, style) => readNumber(column, style, false),
  word: readWord,
  'yes-no': readYesNo,
  list: readList,
};

function readText(column: Column) {
  const longest = column.maxLength ?? Number.POSITIVE_INFINITY;
  const read = (cell: string) => {
    const text = column.isId ? cell.trim() : cell;
    if (text.length > longest)
      return new CellFault(`at most ${longest} characters`, `Shorten it: it has ${text.length}.`, {
        kind: 'too-long',
        longest,
        length: text.length,
      });
    if (column.isId && /[;|]/.test(text))
      return new CellFault('no ; or | here', 'Write it with another sign, such as a dash.', { kind: 'sign-in-id' });
    return text;
  };
  return column.isId ? remember(read) : read;
}

function readDay(column: Column) {
  return remember((cell: string) => {
    const text = cell.trim();
    return parseDay(text) === null ? faultyDay(column, text) : text;
  });
}

function faultyDay(column: Column, text: string): CellFault {
  const { expected, fix, meant } = explainDay(text);
  const fault: Fault = meant === null ? { kind: 'no-such-day' } : unreadable(column, { kind: 'write', texts: meant });
  return new CellFault(expected, fix, fault);
}

function readNumber(column: Column, style: CellStyle, whole: boolean) {
  const [low, high] = [column.minimum ?? Number.NEGATIVE_INFINITY, column.maximum ?? Number.POSITIVE_INFINITY];
  return remember((cell: string) => {
    const text = style.decimalComma ? cell.trim().replace(/^([^.,]*),([^.,]*)$/, '$1.$2') : cell.trim();
    const value = Number(text);
    if (!NUMBER.test(text) || !Number.isFinite(value)) return notANumber(column, text);
    if (whole && !Number.isInteger(value))
      return new CellFault(wanted(column), 'Write a whole number: correct the figure.', unreadable(column, { kind: 'whole' }));
    if (value < low || value > high) return outOfRange(column, value);
    return column.fahrenheit ? celsius(value, 'F') : value;
  });
}

function notANumber(column: Column, text: string): CellFault {
  const decimalComma = /^[+-]?\d+,\d+$/.test(text);
  if (decimalComma) {
    const point = text.replace(',', '.');
    const meant = unreadable(column, { kind: 'write', texts: [point] });
    return new CellFault(wanted(column), `Write ${point} if the comma is a decimal comma.`, meant);
  }
  const optional = column.needs === 'cell' ? '' : ' Leave the cell empty when it is not known.';
  return new CellFault(wanted(column), `Write figures only.${optional}`, unreadable(column, { kind: 'figures-only' }));
}

function outOfRange(column: Column, value: number): CellFault {
  if (column.name.endsWith('_c') && column.maximum !== null && value > column.maximum) {
    const inFahrenheit = column.name.replace(/_c$/, '_f');
    const fix = `${value} looks like °F: if the column is in °F, name it ${inFahrenheit} (and its partner too); otherwise correct it.`;
    return new CellFault(wanted(column), fix, unreadable(column, { kind: 'fahrenheit' }));
  }
  const fix = value < 0 && column.minimum === 0 ? 'A negative figure cannot be: correct it.' : 'Correct the figure.';
  return new CellFault(wanted(column), fix, unreadable(column, { kind: 'correct' }));
}

function readWord(column: Column) {
  const words = column.words ?? [];
  const known = new Map(words.map((word) => [word, word]));
  return (cell: string) => {
    const exact = known.get(cell);
    if (exact !== undefined) return exact;
    const plain = cell
      .trim()
      .toLowerCase()
      .replace(/[\s_]+/g, '-');
    return (
      known.get(plain) ?? new CellFault(wanted(column), useNearest(cell, words), unreadable(column, nearestHint(cell, words)))
    );
  };
}

function readYesNo(column: Column) {
  return remember((cell: string) => {
    const plain = cell.trim().toLowerCase();
    if (YES.has(plain)) return true;
    if (NO.has(plain)) return false;
    return new CellFault(wanted(column), `Write yes or no in ${column.name}.`, unreadable(column, { kind: 'correct' }));
  });
}

function readList() {
  return (cell: string) =>
    cell
      .split(';')
      .map((item) => item.trim())
      .filter((item) => item !== '');
}

const nearestHint = (written: string, words: Iterable<string>): Hint => {
  const close = nearest(written, words);
  return close === null ? { kind: 'one-of' } : { kind: 'write', texts: [close] };
};

export const useNearest = (written: string, words: Iterable<string>): string => {
  const close = nearest(written, words);
  return close === null ? 'Use one of these words.' : `Did you mean ${close}?`;
};

/** What is wrong with a cell that does not hold what its column should. */
export const unreadable = ({ type, minimum, maximum }: Column, hint: Hint): Fault => ({
  kind: 'unreadable',
  wanted: { type, minimum, maximum },
  hint,
});

/** What a cell of the column may hold, in words. */
export function wanted(column: Column): string {
  const range = rangeWords(column);
  switch (column.type) {
    case 'day':
      return 'a calendar day as YYYY-MM-DD';
    case 'whole':
      return `a whole number${range}`;
    case 'number':
      return `a number${range}`;
    case 'word':
      return `one of ${(column.words ?? []).join(', ')}`;
    case 'yes-no':
      return 'yes or no';
    case 'list':
      return 'identifiers with ; between';
    case 'text':
      return 'text';
  }
}

function rangeWords({ minimum, maximum }: Column): string {
  if (minimum === null && maximum === null) return '';
  if (maximum === null) return ` of ${minimum} or more`;
  return minimum === null ? ` up to ${maximum}` : ` from ${minimum} to ${maximum}`;
}

/** Text that `cellReader` reads back as the same value (numbers: the shortest such text). */
export function cellText(column: Column, value: unknown): string {
  if (value === null || value === undefined) return '';
  if (column.type === 'yes-no') return value ? 'yes' : 'no';
  if (Array.isArray(value)) return value.join(';');
  return String(value);
}
