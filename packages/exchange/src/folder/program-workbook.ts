import { type Column, cellText, type Program, type RecordKind, tables } from '@duskwatch/core';
import type { CellValue, WriteSheet } from 'hucre/xlsx';
import { writtenColumns } from '../table/write-table.ts';
import { tablesToWrite } from './data-package.ts';

/** Name of the sheet that says what each column of the others holds. */
export const DICTIONARY_SHEET = 'columns';

/**
 * A program as a workbook (Office Open XML): a sheet for each table that has rows, and one that says what their columns
 * hold. Days stand as text, as they are kept (ISO 8601): a spreadsheet shows them everywhere alike. A cell is a figure or a
 * text and never a formula, whatever was written into it.
 */
export async function programWorkbook(program: Program): Promise<Uint8Array> {
  const kinds = tablesToWrite(program);
  const { writeXlsx } = await import('hucre/xlsx');
  return writeXlsx({ sheets: [dictionary(program, kinds), ...kinds.map((kind) => sheetOf(program, kind))] });
}

function dictionary(program: Program, kinds: readonly RecordKind[]): WriteSheet {
  const rows = kinds.flatMap((kind) =>
    writtenColumns(kind, program[kind]).map(({ name, type, words, about }) => [kind, name, words?.join(', ') ?? type, about]),
  );
  return { name: DICTIONARY_SHEET, rows: [['table', 'column', 'holds', 'about'], ...rows] };
}

function sheetOf<K extends RecordKind>(program: Program, kind: K): WriteSheet {
  const records: readonly object[] = program[kind];
  const columns = writtenColumns(kind, program[kind]);
  const cells = (record: object) => columns.map((column) => cellOf(column, (record as Record<string, unknown>)[column.key]));
  return { name: tables[kind].kind, rows: [columns.map(({ name }) => name), ...records.map(cells)] };
}

function cellOf(column: Column, value: unknown): CellValue {
  if (typeof value === 'number' && !column.fahrenheit) return value;
  const text = cellText(column, value);
  return text === '' ? null : text;
}
