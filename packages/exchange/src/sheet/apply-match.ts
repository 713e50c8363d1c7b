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
  sheetMatchSchema,
  type TrapRecord,
  visitNumbers,
} from '@duskwatch/core';
import { ProblemList } from '../files/problem-list.ts';
import { newTraps } from './new-traps.ts';
import { openAnswers } from './open-answers.ts';
import { loadGrid } from './open-sheets.ts';
import { readVisits, type Visit } from './read-visits.ts';
import { sightings } from './sightings.ts';

/** What a sheet adds to a program. */
export interface SheetRecords {
  /** Fields not known before. */
  readonly fields: readonly FieldRecord[];
  /** Traps not known before. */
  readonly traps: readonly TrapRecord[];
  readonly checks: readonly CheckRecord[];
}

/**
 * Reads a sheet as the match says. Traps that `existing` knows are used as they are; others are made from what the
 * match and the sheet tell. Refused with every problem of the sheet; nothing is read in part.
 */
export async function applyMatch(
  bytes: Uint8Array,
  match: SheetMatch,
  existing: Program = emptyProgram(),
  file = 'sheet',
): Promise<Result<SheetRecords>> {
  const parsed = sheetMatchSchema.safeParse(match);
  if (!parsed.success) return { ok: false, problems: faultyMatch(parsed.error.issues) };
  const grid = await loadGrid(bytes, file, match.sheet);
  if (!grid.ok) return grid;
  const seen = sightings(grid.value, match);
  const unsettled = openAnswers(match, seen, existing);
  if (unsettled.length > 0) return { ok: false, problems: unsettled };

  const problems = new ProblemList(file);
  const visits = readVisits(grid.value, match, seen, problems);
  const made = newTraps(match, visits, existing, problems);
  const checks = numbered(visits.map((visit) => checkOf(visit, made.idOf(visit))));
  if (problems.isEmpty) checkTogether({ checks, visits, made, existing }, problems);
  if (!problems.isEmpty) return { ok: false, problems: problems.all() };
  return ok({ fields: made.fields, traps: made.traps, checks });
}

const faultyMatch = (issues: readonly { path: PropertyKey[]; message: string }[]): Problem[] =>
  issues.map(({ path, message }) => ({
    where: { column: path.join('.') },
    got: 'a match that does not read',
    expected: message,
    fix: 'Correct this part of the match, or let it be proposed again.',
  }));

function checkOf({ day, row: _, trapName: __, told: ___, ...seen }: Visit, trapId: string): Omit<CheckRecord, 'visit'> {
  return { trapId, checkedOn: day, emptied: true, ...seen };
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
  const locate: Context['locate'] = (_, index) => ({ file: problems.file, row: visits[index]!.row });
  const report = (problem: Problem) => problems.add(problem);
  const context: Context = { locate, words: null, report };
  checkTable('checks', checks, context);
  const traps = [...existing.traps, ...made.traps];
  const fields = [...existing.fields, ...made.fields];
  checkReferences({ ...emptyProgram(), fields, traps, checks }, context);
}
