/** What the rows of a table are: counts, headings of a group, totals, or words beneath it. */
import type { SheetTable } from '@duskwatch/core';
import { insectIn } from '@duskwatch/core';
import { columnLetters } from '../grid.ts';
import { totalRows } from './totals.ts';
import type { GridView } from './view.ts';

export interface BodyRows {
  readonly headings: readonly number[];
  readonly asideRows: SheetTable['asideRows'];
  /** The last row with counts; before `from` where there is none. */
  readonly last: number;
}

/** Sorts the rows from `from` to `to`. A row with words alone, followed by counts, heads what is below it. */
export function sortRows(
  view: GridView,
  counts: readonly number[],
  labels: readonly number[],
  from: number,
  to: number,
): BodyRows {
  const asideRows: SheetTable['asideRows'] = [];
  const totals = totalRows(view, labels, counts, from, to);
  const headings: number[] = [];
  let waiting: number[] = [];
  let last = from - 1;
  for (let row = from; row <= to; row++) {
    const filled = view.filled(row);
    if (filled.length === 0) continue;
    if (totals.has(row)) {
      asideRows.push({ row: row + 1, why: 'total' });
    } else if (counts.some((column) => view.isCount(row, column))) {
      headings.push(...waiting.slice(-1));
      for (const passed of waiting.slice(0, -1)) asideRows.push({ row: passed + 1, why: 'words' });
      waiting = [];
      last = row;
    } else if (filled.length === 1 || new Set(filled.map((column) => view.text(row, column))).size === 1) {
      waiting.push(row);
    } else if (!counts.every((column) => view.text(row, column) === '')) {
      asideRows.push({ row: row + 1, why: 'words' });
    }
  }
  for (const row of waiting) asideRows.push({ row: row + 1, why: 'words' });
  return { headings, asideRows, last };
}

/** Headings within the table, as the place of the insect or the farm that they name. */
export function placeOfHeadings(
  view: GridView,
  headings: readonly number[],
  has: (role: 'insect' | 'farm' | 'station') => boolean,
): SheetTable['places'] {
  if (headings.length === 0) return {};
  const column = view.filled(headings[0]!)[0]!;
  const rows = headings.map((row) => row + 1);
  const insects = headings.filter((row) => insectIn(view.text(row, view.filled(row)[0]!)) !== null);
  const role = insects.length === headings.length && !has('insect') ? 'insect' : has('farm') ? 'station' : 'farm';
  return has(role) ? {} : { [role]: { in: 'headings', rows, column: columnLetters(column) } };
}
