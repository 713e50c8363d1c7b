/** A sheet as rows of cells, whatever file it came from. */
import type { IsoDay, Result } from '@duskwatch/core';

export interface SheetCell {
  /** As written; empty for an empty cell. */
  readonly text: string;
  /** The day, where the cell is a real date of a workbook. */
  readonly day: IsoDay | null;
}

export interface Grid {
  readonly file: string;
  /** Name of the sheet; null for a text file. */
  readonly sheet: string | null;
  /** From row 1 on, blank rows too. */
  readonly rows: readonly (readonly SheetCell[])[];
  /** True where `12,5` means twelve and a half. */
  readonly decimalComma: boolean;
  /** Cells without a value that can be relied on: errors, formulas without a result; `row,column` from 0. */
  readonly faults: ReadonlyMap<string, CellFaultText>;
}

export interface CellFaultText {
  readonly got: string;
  readonly fix: string;
}

export const EMPTY_CELL: SheetCell = { text: '', day: null };

/** The cell, empty when the row is shorter; rows and columns count from 0. */
export const cellIn = (grid: Grid, row: number, column: number): SheetCell => grid.rows[row]?.[column] ?? EMPTY_CELL;

/** `A` for 0, `Z` for 25, `AA` for 26. */
export function columnLetters(index: number): string {
  const last = String.fromCharCode(65 + (index % 26));
  return index < 26 ? last : columnLetters(Math.floor(index / 26) - 1) + last;
}

export function columnIndex(letters: string): number {
  return [...letters.toUpperCase()].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
}

export interface Sheets {
  /** Names of the sheets that hold something; one empty name for a text file. */
  readonly sheets: readonly string[];
  /** Those that a person does not see when she opens the workbook. */
  readonly hidden: readonly string[];
  readonly read: (sheet: string) => Result<Grid>;
}
