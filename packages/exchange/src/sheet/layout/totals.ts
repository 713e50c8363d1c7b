/** Rows and columns that were worked out from others, whatever they are called: by their words, and by adding up. */
import { isSummary } from '../header-words.ts';
import type { GridView } from './view.ts';

/** So many lines must agree before figures alone make a total; fewer agree by chance. */
const LINES_TO_TELL = 3;
/** A sum rounded for showing. */
const ROUNDING = 0.051;

/** Those of the columns whose figures are the sum or the mean of the others', or that say so. */
export function totalColumns(
  view: GridView,
  headings: (column: number) => readonly string[],
  columns: readonly number[],
  from: number,
  to: number,
): Set<number> {
  const totals = new Set(columns.filter((column) => headings(column).some(isSummary)));
  const counted = columns.filter((column) => !totals.has(column));
  const last = counted.at(-1);
  for (const candidate of last === undefined || counted.length < 3 ? [] : [counted[0]!, last]) {
    const others = counted.filter((column) => column !== candidate);
    if (addsUp(linesOf(from, to), candidate, others, (row, column) => view.figure(row, column))) totals.add(candidate);
  }
  return totals.size === columns.length ? new Set() : totals;
}

/** Those of the rows whose figures are the sum or the mean of the rows above them since the last such row, or that say so. */
export function totalRows(
  view: GridView,
  labelColumns: readonly number[],
  columns: readonly number[],
  from: number,
  to: number,
): Set<number> {
  const totals = new Set<number>();
  let above = columns.map(() => ({ sum: 0, figures: 0, positive: 0 }));
  for (let row = from; row <= to; row++) {
    const figures = columns.map((column) => view.figure(row, column));
    if (figures.every((figure) => figure === null)) continue;
    const says = labelColumns.some((column) => isSummary(view.text(row, column)));
    if (says || isTotalOf(figures, above)) {
      // A mean often stands under a sum of the same rows.
      totals.add(row);
      continue;
    }
    if (totals.has(row - 1)) above = columns.map(() => ({ sum: 0, figures: 0, positive: 0 }));
    figures.forEach((figure, index) => {
      if (figure === null) return;
      const column = above[index]!;
      column.sum += figure;
      column.figures++;
      if (figure > 0) column.positive++;
    });
  }
  return totals;
}

interface Above {
  readonly sum: number;
  readonly figures: number;
  readonly positive: number;
}

function isTotalOf(figures: readonly (number | null)[], above: readonly Above[]): boolean {
  if (figures.length < LINES_TO_TELL) return false;
  let telling = 0;
  let sums = true;
  let means = true;
  for (const [index, figure] of figures.entries()) {
    if (figure === null) continue;
    const { sum, figures: parts, positive } = above[index]!;
    sums &&= Math.abs(figure - sum) <= ROUNDING;
    means &&= parts > 0 && Math.abs(figure - sum / parts) <= ROUNDING;
    if (!sums && !means) return false;
    if (positive >= 2) telling++;
  }
  return telling >= LINES_TO_TELL;
}

const linesOf = (from: number, to: number): number[] => Array.from({ length: to - from + 1 }, (_, index) => from + index);

/** Whether in every line that has a figure for the candidate it is the sum of the others, or in every one their mean. */
function addsUp(
  lines: readonly number[],
  candidate: number,
  others: readonly number[],
  figureOf: (line: number, of: number) => number | null,
): boolean {
  let telling = 0;
  let sums = true;
  let means = true;
  for (const line of lines) {
    const figure = figureOf(line, candidate);
    if (figure === null) continue;
    const parts = others.flatMap((other) => figureOf(line, other) ?? []);
    const sum = parts.reduce((total, part) => total + part, 0);
    sums &&= Math.abs(figure - sum) <= ROUNDING;
    means &&= parts.length > 0 && Math.abs(figure - sum / parts.length) <= ROUNDING;
    if (!sums && !means) return false;
    if (parts.filter((part) => part > 0).length >= 2) telling++;
  }
  return telling >= LINES_TO_TELL;
}
