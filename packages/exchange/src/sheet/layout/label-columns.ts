/** What the columns beside the counts hold: by their headings, else by what stands in them. */
import { insectIn, type SheetRole, type SheetTable } from '@duskwatch/core';
import { columnLetters } from '../grid.ts';
import { isCoordinate, isTimeStamp, isWeather, roleOf } from '../header-words.ts';
import { designWritten } from '../resolve-words.ts';
import { type GridView, inColumn } from './view.ts';

export interface LabelColumns {
  readonly places: SheetTable['places'];
  readonly aside: SheetTable['asideColumns'];
}

/** Sorts `columns` of the rows `from`–`to`, whose headings are given, into roles. The first without one names the trap. */
export function labelColumns(
  view: GridView,
  columns: readonly number[],
  headingOf: (column: number) => string,
  from: number,
  to: number,
): LabelColumns {
  const places: SheetTable['places'] = {};
  const aside: SheetTable['asideColumns'] = [];
  const unnamed: number[] = [];
  const put = (role: SheetRole, column: number) => {
    places[role] = inColumn(column, role !== 'note' && role !== 'condition' && hasGaps(view, column, columns, from, to));
  };
  for (const column of columns) {
    const heading = headingOf(column);
    if (view.isEmptyColumn(column, from, to)) continue;
    const role = roleOf(heading);
    if (isWeather(heading)) aside.push({ column: columnLetters(column), why: 'weather' });
    else if (isTimeStamp(heading)) aside.push({ column: columnLetters(column), why: 'time' });
    else if (isCoordinate(heading)) aside.push({ column: columnLetters(column), why: 'unknown' });
    else if (role === 'design' && !view.mostly(column, from, to, (row) => designWritten(view.text(row, column)) !== null)) {
      // A column headed "type" says as often which insect it is.
      if (places.insect === undefined && view.mostly(column, from, to, (row, at) => view.isInsect(row, at)))
        put('insect', column);
      else put('design', column);
    } else if (role !== null && role !== 'count' && role !== 'day' && places[role] === undefined) put(role, column);
    else unnamed.push(column);
  }
  for (const column of unnamed) {
    const is = (judge: (text: string) => boolean) => view.mostly(column, from, to, (row) => judge(view.text(row, column)));
    if (places.insect === undefined && is((text) => insectIn(text)?.rest === '')) put('insect', column);
    else if (places.design === undefined && is((text) => designWritten(text) !== null)) put('design', column);
    else if (
      places.trap === undefined &&
      places.station === undefined &&
      !(columns.length > 1 && isRowNumber(view, column, from, to))
    )
      put('trap', column);
    else aside.push({ column: columnLetters(column), why: 'unknown' });
  }
  return { places, aside };
}

/** Cells are empty beneath others in rows that hold something else: what stands above goes on, as in merged cells. */
function hasGaps(view: GridView, column: number, labels: readonly number[], from: number, to: number): boolean {
  let seen = false;
  for (let row = from; row <= to; row++) {
    if (view.text(row, column) !== '') seen = true;
    else if (seen && labels.some((other) => other !== column && view.text(row, other) !== '')) return true;
  }
  return false;
}

/** 1, 2, 3, … down the rows says no more than the row does. */
function isRowNumber(view: GridView, column: number, from: number, to: number): boolean {
  let expected: number | null = null;
  let seen = 0;
  for (let row = from; row <= to; row++) {
    const text = view.text(row, column);
    if (text === '') continue;
    if (!/^\d+$/.test(text) || (expected !== null && Number(text) !== expected)) return false;
    expected = Number(text) + 1;
    seen++;
  }
  return seen > 12;
}
