/**
 * Looks at a sheet, of whatever layout, and says how it would be read and what a person still has to say. Nothing is
 * guessed that the sheet does not tell: what is likely is a suggestion.
 */
import { ok, type Program, type Result, refuse, type SheetProposal } from '@duskwatch/core';
import { findWeather, proposeWeather } from '../weather/propose-weather.ts';
import type { Grid } from './grid.ts';
import { isSummary } from './header-words.ts';
import { findTables } from './layout/find-tables.ts';
import { openGrids } from './open-sheets.ts';
import { askAll } from './questions.ts';
import { readingOf } from './read-sheet.ts';
import { allSightings, type Sighting } from './sightings.ts';

export interface ProposeOptions {
  /** Sheet of a workbook to look at; without it all that hold counts. */
  readonly sheet?: string | null;
  /** Traps already known need no insect, design or field. */
  readonly existing?: Program;
}

/** A proposal with the counts that it rests on, for whoever shows them. */
export interface SheetLookedAt {
  readonly proposal: SheetProposal;
  readonly grids: readonly Grid[];
  readonly seen: readonly Sighting[];
}

/** Proposes how to read a file of any kind of sheet; refused with what was found where no counts and no weather are. */
export async function proposeMatch(
  bytes: Uint8Array,
  file: string,
  options: ProposeOptions = {},
): Promise<Result<SheetLookedAt>> {
  const opened = await openGrids(bytes, file, options.sheet ?? null);
  if (!opened.ok) return opened;
  const { grids, hidden } = opened.value;
  const found = grids.map((grid) => ({ grid, ...findTables(grid) }));
  const counted = withoutSummaries(found.filter(({ tables }) => tables.length > 0));
  const asideSheets: SheetProposal['asideSheets'] = [
    ...hidden.map((sheet) => ({ sheet, why: 'hidden' as const })),
    ...found.flatMap(({ grid, tables, hasWeather }) =>
      grid.sheet === null || hasWeather || counted.some((each) => each.grid === grid)
        ? []
        : [
            {
              sheet: grid.sheet,
              why: tables.length > 0 || isSummarySheet(grid.sheet) ? ('summary' as const) : ('nothing' as const),
            },
          ],
    ),
  ];
  const tables = counted.flatMap((each) => each.tables);
  // An archive's year heads no columns: its figures would pass for counts.
  if (tables.length === 0 || grids.some((grid) => findWeather(grid)?.long)) {
    const weather = proposeWeather(grids, file);
    return weather === null ? refuse(noCounts(file)) : ok({ proposal: { ...weather, asideSheets }, grids, seen: [] });
  }
  const seen = allSightings(grids, tables);
  if (seen.length === 0) return refuse(noCounts(file));
  const decimalComma = (sighting: Sighting) => grids.find(({ sheet }) => sheet === sighting.sheet)?.decimalComma ?? false;
  const { match, likely, questions } = askAll(tables, seen, { grids, decimalComma, existing: options.existing, file });
  return ok({
    proposal: { reading: readingOf(seen, likely, decimalComma), asideSheets, questions: [...questions], match },
    grids,
    seen,
  });
}

/** Sheets that sum up others are no counts of their own; where there are no others, they are all there is. */
function withoutSummaries<T extends { readonly grid: Grid }>(found: readonly T[]): readonly T[] {
  const others = found.filter(({ grid }) => !isSummarySheet(grid.sheet ?? ''));
  return others.length > 0 ? others : found;
}

const isSummarySheet = (name: string): boolean =>
  isSummary(name) || /\b(summary|resumen|chart|graph|gr[aá]fic[ao]|pivot|totals?|totales)\b/i.test(name);

const noCounts = (file: string) => ({
  where: { file },
  got: 'a sheet in which no days with counts were found',
  expected: 'days in a row or a column, with the counts of traps or insects beside or beneath them',
  fix: 'Head the columns with days (2025-07-12) or put the days in one column, with the names of the traps in the other direction.',
});
