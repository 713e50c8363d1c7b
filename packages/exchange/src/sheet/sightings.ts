/** The counts of a sheet one by one, each with the cell it stands in, whatever the layout. */
import type { SheetMatch } from '@duskwatch/core';
import { cellAt, EMPTY_CELL, type Grid, type SheetCell } from './grid.ts';

export interface Sighting {
  readonly row: number;
  /** Column of the count. */
  readonly column: string;
  readonly trap: SheetCell;
  readonly day: SheetCell;
  readonly dayAt: { readonly row: number; readonly column: string };
  readonly count: SheetCell;
  /** The cell of the row that tells something else; empty when no column does. */
  readonly told: (role: keyof SheetMatch['columns']) => SheetCell;
}

export type Shape = Pick<SheetMatch, 'layout' | 'headerRow' | 'columns' | 'countColumns' | 'leaveOut'>;

/** Cells of counts; a blank one is left out, because it was not checked. */
export function sightings(grid: Grid, shape: Shape): Sighting[] {
  const { headerRow, columns } = shape;
  const found: Sighting[] = [];
  for (let row = headerRow + 1; row <= grid.rows.length; row++) {
    const told: Sighting['told'] = (role) => (columns[role] === undefined ? EMPTY_CELL : cellAt(grid, row, columns[role]));
    for (const place of placesIn(shape, row)) {
      const at = (place: { row: number; column: string | undefined }) =>
        place.column === undefined ? EMPTY_CELL : cellAt(grid, place.row, place.column);
      const count = cellAt(grid, row, place.column);
      const trap = at(place.trap);
      if (shape.leaveOut.includes(trap.text) || shape.leaveOut.includes(at(place.day).text)) continue;
      const toldOfCheck = count.text !== '' || (shape.layout === 'check-per-row' && told('condition').text !== '');
      if (!toldOfCheck) continue;
      const dayAt = { row: place.day.row, column: place.day.column ?? 'A' };
      found.push({ row, column: place.column, trap, day: at(place.day), dayAt, count, told });
    }
  }
  return found;
}

interface Place {
  readonly column: string;
  readonly trap: { row: number; column: string | undefined };
  readonly day: { row: number; column: string | undefined };
}

function placesIn({ layout, headerRow, columns, countColumns }: Shape, row: number): Place[] {
  if (layout === 'check-per-row') {
    const { count, trap, day } = columns;
    return count === undefined ? [] : [{ column: count, trap: { row, column: trap }, day: { row, column: day } }];
  }
  return countColumns.map((column) =>
    layout === 'day-per-column'
      ? { column, trap: { row, column: columns.trap }, day: { row: headerRow, column } }
      : { column, trap: { row: headerRow, column }, day: { row, column: columns.day } },
  );
}
