/** The counts of a sheet one by one, each with the cell it stands in and what the sheet says of it, whatever the layout. */
import { insectIn, type SheetMatch, type SheetPlace, type SheetRole, type SheetTable } from '@duskwatch/core';
import { cellIn, columnIndex, columnLetters, EMPTY_CELL, type Grid, type SheetCell } from './grid.ts';
import { dayInText, withoutLabel } from './layout/find-tables.ts';
import { serialDay, type WrittenDay, writtenDay, writtenMonth, yearIn } from './words/written-day.ts';

/** A cell with where it stands; rows from 1 and columns as letters, as a spreadsheet shows them. */
interface Told extends SheetCell {
  readonly row: number;
  readonly column: string;
}

export interface Sighting {
  readonly sheet: string | null;
  readonly row: number;
  readonly column: string;
  readonly count: SheetCell;
  readonly day: Told;
  readonly written: WrittenDay | null;
  /** The year that a heading gives to days without one. */
  readonly yearTold: number | null;
  /** Trap, station, farm and the like as the sheet names them; empty where it does not. */
  readonly names: Readonly<Record<'trap' | 'station' | 'field' | 'farm' | 'crop' | 'design', string>>;
  /** The insect as the sheet names it; empty where it does not. */
  readonly insect: string;
  readonly told: (role: SheetRole) => Told;
}

/** Cells of counts, and rows that say something of a check without one; a blank cell is left out, because it was not checked. */
function sightings(grid: Grid, table: SheetTable): Sighting[] {
  const read = reader(grid, table);
  const asideRows = new Set(table.asideRows.map(({ row }) => row));
  const headings = new Set(Object.values(table.places).flatMap((place) => (place?.in === 'headings' ? place.rows : [])));
  const found: Sighting[] = [];
  for (let row = table.from; row <= table.to; row++) {
    if (asideRows.has(row) || headings.has(row)) continue;
    for (const column of table.counts) {
      const count = cellIn(grid, row - 1, columnIndex(column));
      const told = (role: SheetRole) => read(role, row, column);
      if (count.text === '' && !(table.counts.length === 1 && told('condition').text !== '')) continue;
      found.push(sightingAt(grid, table, { row, column, count, told }));
    }
  }
  return found;
}

function sightingAt(
  grid: Grid,
  { places }: SheetTable,
  { row, column, count, told }: Pick<Sighting, 'row' | 'column' | 'count' | 'told'>,
): Sighting {
  const day = told('day');
  const month = places.month === undefined ? null : writtenMonth(told('month'));
  const nameOf = (role: keyof Sighting['names']): string => {
    const place = places[role];
    if (place === undefined) return '';
    const { text } = told(role);
    if (places.insect !== undefined && samePlace(place, places.insect)) return insectIn(text)?.rest ?? text;
    return place.in === 'cell' ? withoutLabel(text) : text;
  };
  const names = {
    trap: nameOf('trap'),
    station: nameOf('station'),
    field: nameOf('field'),
    farm: nameOf('farm'),
    crop: nameOf('crop'),
    design: nameOf('design'),
  };
  const yearTold = month?.year ?? (places.year === undefined ? null : yearIn(told('year').text)) ?? yearIn(grid.sheet ?? '');
  return {
    sheet: grid.sheet,
    row,
    column,
    count,
    day,
    written: places.month === undefined ? dayTold(day) : ofMonth(day, month?.month ?? null),
    yearTold,
    names,
    insect: insectNameIn(places.insect === undefined ? (grid.sheet ?? '') : told('insect').text, places.insect !== undefined),
    told,
  };
}

/** What names the insect: all of a cell that should, and only a known name of anything else. */
function insectNameIn(text: string, isItsPlace: boolean): string {
  return insectIn(text)?.written ?? (isItsPlace ? text : '');
}

const samePlace = (a: SheetPlace, b: SheetPlace): boolean =>
  a === b || (a.in === b.in && JSON.stringify(a) === JSON.stringify(b));

function dayTold(cell: SheetCell): WrittenDay | null {
  const written = writtenDay(cell) ?? writtenDay({ text: withoutLabel(cell.text), day: null });
  if (written !== null) return written;
  const serial = serialDay(cell);
  if (serial !== null) return { is: 'day', day: serial };
  const within = dayInText(cell.text);
  return within === null ? null : writtenDay({ text: within, day: null });
}

function ofMonth({ text }: SheetCell, month: number | null): WrittenDay | null {
  if (month === null) return null;
  const date = Number.parseInt(text, 10);
  const known = daysOfMonths.get(month * 100 + date) ?? { is: 'named', date, month, year: null };
  daysOfMonths.set(month * 100 + date, known);
  return known;
}

const daysOfMonths = new Map<number, WrittenDay>();

/** Reads what the sheet says of a count, by role; empty where it says nothing. Filled cells are looked for once. */
function reader(
  grid: Grid,
  { places, from, to, counts, asideRows }: SheetTable,
): (role: SheetRole, row: number, column: string) => Told {
  const left = new Set(asideRows.map(({ row }) => row));
  const emptyAt = (row: number, column: string): Told => ({ ...EMPTY_CELL, row, column });
  const at = (row: number, column: string): Told => ({ ...cellIn(grid, row - 1, columnIndex(column)), row, column });
  const filled = new Map<string, readonly number[]>();
  const lastFilled = (column: string, row: number): number => {
    const known = filled.get(column) ?? lastFilledRows(grid, column, { from, to, left });
    filled.set(column, known);
    return known[row - from]!;
  };
  const first = counts.length === 0 ? 0 : columnIndex(counts[0]!);
  return (role, row, column) => {
    const place = places[role];
    if (place === undefined) return emptyAt(row, column);
    if (place.in === 'cell') return at(place.row, place.column);
    if (place.in === 'sheet-name') return { text: grid.sheet ?? '', day: null, row: 1, column: 'A' };
    if (place.in === 'column') return at(place.fill ? lastFilled(place.column, row) : row, place.column);
    if (place.in === 'headings') {
      const heading = place.rows.findLast((heads) => heads < row);
      return heading === undefined ? emptyAt(row, column) : at(heading, headingColumn(grid, heading, place.column));
    }
    let index = columnIndex(column);
    if (place.fill) while (index > first && cellIn(grid, place.row - 1, index).text === '') index--;
    return at(place.row, columnLetters(index));
  };
}

/** For each row of the table, the row whose cell holds for it: its own, or the last one above that is filled. */
function lastFilledRows(
  grid: Grid,
  column: string,
  { from, to, left }: { readonly from: number; readonly to: number; readonly left: ReadonlySet<number> },
): number[] {
  const index = columnIndex(column);
  let last = from;
  return Array.from({ length: to - from + 1 }, (_, below) => {
    const row = from + below;
    if (!left.has(row) && cellIn(grid, row - 1, index).text !== '') last = row;
    return last;
  });
}

/** Where the heading's own words stand, which is not always the column of the first heading. */
function headingColumn(grid: Grid, row: number, column: string): string {
  if (cellIn(grid, row - 1, columnIndex(column)).text !== '') return column;
  const filled = grid.rows[row - 1]?.findIndex(({ text }) => text !== '') ?? -1;
  return filled === -1 ? column : columnLetters(filled);
}

/** All counts of the tables of a match, sheet by sheet. */
export function allSightings(grids: readonly Grid[], tables: SheetMatch['tables']): Sighting[] {
  return tables.flatMap((table) => {
    const grid = grids.find(({ sheet }) => sheet === table.sheet) ?? (table.sheet === null ? grids[0] : undefined);
    return grid === undefined ? [] : sightings(grid, table);
  });
}
