/** Tables whose days run across: a day per column, months above days, insects or traps under each day. */
import { insectIn, type SheetRole, type SheetTable } from '@duskwatch/core';
import { columnLetters } from '../grid.ts';
import { isSummary, isWeather, roleOf } from '../header-words.ts';
import { dateAlone, serialDay, writtenMonth, yearIn } from '../words/written-day.ts';
import { labelColumns } from './label-columns.ts';
import { placeOfHeadings, sortRows } from './rows.ts';
import { totalColumns } from './totals.ts';
import { type GridView, inRow } from './view.ts';

export interface FoundTable {
  readonly table: Omit<SheetTable, 'sheet'>;
  /** Rows from 0: its first heading, and the first row after it. */
  readonly top: number;
  readonly end: number;
}

interface DayRow {
  readonly row: number;
  readonly columns: readonly number[];
  /** The row of months above, where the row holds days of the month alone. */
  readonly monthRow: number | null;
}

/** The days that run across a row, or null. */
export function daysAcross(view: GridView, row: number): DayRow | null {
  return monthsOverDays(view, row) ?? wholeDays(view, row);
}

function wholeDays(view: GridView, row: number): DayRow | null {
  const filled = view.filled(row);
  const days = filled.filter((column) => view.isDay(row, column));
  const serials = days.length > 0 ? [] : filled.filter((column) => serialDay(view.cell(row, column)) !== null);
  const columns = days.length > 0 ? days : serials.length >= 2 && ascends(view, row, serials) ? serials : [];
  if (columns.length === 0) return null;
  // In rows of checks the cells beneath a day are days too.
  const beneath = columns.map((column) => firstBeneath(view, row, column)).filter((below) => below !== null);
  if (beneath.length === 0 || beneath.filter(({ isDay }) => isDay).length * 2 > beneath.length) return null;
  if (columns.length === 1) return loneDay(view, row, columns[0]!) ? { row, columns, monthRow: null } : null;
  return { row, columns, monthRow: null };
}

/** One day heads a column of counts, with names beside them: a sheet of one visit. */
function loneDay(view: GridView, row: number, column: number): boolean {
  const beneath = firstBeneath(view, row, column);
  return beneath !== null && beneath.row <= row + 2 && view.isCount(beneath.row, column) && view.filled(beneath.row)[0]! < column;
}

const ascends = (view: GridView, row: number, columns: readonly number[]): boolean =>
  columns.every((column, index) => index === 0 || Number(view.text(row, column)) >= Number(view.text(row, columns[index - 1]!)));

/** How far below a heading its first cell may stand. */
const NEAR = 12;

function firstBeneath(view: GridView, row: number, column: number): { readonly row: number; readonly isDay: boolean } | null {
  for (let below = row + 1; below <= Math.min(row + NEAR, view.height - 1); below++) {
    if (view.text(below, column) !== '') return { row: below, isDay: view.isDayOrSerial(below, column) };
  }
  return null;
}

function monthsOverDays(view: GridView, row: number): DayRow | null {
  const months = view.filled(row).filter((column) => writtenMonth(view.cell(row, column)) !== null);
  if (months.length === 0 || row + 1 >= view.height) return null;
  const dates = view.filled(row + 1).filter((column) => column >= months[0]! && dateAlone(view.cell(row + 1, column)) !== null);
  const others = view.filled(row + 1).filter((column) => column >= months[0]! && dateAlone(view.cell(row + 1, column)) === null);
  const labelled = others.every((column) => isSummary(view.text(row + 1, column)) || roleOf(view.text(row + 1, column)) !== null);
  if (dates.length === 0 || (dates.length < 2 && months.length < 2) || !(labelled || others.length < dates.length)) return null;
  // Within a month the days run on.
  const runsOn = dates.every(
    (column, index) =>
      index === 0 ||
      months.some((month) => month > dates[index - 1]! && month <= column) ||
      dateAlone(view.cell(row + 1, column))! >= dateAlone(view.cell(row + 1, dates[index - 1]!))!,
  );
  return runsOn ? { row: row + 1, columns: dates, monthRow: row } : null;
}

/** The table under days that run across; `limit` is the first row that belongs to the next one. */
export function tableOfDaysAcross(view: GridView, days: DayRow, limit: number): FoundTable | null {
  const { row: dayRow, monthRow } = days;
  const firstDay = days.columns[0]!;
  const beneath = subHeadings(view, days);
  const topDayRow = monthRow ?? dayRow;
  const above = beneath === null ? groupsAbove(view, topDayRow, days) : null;
  const from = (beneath?.row ?? dayRow) + 1;
  const counted = beneath?.columns ?? days.columns;

  const headings = (column: number) => [dayRow, ...(beneath ? [beneath.row] : [])].map((row) => view.text(row, column));
  const to = limit - 1;
  const width = view.widthOf(dayRow, limit - 1);
  const totals = totalColumns(view, headings, counted, from, to);
  const counts = counted.filter((column) => !totals.has(column) && !view.isEmptyColumn(column, from, to));
  if (counts.length === 0) return null;
  const rest = Array.from({ length: width }, (_, column) => column).filter((column) => !counted.includes(column));
  const headed = (column: number) => headings(column).findLast((text) => text !== '') ?? '';
  const asideOfTotals = [...totals, ...rest.filter((column) => column > firstDay && isSummary(headed(column)))];
  const labelled = rest.filter((column) => column < firstDay || (roleOf(headed(column)) !== null && !isSummary(headed(column))));
  const unread = rest.filter(
    (column) =>
      column > firstDay && !labelled.includes(column) && !asideOfTotals.includes(column) && !view.isEmptyColumn(column, from, to),
  );
  const sorted = sortRows(view, counts, labelled, from, to);
  if (sorted.last < from) return null;
  const labels = labelColumns(view, labelled, headed, from, sorted.last);

  const places: SheetTable['places'] = { ...labels.places, day: inRow(dayRow, beneath !== null) };
  if (monthRow !== null) places.month = inRow(monthRow, true);
  for (const group of [beneath, above]) {
    if (group?.role && places[group.role] === undefined) places[group.role] = inRow(group.row, group === above);
  }
  Object.assign(
    places,
    placeOfHeadings(view, sorted.headings, (role) => places[role] !== undefined),
  );
  return {
    top: Math.min(topDayRow, above?.row ?? topDayRow),
    end: limit,
    table: {
      from: from + 1,
      to: sorted.last + 1,
      counts: counts.map(columnLetters),
      places,
      asideColumns: [
        ...asideOfTotals.map((column) => ({ column: columnLetters(column), why: 'total' as const })),
        ...unread.map((column) => ({
          column: columnLetters(column),
          why: isWeather(headed(column)) ? ('weather' as const) : ('unknown' as const),
        })),
        ...labels.aside,
      ],
      asideRows: sorted.asideRows.filter(({ row }) => row <= sorted.last + 1),
    },
  };
}

interface Group {
  readonly row: number;
  /** Null where the row names nothing that a count needs. */
  readonly role: SheetRole | null;
  readonly columns: readonly number[];
}

/** A second row of headings under the days: an insect, or a trap, for each column. */
function subHeadings(view: GridView, { row: dayRow, columns }: DayRow): Group | null {
  const row = dayRow + 1;
  const filled = view.filled(row).filter((column) => column >= columns[0]!);
  if (filled.length < 2 || filled.some((column) => view.isFigure(row, column) && view.text(row, column).length > 3)) return null;
  const insects = filled.filter((column) => insectIn(view.text(row, column)) !== null);
  if (insects.length * 2 >= filled.length) return { row, role: 'insect', columns: insects };
  // The same names under several days, and no counts: traps.
  const names = filled.map((column) => view.text(row, column));
  const words = names.filter((name) => !/^\d/.test(name));
  const repeats = new Set(names).size * 2 <= names.length && filled.length > columns.length;
  if (!repeats || words.length < names.length || filled.some((column) => view.isCount(row, column))) return null;
  const traps = filled.filter((column) => {
    const role = roleOf(view.text(row, column));
    return role === null || role === 'count';
  });
  // "Count" and "Notes" under each day name no trap; only the columns of counts are counts.
  const namesTraps = traps.some((column) => roleOf(view.text(row, column)) !== 'count');
  return { row, role: namesTraps ? 'trap' : null, columns: traps };
}

/** Names above the days, each over several of them: an insect, or a place. */
function groupsAbove(view: GridView, dayRow: number, { columns }: DayRow): Group | null {
  const row = dayRow - 1;
  if (row < 0) return null;
  const over = view.filled(row).filter((column) => columns.includes(column));
  if (over.length === 0 || over[0] !== columns[0]) return null;
  if (over.some((column) => writtenMonth(view.cell(row, column)) !== null || yearIn(view.text(row, column)) !== null))
    return null;
  const insects = over.filter((column) => insectIn(view.text(row, column)) !== null);
  if (insects.length === over.length) return { row, role: 'insect', columns: over };
  const seen = columns.map((column) => view.text(dayRow, column));
  const again = new Set(seen).size < seen.length;
  return again && over.length >= 2 ? { row, role: 'station', columns: over } : null;
}
