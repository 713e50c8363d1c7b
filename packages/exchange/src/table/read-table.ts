import {
  CellFault,
  type CheckRecord,
  cellReader,
  checkTable,
  type KnownWords,
  type Locate,
  ok,
  type RecordKind,
  type RecordOf,
  type Result,
  type Table,
  tables,
  visitNumbers,
  withReason,
} from '@duskwatch/core';
import { catalogueWords } from '../catalogue-words.ts';
import { delimiterOf, scanRows } from '../csv/scan-rows.ts';
import { ProblemList } from '../files/problem-list.ts';
import { type MatchedHeader, matchHeader } from './match-header.ts';

export interface ReadTableOptions {
  /** Insects, crops and stages to accept; the catalogue's unless given. Null: any. */
  readonly words?: KnownWords | null;
  /** Problems listed before the rest are only counted; 1,000 unless given. */
  readonly maxProblems?: number;
  /** Called now and then with the characters read and the characters in all. */
  readonly onProgress?: (done: number, total: number) => void;
}

export interface TableRead<K extends RecordKind> {
  readonly records: readonly RecordOf<K>[];
  /** Row of each record as a spreadsheet numbers it: the header is row 1. */
  readonly rows: readonly number[];
}

/** Reads one table of a program folder. Refused with every problem of the table; nothing is read in part. */
export function readTable<K extends RecordKind>(
  kind: K,
  text: string,
  file: string = tables[kind].file,
  options: ReadTableOptions = {},
): Result<TableRead<K>> {
  const problems = new ProblemList(file, options.maxProblems);
  const { records, rows } = parseTable(kind, text, problems, options.onProgress);
  const locate: Locate = (_, index) => ({ file, row: rows[index]! });
  const { words = catalogueWords } = options;
  checkTable(kind, records, { locate, words, report: problems.add });
  return problems.isEmpty ? ok({ records, rows }) : { ok: false, problems: problems.all() };
}

export interface ParsedTable<K extends RecordKind> extends TableRead<K> {
  /** Ids in the first column of rows that could not be read; null when there is no such column. */
  readonly claimed: ReadonlySet<string> | null;
}

const FIRST_VISIT = { visit: 1 };
const PROGRESS_ROWS = 2_000;

/** Reads the rows that can be read, reporting what is wrong with the header, rows and cells. */
export function parseTable<K extends RecordKind>(
  kind: K,
  text: string,
  problems: ProblemList,
  onProgress: ReadTableOptions['onProgress'] = undefined,
): ParsedTable<K> {
  const table: Table = tables[kind];
  const delimiter = delimiterOf(text);
  const records: unknown[] = [];
  const rows: number[] = [];
  const claimed = new Set<string>();
  let header: MatchedHeader | null = null;
  let readRow: RowReader | null = null;

  const unclosed = scanRows(text, delimiter, (cells, row, end) => {
    if (header === null || readRow === null) {
      header = matchHeader(table, cells, problems.file, problems.add, row);
      readRow = rowReader(header, kind === 'checks' ? FIRST_VISIT : {}, delimiter, problems);
      return;
    }
    const record = readRow(cells, row);
    if (record === null) {
      const id = header.columns[0]!.index;
      if (id !== null) claimed.add(cells[id]?.trim() ?? '');
    } else if (record !== BLANK_ROW) {
      records.push(record);
      rows.push(row);
    }
    if (row % PROGRESS_ROWS === 0) onProgress?.(end, text.length);
  });
  onProgress?.(text.length, text.length);

  if (unclosed !== null) reportUnclosed(problems, unclosed);
  const found = header as MatchedHeader | null;
  if (found === null && unclosed === null) reportEmpty(problems, table);
  if (kind === 'checks') numberVisits(records as Writable<CheckRecord>[]);
  const tellsReason = found?.columns.some(({ column, index }) => column.key === 'unfitReason' && index !== null);
  const read = kind === 'checks' && !tellsReason ? (records as CheckRecord[]).map(withReason) : records;
  const knowsIds = found !== null && found.columns[0]!.index !== null && unclosed === null;
  return { records: read as readonly RecordOf<K>[], rows, claimed: knowsIds ? claimed : null };
}

type Writable<T> = { -readonly [P in keyof T]: T[P] };

function numberVisits(checks: Writable<CheckRecord>[]): void {
  const visits = visitNumbers(checks);
  for (const [index, check] of checks.entries()) check.visit = visits[index]!;
}

/** The record, null when something is wrong with the row, or `BLANK_ROW`. */
type RowReader = (cells: readonly string[], row: number) => object | null;
const BLANK_ROW = {};

function rowReader(
  { columns, width, comparable }: MatchedHeader,
  start: object,
  delimiter: string,
  problems: ProblemList,
): RowReader {
  const style = { decimalComma: delimiter !== ',' };
  const present = columns.flatMap(({ column, index }) =>
    index === null ? [] : [{ column, index, key: column.key, read: cellReader(column, style) }],
  );
  const absent = columns.filter(({ index }) => index === null).map(({ column }) => column);
  const blank: Record<string, unknown> = { ...start };
  for (const { column } of columns) blank[column.key] = null;
  for (const column of absent) blank[column.key] = column.empty;
  const complete = comparable && absent.every((column) => column.needs === 'nothing');

  return (cells, row) => {
    if (cells.length !== width && !fits(cells, width)) {
      if (isBlank(cells)) return BLANK_ROW;
      reportWidth(problems, cells, row, width, delimiter);
      return null;
    }
    const record = { ...blank };
    let sound = complete;
    for (const { column, index, key, read } of present) {
      const value = read(cells[index]!);
      if (value instanceof CellFault) {
        if (isBlank(cells)) return BLANK_ROW;
        const { expected, fix } = value;
        problems.add({ where: { file: problems.file, row, column: column.name }, got: shown(cells[index]!), expected, fix });
        sound = false;
      }
      record[key] = value;
    }
    return sound ? record : null;
  };
}

const isBlank = (cells: readonly string[]): boolean => cells.every((cell) => cell.trim() === '');

/** Spreadsheets leave empty cells to the right of the table; those say nothing. */
const fits = (cells: readonly string[], width: number): boolean => cells.length > width && isBlank(cells.slice(width));

const shown = (cell: string): string => {
  const text = cell.trim();
  if (text === '') return 'an empty cell';
  return text.length > 80 ? `${text.slice(0, 77)}…` : text;
};

function reportWidth(problems: ProblemList, cells: readonly string[], row: number, width: number, delimiter: string): void {
  const sign = { ',': 'comma', ';': 'semicolon', '\t': 'tab' }[delimiter];
  const fix =
    cells.length < width
      ? `Keep one ${sign} for each cell, also for empty ones.`
      : `Put a cell that holds a ${sign} (a note, a decimal comma) in double quotes, or remove the cells too many.`;
  const expected = `${width}, as in the header`;
  problems.add({ where: { file: problems.file, row }, got: `${cells.length} cells`, expected, fix });
}

function reportUnclosed(problems: ProblemList, row: number): void {
  problems.add({
    where: { file: problems.file, row },
    got: 'a double quote that opens a cell and never closes',
    expected: 'a closing double quote',
    fix: 'Close the quote; a quote within a quoted cell is written twice ("").',
  });
}

function reportEmpty(problems: ProblemList, table: Table): void {
  const header = table.columns.filter((column) => !column.extension).map((column) => column.name);
  problems.add({
    where: { file: problems.file },
    got: 'an empty file',
    expected: `a header row: ${header.join(', ')}`,
    fix: table.required ? 'Write the header row and the records.' : 'Write the header row and the records, or remove the file.',
  });
}
