/** Reads a sheet by a match whose questions are answered. */
import {
  type CheckRecord,
  type Context,
  checkReferences,
  checkTable,
  emptyProgram,
  type FieldRecord,
  ok,
  type Problem,
  type Program,
  type Result,
  type SheetMatch,
  type SheetQuestion,
  type TrapRecord,
  visitNumbers,
  type WeatherMatch,
} from '@duskwatch/core';
import { ProblemList } from '../files/problem-list.ts';
import { proposeWeather } from '../weather/propose-weather.ts';
import { readWeather } from '../weather/read-weather.ts';
import { sourcesOfTables } from '../weather/station-places.ts';
import { type AnyMatch, isAnswered } from './answers.ts';
import { columnLetters, type Grid } from './grid.ts';
import { newTraps } from './new-traps.ts';
import { openGrids } from './open-sheets.ts';
import type { SheetLookedAt } from './propose-match.ts';
import { askAll } from './questions.ts';
import { readVisits, type Visit } from './read-visits.ts';
import { allSightings, type Sighting } from './sightings.ts';
import { trapNamer } from './trap-names.ts';

/** What a sheet adds to a program. */
export interface SheetRecords {
  /** Fields not known before. */
  readonly fields: readonly FieldRecord[];
  /** Traps not known before. */
  readonly traps: readonly TrapRecord[];
  readonly checks: readonly CheckRecord[];
}

/** What a file of counts or of weather adds to a program, by its match. */
export async function applyAnyMatch(
  bytes: Uint8Array,
  match: AnyMatch,
  existing: Program,
  file: string,
  looked: Pick<SheetLookedAt, 'grids' | 'seen'> | null = null,
): Promise<Result<Partial<Program>>> {
  return match.kind === 'counts' ? applyMatch(bytes, match, existing, file, looked) : applyWeatherMatch(bytes, match, file);
}

async function applyWeatherMatch(bytes: Uint8Array, match: WeatherMatch, file: string): Promise<Result<Partial<Program>>> {
  const opened = await openGrids(bytes, file, onlySheet(match.tables));
  if (!opened.ok) return opened;
  const { questions } = proposeWeather(opened.value.grids, file) ?? { questions: [] };
  const open = questions.filter((question) => !isAnswered(match, question));
  if (open.length > 0) return { ok: false, problems: open.map(unanswered) };
  const read = readWeather(opened.value.grids, match, file);
  return read.ok ? ok({ weather: read.value.records, sources: sourcesOfTables(opened.value.grids, match) }) : read;
}

/**
 * Reads a sheet as the match says. Traps that `existing` knows are used as they are; others are made from what the
 * match and the sheet tell. Refused with every problem of the sheet; nothing is read in part.
 * @param looked the same sheet as it was looked at under the tables of this match, which then is not opened again
 */
export async function applyMatch(
  bytes: Uint8Array,
  match: SheetMatch,
  existing: Program = emptyProgram(),
  file = 'sheet',
  looked: Pick<SheetLookedAt, 'grids' | 'seen'> | null = null,
): Promise<Result<SheetRecords>> {
  const opened = looked === null ? await openGrids(bytes, file, onlySheet(match.tables)) : ok(looked);
  if (!opened.ok) return opened;
  const { grids } = opened.value;
  const seen = looked?.seen ?? allSightings(grids, match.tables);
  const decimalComma = (sighting: Sighting) => grids.find(({ sheet }) => sheet === sighting.sheet)?.decimalComma ?? false;
  const { questions } = askAll(match.tables, seen, { grids, decimalComma, existing, file });
  const open = questions.filter((question) => !isAnswered(match, question));
  if (open.length > 0) return { ok: false, problems: open.map(unanswered) };

  const problems = new ProblemList(file);
  reportFaultyCells(grids, match, problems);
  const nameOf = trapNamer(seen);
  const visits = readVisits(seen, match, nameOf, decimalComma, problems);
  const made = newTraps(match, visits, existing, problems);
  const checks = numbered(visits.map((visit) => checkOf(visit, made.idOf(visit))));
  if (problems.isEmpty) checkTogether({ checks, visits, made, existing }, problems);
  if (!problems.isEmpty) return { ok: false, problems: problems.all() };
  return ok({ fields: made.fields, traps: made.traps, checks });
}

/** The one sheet of the match, which may be a hidden one. */
function onlySheet(tables: readonly { readonly sheet: string | null }[]): string | null {
  const sheets = new Set(tables.map(({ sheet }) => sheet));
  return sheets.size === 1 ? [...sheets][0]! : null;
}

const unanswered = ({ id, choices }: SheetQuestion): Problem => ({
  where: { column: id },
  got: 'no answer yet',
  expected: choices.length > 0 ? `one of ${choices.join(', ')}` : 'an answer',
  fix: `Answer ${id}.`,
});

/** Errors and formulas without a result, where the tables have their counts. */
function reportFaultyCells(grids: readonly Grid[], { tables }: SheetMatch, problems: ProblemList): void {
  for (const { sheet, from, to, counts } of tables) {
    const grid = grids.find((each) => each.sheet === sheet);
    for (const [at, { got, fix }] of grid?.faults ?? []) {
      const [row, column] = at.split(',').map(Number) as [number, number];
      const letters = columnLetters(column);
      if (row + 1 < from || row + 1 > to || !counts.includes(letters)) continue;
      problems.add({ where: { file: problems.file, row: row + 1, column: letters }, got, expected: 'a value', fix });
    }
  }
}

function checkOf(visit: Visit, trapId: string): Omit<CheckRecord, 'visit'> {
  const { day, targetCount, otherCount, condition, unfitReason, note } = visit;
  return { trapId, checkedOn: day, targetCount, otherCount, condition, emptied: true, unfitReason, note };
}

function numbered(checks: readonly Omit<CheckRecord, 'visit'>[]): CheckRecord[] {
  const numbers = visitNumbers(checks);
  return checks.map((check, index) => ({ ...check, visit: numbers[index]! }));
}

interface Together {
  readonly checks: readonly CheckRecord[];
  readonly visits: readonly Visit[];
  readonly made: ReturnType<typeof newTraps>;
  readonly existing: Program;
}

function checkTogether({ checks, visits, made, existing }: Together, problems: ProblemList): void {
  const locate: Context['locate'] = (_, index) => ({ file: problems.file, row: visits[index]!.sighting.row });
  const report = (problem: Problem) => problems.add(problem);
  const context: Context = { locate, words: null, report };
  checkTable('checks', checks, context);
  const traps = [...existing.traps, ...made.traps];
  const fields = [...existing.fields, ...made.fields];
  checkReferences({ ...emptyProgram(), fields, traps, checks }, context);
}
