/** Which of the three shapes a sheet has, and where its headers are. */
import type { ColumnRole, Layout } from '@duskwatch/core';
import { columnLetters, type Grid, type SheetCell } from './grid.ts';
import { isSummary, roleOf } from './header-roles.ts';
import { dayForm } from './sheet-day.ts';

export interface FoundLayout {
  readonly layout: Layout;
  readonly headerRow: number;
  readonly columns: Partial<Record<ColumnRole, string>>;
  readonly countColumns: readonly string[];
}

/** Titles above a table are seldom longer. */
const ROWS_TO_SEARCH = 12;

export function findLayout(grid: Grid): FoundLayout | null {
  const top = grid.rows.slice(0, ROWS_TO_SEARCH);
  const headedByDays = top.findIndex((row) => filled(row).filter(isDay).length >= 2 && !isDay(filled(row)[0]!));
  if (headedByDays !== -1 && !hasDaysDown(grid, headedByDays)) return dayPerColumn(grid, headedByDays);
  const header = top.findIndex((row) => filled(row).length >= 2 && !filled(row).every(isDay));
  return header === -1 ? null : withDaysDown(grid, header);
}

const filled = (row: readonly SheetCell[]): readonly SheetCell[] => row.filter(({ text }) => text !== '');
const isDay = (cell: SheetCell): boolean => dayForm(cell) !== null;

function hasDaysDown(grid: Grid, header: number): boolean {
  return dayColumn(grid, header) !== null;
}

/** The leftmost column of which nearly all filled cells below the header are days. */
function dayColumn(grid: Grid, header: number): number | null {
  const below = grid.rows.slice(header + 1);
  const width = grid.rows[header]!.length;
  for (let column = 0; column < width; column++) {
    const cells = below.flatMap((row) => filled(row.slice(column, column + 1)));
    const role = roleOf(grid.rows[header]![column]!.text);
    if (cells.length > 0 && role !== 'hungOn' && cells.filter(isDay).length >= 0.8 * cells.length) return column;
  }
  return null;
}

function dayPerColumn(grid: Grid, header: number): FoundLayout {
  const cells = grid.rows[header]!;
  const countColumns = cells.flatMap((cell, index) => (isDay(cell) ? [columnLetters(index)] : []));
  const columns = rolesOf(cells);
  columns.trap ??= columns.station ?? 'A';
  return { layout: 'day-per-column', headerRow: header + 1, columns, countColumns };
}

function withDaysDown(grid: Grid, header: number): FoundLayout | null {
  const cells = grid.rows[header]!;
  const columns = rolesOf(cells);
  const day = dayColumn(grid, header);
  if (day === null) return null;
  columns.day = columnLetters(day);
  const names = columns.trap ?? columns.station;
  if (names !== undefined && columns.count !== undefined) {
    columns.trap = names;
    return { layout: 'check-per-row', headerRow: header + 1, columns, countColumns: [] };
  }
  const countColumns = cells.flatMap(({ text }, index) => {
    const known = roleOf(text) === 'note';
    return text === '' || index === day || known || isSummary(text) ? [] : [columnLetters(index)];
  });
  return { layout: 'trap-per-column', headerRow: header + 1, columns: { day: columns.day }, countColumns };
}

function rolesOf(cells: readonly SheetCell[]): Partial<Record<ColumnRole, string>> {
  const columns: Partial<Record<ColumnRole, string>> = {};
  cells.forEach(({ text }, index) => {
    const role = roleOf(text);
    if (role !== null) columns[role] ??= columnLetters(index);
  });
  return columns;
}
