/** A grid as the search for tables looks at it: rows and columns from 0, every cell judged once. */
import { insectIn, type SheetPlace } from '@duskwatch/core';
import { cellIn, columnLetters, type Grid, type SheetCell } from '../grid.ts';
import { couldBeCount, writtenCount } from '../words/written-count.ts';
import { serialDay, writtenDay } from '../words/written-day.ts';

export class GridView {
  readonly height: number;
  readonly #filled: (readonly number[] | undefined)[] = [];
  readonly #counts = new Map<string, boolean>();
  readonly grid: Grid;
  constructor(grid: Grid) {
    this.grid = grid;
    this.height = grid.rows.length;
  }

  cell(row: number, column: number): SheetCell {
    return cellIn(this.grid, row, column);
  }

  text(row: number, column: number): string {
    return this.cell(row, column).text;
  }

  /** Columns that hold something in the row. */
  filled(row: number): readonly number[] {
    const known = this.#filled[row];
    if (known !== undefined) return known;
    const filled = (this.grid.rows[row] ?? []).flatMap(({ text }, column) => (text === '' ? [] : [column]));
    this.#filled[row] = filled;
    return filled;
  }

  /** How many columns hold something in these rows, both ends included. There may be more of them than a function takes. */
  widthOf(from: number, to: number): number {
    let width = 0;
    for (let row = from; row <= to; row++) width = Math.max(width, (this.filled(row).at(-1) ?? 0) + 1);
    return width;
  }

  isDay(row: number, column: number): boolean {
    return writtenDay(this.cell(row, column)) !== null;
  }

  isDayOrSerial(row: number, column: number): boolean {
    const cell = this.cell(row, column);
    return writtenDay(cell) !== null || serialDay(cell) !== null;
  }

  /** Whether the cell could be a count: a figure, or what people write in its place. A day is none. */
  isCount(row: number, column: number): boolean {
    // Something was counted there, and is named when the sheet is read.
    if (this.grid.faults.has(`${row},${column}`)) return true;
    const cell = this.cell(row, column);
    if (cell.text === '' || cell.day !== null) return false;
    const known = this.#counts.get(cell.text);
    if (known !== undefined) return known;
    const count = couldBeCount(cell.text, this.grid.decimalComma) && writtenDay(cell) === null;
    this.#counts.set(cell.text, count);
    return count;
  }

  isFigure(row: number, column: number): boolean {
    return this.figure(row, column) !== null;
  }

  /** The figure of a cell of counts; null where it has none, or is a day. */
  figure(row: number, column: number): number | null {
    return this.isCount(row, column) ? writtenCount(this.text(row, column), this.grid.decimalComma).figure : null;
  }

  isInsect(row: number, column: number): boolean {
    const text = this.text(row, column);
    return text !== '' && insectIn(text) !== null;
  }

  /** Whether most of the column's filled cells from row to row, some of them looked at, are so. */
  mostly(column: number, from: number, to: number, is: (row: number, column: number) => boolean, share = 0.6): boolean {
    let filled = 0;
    let so = 0;
    for (let row = from; row <= to && filled < SAMPLE; row++) {
      if (this.text(row, column) === '') continue;
      filled++;
      if (is(row, column)) so++;
    }
    return filled > 0 && so >= share * filled;
  }

  isEmptyColumn(column: number, from: number, to: number): boolean {
    for (let row = from; row <= to; row++) if (this.text(row, column) !== '') return false;
    return true;
  }
}

/** Rows of a column that tell what it holds. */
const SAMPLE = 200;

export const inColumn = (column: number, fill = false): SheetPlace => ({ in: 'column', column: columnLetters(column), fill });
export const inRow = (row: number, fill = false): SheetPlace => ({ in: 'row', row: row + 1, fill });
