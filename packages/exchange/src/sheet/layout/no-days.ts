/** Tables without a day of their own: one visit to every trap, dated above the table or by the name of its sheet. */
import { insectIn, type SheetTable } from '@duskwatch/core';
import { columnLetters } from '../grid.ts';
import { isSummary, isWeather, roleOf } from '../header-words.ts';
import type { FoundTable } from './days-across.ts';
import { labelColumns } from './label-columns.ts';
import { sortRows } from './rows.ts';
import { totalColumns } from './totals.ts';
import { type GridView, inRow } from './view.ts';

/** The table whose headings are in this row, or null: names beside counts, and headings that name insects or counts. */
export function tableWithoutDays(view: GridView, heading: number, limit: number): FoundTable | null {
  const headed = view.filled(heading);
  if (headed.length < 2 || headed.some((column) => view.isDay(heading, column))) return null;
  const from = heading + 1;
  const to = limit - 1;
  const isCounts = (column: number) =>
    !isWeather(view.text(heading, column)) && view.mostly(column, from, to, (row, at) => view.isCount(row, at));
  const counted = headed.filter((column) => {
    const role = roleOf(view.text(heading, column));
    return (
      isCounts(column) &&
      (role === null || role === 'count' || (role === 'insect' && insectIn(view.text(heading, column)) !== null))
    );
  });
  const known = counted.filter(
    (column) => insectIn(view.text(heading, column)) !== null || roleOf(view.text(heading, column)) === 'count',
  );
  const labelled = headed.filter((column) => !counted.includes(column));
  const insectsDown = labelled.some((column) => view.mostly(column, from, to, (row, at) => view.isInsect(row, at)));
  if (labelled.length === 0 || counted.length === 0 || (known.length === 0 && !insectsDown)) return null;
  const kept = insectsDown ? counted : known;
  const totals =
    kept.length === 1 ? new Set<number>() : totalColumns(view, (column) => [view.text(heading, column)], kept, from, to);
  const counts = kept.filter((column) => !totals.has(column));
  const sorted = sortRows(view, counts, labelled, from, to);
  if (sorted.last < from) return null;
  const labels = labelColumns(view, labelled, (column) => view.text(heading, column), from, sorted.last);
  const places: SheetTable['places'] = { ...labels.places };
  if (counts.every((column) => insectIn(view.text(heading, column)) !== null)) places.insect ??= inRow(heading);
  else if (insectsDown && roleOf(view.text(heading, counts[0]!)) !== 'count') places.trap ??= inRow(heading);
  const summed = counted.filter((column) => !counts.includes(column));
  return {
    top: heading,
    end: limit,
    table: {
      from: from + 1,
      to: sorted.last + 1,
      counts: counts.map(columnLetters),
      places,
      asideColumns: [
        ...summed.map((column) => ({
          column: columnLetters(column),
          why: totals.has(column) || isSummary(view.text(heading, column)) ? ('total' as const) : ('unknown' as const),
        })),
        ...labels.aside,
      ],
      asideRows: sorted.asideRows.filter(({ row }) => row <= sorted.last + 1),
    },
  };
}
