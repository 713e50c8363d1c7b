/** The tables of a sheet: where each fact of every count stands. */
import { insectIn, type SheetPlace, type SheetTable } from '@duskwatch/core';
import { columnIndex, columnLetters, type Grid } from '../grid.ts';
import { roleOf } from '../header-words.ts';
import { writtenDay, writtenMonth, yearIn } from '../words/written-day.ts';
import { daysAcross, type FoundTable, tableOfDaysAcross } from './days-across.ts';
import { daysDown, headingRows, tableOfDaysDown } from './days-down.ts';
import { tableWithoutDays } from './no-days.ts';
import { GridView } from './view.ts';

export interface FoundTables {
  readonly tables: readonly SheetTable[];
  /** Tables of weather alone. */
  readonly hasWeather: boolean;
}

type Start = {
  readonly top: number;
  readonly isAcross: boolean;
  readonly read: (limit: number) => FoundTable | 'weather' | null;
};

/** Every table of the sheet, from its top to its bottom. */
export function findTables(grid: Grid): FoundTables {
  const view = new GridView(grid);
  const starts = startsOf(view);
  const found: FoundTable[] = [];
  let hasWeather = false;
  starts.forEach(({ read }, index) => {
    const table = read(starts[index + 1]?.top ?? view.height);
    if (table === 'weather') hasWeather = true;
    else if (table !== null) found.push(table);
  });
  if (found.length === 0 && !hasWeather) {
    for (let row = 0; row < view.height; row++) {
      const table = tableWithoutDays(view, row, endOfTitled(view, row));
      if (table === null) continue;
      found.push(table);
      row = table.end - 1;
    }
  }
  return { tables: found.flatMap((table, index) => finished(view, table, index, found)), hasWeather };
}

/** Where tables start: at each row of days that run across, and at each heading of days that run down. */
function startsOf(view: GridView): Start[] {
  const starts: Start[] = [];
  let row = 0;
  while (row < view.height) {
    const across = daysAcross(view, row);
    if (across !== null) {
      const top = across.monthRow ?? across.row;
      starts.push({ top: groupTop(view, top), isAcross: true, read: (limit) => tableOfDaysAcross(view, across, limit) });
      row = across.row + 1;
      continue;
    }
    const down = daysDown(view, row, view.height);
    // Days in the rows under days that run across are facts of the traps, unless headings begin anew.
    if (down === null || (starts.at(-1)?.isAcross && headingRows(view, row).length === 0)) {
      row++;
      continue;
    }
    const end = endOfDaysDown(view, down.column, row);
    starts.push({ top: headingRows(view, row)[0] ?? row, isAcross: false, read: (limit) => tableOfDaysDown(view, down, limit) });
    row = end;
  }
  return starts;
}

/** A row of names right above days belongs to their table. */
const groupTop = (view: GridView, top: number): number => (top > 0 && view.filled(top - 1).length > 0 ? top - 1 : top);

/** The first row after a table of days that run down that starts another: headings anew, or days across. */
function endOfDaysDown(view: GridView, column: number, from: number): number {
  for (let row = from + 1; row < view.height; row++) {
    const text = view.text(row, column);
    const headsAgain = text !== '' && !view.isDayOrSerial(row, column) && roleOf(text) === 'day' && view.filled(row).length >= 2;
    if (headsAgain) return row;
    if (text === '' && view.filled(row).length >= 2 && daysAcross(view, row) !== null) return row;
  }
  return view.height;
}

/** The first row after a table without days that begins another: a title after an empty row. */
function endOfTitled(view: GridView, heading: number): number {
  for (let row = heading + 2; row < view.height; row++)
    if (view.filled(row).length === 1 && view.filled(row - 1).length === 0) return row;
  return view.height;
}

/** With what stands above the table, and what its labels say besides. */
function finished(view: GridView, found: FoundTable, index: number, all: readonly FoundTable[]): SheetTable[] {
  const { table, top } = found;
  const places: SheetTable['places'] = { ...table.places };
  const previousEnd = index === 0 ? 0 : all[index - 1]!.table.to;
  const own = titleCells(view, previousEnd, top);
  const ofSheet = index === 0 ? [] : titleCells(view, 0, all[0]!.top);
  placeTitles(places, own, ofSheet, all.length > 1);
  if (places.insect === undefined) {
    const named = (['trap', 'station'] as const).find((role) => namesInsects(view, table, places[role]));
    if (named !== undefined) places.insect = places[named]!;
  }
  if (places.day === undefined) {
    if (view.grid.sheet === null || writtenDay({ text: view.grid.sheet, day: null }) === null) return [];
    places.day = { in: 'sheet-name' };
  }
  return [{ ...table, sheet: view.grid.sheet, places }];
}

interface TitleCell {
  readonly row: number;
  readonly column: number;
  readonly text: string;
}

const titleCells = (view: GridView, from: number, to: number): TitleCell[] =>
  Array.from({ length: Math.max(0, to - from) }, (_, index) => from + index).flatMap((row) =>
    view.filled(row).map((column) => ({ row, column, text: view.text(row, column) })),
  );

/** `Farm: Hill Farm`: what a title tells, and of what. */
const LABEL = /^\s*([\p{L} ]{3,20}?)\s*[:=]\s*(.+)$/u;

/** What a title says besides its label. */
export const withoutLabel = (text: string): string => LABEL.exec(text)?.[2]?.trim() ?? text;

/** What titles say of all counts below them; a farm only where every block of the sheet has a heading of its own. */
function placeTitles(
  places: SheetTable['places'],
  own: readonly TitleCell[],
  ofSheet: readonly TitleCell[],
  hasBlocks: boolean,
): void {
  const put = (role: keyof SheetTable['places'], { row, column }: TitleCell) => {
    places[role] ??= { in: 'cell', row: row + 1, column: columnLetters(column) };
  };
  for (const cell of [...own.toReversed(), ...ofSheet.toReversed()]) {
    const value = withoutLabel(cell.text);
    if (writtenDay({ text: value, day: null }) !== null || dayWithin(value)) put('day', cell);
    if (yearIn(cell.text) !== null) put('year', cell);
    if (insectIn(value) !== null) put('insect', cell);
    const label = LABEL.exec(cell.text);
    const role = label === null ? null : roleOf(label[1]!);
    if (role === 'farm' || role === 'station' || role === 'field' || role === 'crop' || role === 'design') put(role, cell);
  }
  const isAlone = (cell: TitleCell) => own.every(({ row, column }) => row !== cell.row || column === cell.column);
  const heading = own.findLast((cell) => isAlone(cell) && namesNoneElse(cell.text));
  if (hasBlocks && heading !== undefined && places.farm === undefined && places.station === undefined) put('farm', heading);
}

const namesNoneElse = (text: string): boolean =>
  insectIn(text) === null && !isOfTime(text) && /\p{L}{2}/u.test(text) && !LABEL.test(text);

/** A title that names a month, a year or a day names no farm. */
const isOfTime = (text: string): boolean =>
  yearIn(text) !== null ||
  writtenMonth({ text, day: null }) !== null ||
  dayWithin(text) ||
  writtenDay({ text, day: null }) !== null;

const dayWithin = (text: string): boolean => dayInText(text) !== null;

/** A day among other words of a title: `Moth counts, week ending 7/12/2025`. */
export function dayInText(text: string): string | null {
  const found = text.match(
    /\d{4}-\d{1,2}-\d{1,2}|\d{1,2}[/.]\d{1,2}[/.]\d{2,4}|\p{L}{3,10}\.? \d{1,2}(?:st|nd|rd|th)?,? \d{4}|\d{1,2}(?: de)? \p{L}{3,10}\.?(?: de)? \d{4}/gu,
  );
  const days = (found ?? []).filter((part) => writtenDay({ text: part, day: null }) !== null);
  return days.length === 1 ? days[0]! : null;
}

/** Whether nearly all labels in a place name an insect besides the trap. */
function namesInsects(view: GridView, table: FoundTable['table'], place: SheetPlace | undefined): boolean {
  if (place === undefined) return false;
  const labels = new Set<string>();
  if (place.in === 'column')
    for (let row = table.from - 1; row < table.to; row++) labels.add(view.text(row, columnIndex(place.column)));
  if (place.in === 'row') for (const column of table.counts) labels.add(view.text(place.row - 1, columnIndex(column)));
  labels.delete('');
  const named = [...labels].filter((label) => insectIn(label) !== null);
  return labels.size > 0 && named.length >= 0.9 * labels.size;
}
