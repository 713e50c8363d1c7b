/** The beginning of each sheet as a person sees it, with what each cell was understood as. */
import type { SheetPlace, SheetProposal, SheetTable } from '@duskwatch/core';
import { columnIndex, columnLetters, type Grid } from './grid.ts';
import { writtenCount } from './words/written-count.ts';

type CellReading = 'day' | 'insect' | 'place' | 'count' | 'word' | 'told' | 'total' | 'aside' | 'weather';

export interface SheetPicture {
  readonly sheet: string | null;
  readonly columns: readonly string[];
  readonly rows: readonly {
    readonly row: number;
    readonly cells: readonly { readonly text: string; readonly as: CellReading | null }[];
  }[];
  /** Rows and columns beyond these are not drawn. */
  readonly moreRows: number;
  readonly moreColumns: number;
}

const MOST_ROWS = 40;
const MOST_COLUMNS = 26;

export function picturesOf(grids: readonly Grid[], match: SheetProposal['match']): SheetPicture[] {
  return grids.map((grid) => {
    const width = Math.max(0, ...grid.rows.slice(0, MOST_ROWS).map((cells) => cells.length));
    const columns = Array.from({ length: Math.min(width, MOST_COLUMNS) }, (_, index) => columnLetters(index));
    const readings = readingsOf(grid, match);
    return {
      sheet: grid.sheet,
      columns,
      rows: grid.rows.slice(0, MOST_ROWS).map((cells, index) => ({
        row: index + 1,
        cells: columns.map((column, at) => {
          const text = cells[at]?.text ?? '';
          return { text, as: text === '' ? null : (readings(index + 1, column, text) ?? null) };
        }),
      })),
      moreRows: Math.max(0, grid.rows.length - MOST_ROWS),
      moreColumns: Math.max(0, width - MOST_COLUMNS),
    };
  });
}

type Readings = (row: number, column: string, text: string) => CellReading | undefined;

function readingsOf(grid: Grid, match: SheetProposal['match']): Readings {
  if (match === null) return () => undefined;
  if (match.kind === 'weather') {
    const tables = match.tables.filter(({ sheet }) => sheet === grid.sheet);
    return (row, column) => {
      const table = tables.find(({ from, to }) => row >= from && row <= to);
      if (table === undefined) return undefined;
      if (column === table.day) return 'day';
      if (column === table.station) return 'place';
      return table.columns.some((each) => each.column === column) || table.long?.value === column ? 'weather' : 'aside';
    };
  }
  const tables = match.tables.filter(({ sheet }) => sheet === grid.sheet);
  return (row, column, text) =>
    tables.map((table) => readingIn(grid, table, row, column, text)).find((reading) => reading !== undefined);
}

const ROLE_READINGS = {
  day: 'day',
  month: 'day',
  year: 'day',
  insect: 'insect',
  trap: 'place',
  station: 'place',
  field: 'place',
  farm: 'place',
} as const;

function readingIn(grid: Grid, table: SheetTable, row: number, column: string, text: string): CellReading | undefined {
  const isBody = row >= table.from && row <= table.to;
  for (const [role, place] of Object.entries(table.places)) {
    if (place === undefined || !stands(place, table, row, column)) continue;
    return role in ROLE_READINGS ? ROLE_READINGS[role as keyof typeof ROLE_READINGS] : 'told';
  }
  if (!isBody) return undefined;
  const asideRow = table.asideRows.find((each) => each.row === row);
  if (asideRow !== undefined) return asideRow.why === 'total' ? 'total' : 'aside';
  if (table.counts.includes(column)) return writtenCount(text, grid.decimalComma).word === null ? 'count' : 'word';
  const asideColumn = table.asideColumns.find((each) => each.column === column);
  if (asideColumn !== undefined)
    return asideColumn.why === 'total' ? 'total' : asideColumn.why === 'weather' ? 'weather' : 'aside';
  return undefined;
}

function stands(place: SheetPlace, { from, to, counts }: SheetTable, row: number, column: string): boolean {
  if (place.in === 'column') return place.column === column && row >= from && row <= to;
  if (place.in === 'row') {
    const index = columnIndex(column);
    return place.row === row && index >= columnIndex(counts[0]!) && index <= columnIndex(counts.at(-1)!);
  }
  if (place.in === 'cell') return place.row === row && place.column === column;
  return place.in === 'headings' && place.rows.includes(row);
}
