/** What a person points at on a sheet that was understood otherwise than it is meant. */
import { ok, type Problem, type Result, refuse, type SheetProposal, type SheetTable } from '@duskwatch/core';
import { cellIn, columnLetters, type Grid } from './grid.ts';
import type { ProposeOptions, SheetLookedAt } from './propose-match.ts';
import { askAll } from './questions.ts';
import { readingOf } from './read-sheet.ts';
import { allSightings, type Sighting } from './sightings.ts';

/** Rows are those of the spreadsheet, from 1, both ends included. */
export type Correction = {
  readonly sheet: string | null;
  readonly from: number;
  readonly to: number;
} & (
  | { readonly is: 'totals' | 'counts' }
  /** Their first filled cell names the farm of the rows below it. */
  | { readonly is: 'farm-block' }
);

/** The same sheet, looked at again with what was pointed at; refused where nothing could be meant by it. */
export function correct(
  looked: SheetLookedAt,
  correction: Correction,
  { existing, file }: Pick<ProposeOptions, 'existing'> & { readonly file: string },
): Result<SheetLookedAt> {
  const { proposal, grids } = looked;
  const { match } = proposal;
  if (match?.kind !== 'counts') return refuse(nothingThere(correction, 'no counts on this sheet'));
  const own = match.tables.filter(
    ({ sheet, from, to }) => sheet === correction.sheet && from <= correction.to && to >= correction.from,
  );
  const grid = grids.find(({ sheet }) => sheet === correction.sheet);
  if (own.length === 0 || grid === undefined) return refuse(nothingThere(correction, 'rows outside the counts'));
  const changed = own.flatMap((table) => correctedTables(table, correction, grid));
  if (changed.some((each) => 'expected' in each)) return refuse(...changed.filter((each): each is Problem => 'expected' in each));
  const tables = match.tables.flatMap((table) =>
    own.includes(table) ? (correctedTables(table, correction, grid) as SheetTable[]) : [table],
  );
  const seen = allSightings(grids, tables);
  if (seen.length === 0) return refuse(nothingThere(correction, 'all counts of the sheet'));
  const decimalComma = (sighting: Sighting) => grids.find(({ sheet }) => sheet === sighting.sheet)?.decimalComma ?? false;
  const asked = askAll(tables, seen, { grids, decimalComma, existing, file });
  const again: SheetProposal = {
    reading: readingOf(seen, asked.likely, decimalComma),
    asideSheets: proposal.asideSheets,
    questions: [...asked.questions],
    match: asked.match,
  };
  return ok({ proposal: again, grids, seen });
}

function correctedTables(table: SheetTable, correction: Correction, grid: Grid): readonly (SheetTable | Problem)[] {
  const from = Math.max(table.from, correction.from);
  const to = Math.min(table.to, correction.to);
  const isWithin = ({ row }: { readonly row: number }) => row >= from && row <= to;
  const others = table.asideRows.filter((each) => !isWithin(each));
  if (correction.is === 'counts') return [{ ...table, asideRows: others }];
  if (correction.is === 'totals') {
    const rows = Array.from({ length: to - from + 1 }, (_, index) => ({ row: from + index, why: 'total' as const }));
    return [{ ...table, asideRows: [...others, ...rows].sort((a, b) => a.row - b.row) }];
  }
  const farm = firstFilled(grid, correction.from);
  if (farm === null) return [nothingThere(correction, `row ${correction.from}, which is empty`)];
  const block: SheetTable = {
    ...table,
    from,
    to,
    places: { ...table.places, farm: { in: 'cell', row: correction.from, column: farm } },
    // The row that names the farm holds no counts.
    asideRows: [
      ...table.asideRows.filter(isWithin),
      ...(correction.from >= table.from ? [{ row: correction.from, why: 'unknown' as const }] : []),
    ],
  };
  const part = (start: number, end: number): SheetTable[] =>
    start > end
      ? []
      : [{ ...table, from: start, to: end, asideRows: table.asideRows.filter(({ row }) => row >= start && row <= end) }];
  return [...part(table.from, from - 1), block, ...part(to + 1, table.to)];
}

function firstFilled(grid: Grid, row: number): string | null {
  const width = grid.rows[row - 1]?.length ?? 0;
  for (let index = 0; index < width; index++) if (cellIn(grid, row - 1, index).text !== '') return columnLetters(index);
  return null;
}

const nothingThere = ({ sheet, from, to }: Correction, got: string): Problem => ({
  where: { ...(sheet !== null && { file: sheet }), row: from },
  got: `${got}, at rows ${from} to ${to}`,
  expected: 'rows of counts',
  fix: 'Point at rows within the counts of the sheet, with the row that names the farm first.',
});
