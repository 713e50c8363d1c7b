/** Tables whose days run down a column: a trap or an insect per column, or a check per row. */
import { insectIn, type SheetRole, type SheetTable } from '@duskwatch/core';
import { columnLetters } from '../grid.ts';
import { isCoordinate, isSummary, isTimeStamp, isWeather, roleOf } from '../header-words.ts';
import { serialDay } from '../words/written-day.ts';
import type { FoundTable } from './days-across.ts';
import { labelColumns } from './label-columns.ts';
import { placeOfHeadings, sortRows } from './rows.ts';
import { totalColumns } from './totals.ts';
import { type GridView, inColumn, inRow } from './view.ts';

export interface DayColumn {
  readonly column: number;
  /** First row with a day, from 0. */
  readonly from: number;
}

const ENOUGH = 0.8;

/** The column whose days begin in this row, or null; where several hold days, the one headed as the day of the check. */
export function daysDown(view: GridView, row: number, limit: number): DayColumn | null {
  const candidates = view.filled(row).filter((column) => {
    if (roleOf(headingAbove(view, row, column)) === 'hungOn') return false;
    if (view.isDay(row, column))
      return (
        view.mostly(column, row, limit - 1, (at) => view.isDay(at, column) || !view.isFigure(at, column), ENOUGH) &&
        view.mostly(column, row, limit - 1, (at) => view.isDay(at, column), 0.5)
      );
    return serialDay(view.cell(row, column)) !== null && serialsDown(view, column, row, limit);
  });
  if (candidates.length === 0) return null;
  const rank = (column: number) => {
    const heading = headingAbove(view, row, column);
    return (isTimeStamp(heading) ? 2 : 0) + (roleOf(heading) === 'day' ? 0 : 1);
  };
  const column = candidates.toSorted((a, b) => rank(a) - rank(b) || a - b)[0]!;
  return { column, from: row };
}

/** Five-figure counts are no days: a heading says so, or every cell down the column reads as one. */
function serialsDown(view: GridView, column: number, row: number, limit: number): boolean {
  const all = view.mostly(column, row, limit - 1, (at) => serialDay(view.cell(at, column)) !== null, 0.95);
  return all && (roleOf(headingAbove(view, row, column)) === 'day' || row + 3 < limit);
}

/** Rows of headings above a table are seldom more. */
const MOST_HEADINGS = 3;

/** The rows directly above a row that could be headings: filled in more than one cell, none of them a table's counts. */
export function headingRows(view: GridView, from: number): readonly number[] {
  const known = headings.get(view)?.get(from);
  if (known !== undefined) return known;
  const found = rowsOfHeadings(view, from);
  headings.set(view, (headings.get(view) ?? new Map()).set(from, found));
  return found;
}

/** Asked for once a column, and the same for all of them. */
const headings = new WeakMap<GridView, Map<number, readonly number[]>>();

function rowsOfHeadings(view: GridView, from: number): readonly number[] {
  const rows: number[] = [];
  for (let row = from - 1; row >= 0 && rows.length < MOST_HEADINGS; row--) {
    const filled = view.filled(row);
    if (filled.length === 0) break;
    if (filled.length === 1 && rows.length > 0 && !overCounts(view, row, from)) break;
    if (filled.some((column) => view.isDay(row, column))) break;
    rows.unshift(row);
  }
  return rows;
}

/** A lone heading over counts, as one merged name over several columns is. */
const overCounts = (view: GridView, row: number, from: number): boolean =>
  view.filled(row).every((column) => column > view.filled(from)[0]! && view.isCount(from, column));

const headingAbove = (view: GridView, from: number, column: number): string => {
  const rows = headingRows(view, from);
  return rows.map((row) => view.text(row, column)).findLast((text) => text !== '') ?? '';
};

/** The table beside days that run down; `limit` is the first row that belongs to the next one. */
export function tableOfDaysDown(
  view: GridView,
  { column: dayColumn, from }: DayColumn,
  limit: number,
): FoundTable | 'weather' | null {
  const to = limit - 1;
  const headings = headingRows(view, from);
  const bottom = headings.at(-1) ?? null;
  const headingsOf = (column: number) => headings.map((row) => view.text(row, column)).filter((text) => text !== '');
  const headed = (column: number) => headingsOf(column).at(-1) ?? '';
  const width = view.widthOf(from - headings.length, to);
  const others = Array.from({ length: width }, (_, column) => column).filter(
    (column) => column !== dayColumn && !view.isEmptyColumn(column, from, to),
  );

  const weather = others.filter((column) => headingsOf(column).some(isWeather));
  const coordinates = others.filter((column) => headingsOf(column).some(isCoordinate));
  const rest = others.filter((column) => !weather.includes(column) && !coordinates.includes(column));
  const figures = rest.filter((column) => isCountColumn(view, column, headed(column), from, to));
  const kinds = sortCounts(
    view,
    figures,
    rest.filter((column) => !figures.includes(column)),
    headed,
    from,
    to,
  );
  if (kinds.counts.length === 0) return weather.length > 0 ? 'weather' : null;

  const totals = kinds.counts.length === 1 ? new Set<number>() : totalColumns(view, headingsOf, kinds.counts, from, to);
  const counts = kinds.counts.filter((column) => !totals.has(column));
  const sorted = sortRows(view, counts, [dayColumn, ...kinds.labels], from, to);
  const labels = labelColumns(view, kinds.labels, headed, from, sorted.last);
  const places: SheetTable['places'] = {
    ...labels.places,
    day: inColumn(dayColumn, dayHasGaps(view, dayColumn, counts, from, sorted.last)),
  };
  if (kinds.otherCount !== null) places.otherCount = inColumn(kinds.otherCount);
  const across = bottom === null || kinds.perRow ? [] : headingPlaces(view, headings, counts, places);
  for (const [role, row, fill] of across) places[role] = inRow(row, fill);
  if (
    kinds.perRow &&
    counts.length === 1 &&
    places.insect === undefined &&
    bottom !== null &&
    insectIn(view.text(bottom, counts[0]!))
  )
    places.insect = inRow(bottom);
  Object.assign(
    places,
    placeOfHeadings(view, sorted.headings, (role) => places[role] !== undefined),
  );
  const why = (reason: SheetTable['asideColumns'][number]['why']) => (column: number) => ({
    column: columnLetters(column),
    why: reason,
  });
  return {
    top: headings[0] ?? from,
    end: limit,
    table: {
      from: from + 1,
      to: sorted.last + 1,
      counts: counts.map(columnLetters),
      places,
      asideColumns: [
        ...[...totals].map(why('total')),
        ...weather.map(why('weather')),
        ...[...coordinates, ...kinds.unread].map(why('unknown')),
        ...labels.aside,
      ],
      asideRows: sorted.asideRows.filter(({ row }) => row <= sorted.last + 1),
    },
  };
}

/** Days are often written once for several rows. */
function dayHasGaps(view: GridView, dayColumn: number, counts: readonly number[], from: number, to: number): boolean {
  for (let row = from; row <= to; row++)
    if (view.text(row, dayColumn) === '' && counts.some((column) => view.isFigure(row, column))) return true;
  return false;
}

/** Mostly figures, or what people write in their place; never where its heading says that it is something else. */
function isCountColumn(view: GridView, column: number, heading: string, from: number, to: number): boolean {
  const role = roleOf(heading);
  if (role === 'count' || role === 'otherCount') return view.mostly(column, from, to, (row) => view.isCount(row, column), 0.3);
  if (role !== null && !(role === 'insect' && insectIn(heading) !== null)) return false;
  if (isTimeStamp(heading)) return false;
  return (
    view.mostly(column, from, to, (row) => view.isCount(row, column)) &&
    view.mostly(column, from, to, (row) => view.isFigure(row, column), 0.05)
  );
}

interface CountKinds {
  readonly counts: readonly number[];
  readonly labels: readonly number[];
  readonly otherCount: number | null;
  readonly unread: readonly number[];
  /** Each row is one trap's check, whatever the columns are headed. */
  readonly perRow: boolean;
}

function sortCounts(
  view: GridView,
  figures: readonly number[],
  words: readonly number[],
  headed: (column: number) => string,
  from: number,
  to: number,
): CountKinds {
  const role = (column: number) => roleOf(headed(column));
  const otherCount = figures.find((column) => role(column) === 'otherCount') ?? null;
  const open = figures.filter((column) => column !== otherCount);
  const named = open.filter((column) => role(column) === 'count');
  const insects = open.filter((column) => insectIn(headed(column)) !== null);
  const names = words.filter((column) => {
    const of = role(column);
    return of === null ? !isSummary(headed(column)) : NAMES.includes(of);
  });
  // Names of traps are often figures.
  const isPlace = (column: number) => names.includes(column);
  if (insects.length > 0 && (insects.length > 1 || named.length === 0)) {
    const unread = open.filter((column) => !insects.includes(column) && !isPlace(column) && !isSummary(headed(column)));
    const summed = open.filter((column) => isSummary(headed(column)));
    const asTraps =
      insects.length < open.length - summed.length && names.length === 0 && unread.every((column) => role(column) === null);
    return {
      counts: asTraps ? open : [...insects, ...summed],
      labels: words,
      otherCount,
      unread: asTraps ? [] : unread,
      perRow: false,
    };
  }
  if (named.length > 0 && (names.length > 0 || insects.length > 0)) {
    const count = named[0]!;
    return { counts: [count], labels: words, otherCount, unread: open.filter((column) => column !== count), perRow: true };
  }
  if (open.length === 1 && names.length > 0) return { counts: open, labels: words, otherCount, unread: [], perRow: true };
  // Without headings at all: the last column of figures is the count, what stands before it names the trap.
  if (open.every((column) => headed(column) === '') && names.length > 0) {
    const count = open.at(-1);
    return { counts: count === undefined ? [] : [count], labels: words, otherCount, unread: open.slice(0, -1), perRow: true };
  }
  const labels = words.filter((column) => view.mostly(column, from, to, (row) => view.text(row, column) !== ''));
  return {
    counts: open.filter((column) => headed(column) !== ''),
    labels,
    otherCount,
    unread: open.filter((column) => headed(column) === ''),
    perRow: false,
  };
}

const NAMES: readonly string[] = ['trap', 'station', 'field', 'farm', 'insect'];

/** Which heading row names the trap, which the insect, and which a group of columns. */
function headingPlaces(
  view: GridView,
  headings: readonly number[],
  counts: readonly number[],
  taken: SheetTable['places'],
): (readonly [role: SheetRole, row: number, fill: boolean])[] {
  const rows = headings.filter((row) => counts.some((column) => view.text(row, column) !== ''));
  const bottom = rows.at(-1);
  if (bottom === undefined) return [];
  const allInsects = (row: number) =>
    counts.every((column) => view.text(row, column) === '' || insectIn(view.text(row, column)) !== null);
  const found: (readonly [SheetRole, number, boolean])[] = [];
  const has = (role: SheetRole) => taken[role] !== undefined || found.some(([of]) => of === role);
  if (allInsects(bottom) && !has('insect')) {
    found.push(['insect', bottom, false]);
    const rests = counts.map((column) => insectIn(view.text(bottom, column))?.rest ?? '');
    if (rests.some((rest) => rest !== '') && !has('trap')) found.push(['trap', bottom, false]);
  } else if (!has('trap')) found.push(['trap', bottom, false]);
  for (const row of rows.slice(0, -1).reverse()) {
    const role: SheetRole = allInsects(row) && !has('insect') ? 'insect' : has('station') ? 'farm' : 'station';
    if (!has(role)) found.push([role, row, true]);
  }
  return found;
}
