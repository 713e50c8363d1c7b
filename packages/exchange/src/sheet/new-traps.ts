import {
  CellFault,
  type ColumnRole,
  canonicalCrop,
  type FieldRecord,
  fieldSchema,
  type Program,
  type SheetMatch,
  type TrapDesign,
  type TrapRecord,
  trapSchema,
} from '@duskwatch/core';
import type { ProblemList } from '../files/problem-list.ts';
import type { Visit } from './read-visits.ts';
import { designNamed, insectNamed } from './resolve-words.ts';
import { sheetDay } from './sheet-day.ts';

export interface NewTraps {
  readonly fields: readonly FieldRecord[];
  readonly traps: readonly TrapRecord[];
  readonly idOf: (visit: Visit) => string;
}

/** Makes the traps and fields that a sheet names and the program does not know. */
export function newTraps(match: SheetMatch, visits: readonly Visit[], existing: Program, problems: ProblemList): NewTraps {
  const known = new Set(existing.traps.map(({ trapId }) => trapId));
  const unknown = visits.filter(({ trapName }) => !known.has(trapName));
  const insectOf = insectReader(match, unknown, problems);
  const insectsAt = new Map<string, Set<string>>();
  for (const visit of unknown) insectsAt.set(visit.trapName, (insectsAt.get(visit.trapName) ?? new Set()).add(insectOf(visit)));
  /** Where a sheet counts several insects under one name, each has a trap of its own there. */
  const idOf = (visit: Visit) =>
    (insectsAt.get(visit.trapName)?.size ?? 0) > 1 ? `${visit.trapName} ${insectOf(visit)}` : visit.trapName;

  const byTrap = new Map<string, Visit[]>();
  for (const visit of unknown) byTrap.set(idOf(visit), [...(byTrap.get(idOf(visit)) ?? []), visit]);
  const fields = new Map<string, FieldRecord>();
  const fieldIds = new Set(existing.fields.map(({ fieldId }) => fieldId));
  const traps = [...byTrap].map(([trapId, ofTrap]) => {
    const fieldId = fieldNameOf(match, trapId, ofTrap[0]!);
    if (!fieldIds.has(fieldId) && !fields.has(fieldId)) fields.set(fieldId, newField(match, fieldId, ofTrap[0]!));
    return newTrap(match, { trapId, fieldId, insect: insectOf(ofTrap[0]!) }, ofTrap, problems);
  });
  if (problems.isEmpty) {
    for (const field of fields.values()) reportUnfit(fieldSchema.safeParse(field).error, field.fieldId, problems);
    for (const trap of traps) reportUnfit(trapSchema.safeParse(trap).error, trap.trapId, problems);
  }
  return { fields: [...fields.values()], traps, idOf };
}

/** What the sheet calls a trap, farm or field must do as its name in the program. */
function reportUnfit(
  error: { issues: readonly { path: PropertyKey[]; message: string }[] } | undefined,
  name: string,
  problems: ProblemList,
): void {
  for (const { path, message } of error?.issues ?? []) {
    const where = { file: problems.file, column: path.join('.') };
    problems.add({ where, got: name, expected: message, fix: 'Write it another way in the sheet or in the match.' });
  }
}

const told = (match: SheetMatch, visit: Visit, role: ColumnRole & keyof SheetMatch['constants']): string => {
  const cell = match.columns[role] === undefined ? '' : visit.told(role).text;
  return cell === '' ? (match.constants[role] ?? '') : cell;
};

function insectReader(match: SheetMatch, visits: readonly Visit[], problems: ProblemList): (visit: Visit) => string {
  const read = new Map<string, string>();
  for (const visit of visits) {
    const text = told(match, visit, 'insect');
    if (read.has(text)) continue;
    const insect = insectNamed(text);
    if (insect instanceof CellFault) fault(problems, match, visit, 'insect', text, insect);
    read.set(text, insect instanceof CellFault ? text : insect);
  }
  return (visit) => read.get(told(match, visit, 'insect'))!;
}

function fault(
  problems: ProblemList,
  match: SheetMatch,
  visit: Visit,
  role: ColumnRole,
  text: string,
  { expected, fix }: CellFault,
): void {
  const letter = match.columns[role];
  const where = letter === undefined ? { column: `constants.${role}` } : { file: problems.file, row: visit.row, column: letter };
  problems.add({ where, got: text === '' ? 'an empty cell' : text, expected, fix });
}

function fieldNameOf(match: SheetMatch, trapId: string, visit: Visit): string {
  const name = told(match, visit, 'field');
  return name === 'each-trap' || name === '' ? trapId : name;
}

function newField(match: SheetMatch, fieldId: string, visit: Visit): FieldRecord {
  return {
    fieldId,
    farm: told(match, visit, 'farm'),
    name: fieldId,
    crop: canonicalCrop(told(match, visit, 'crop')),
    growthHabit: null,
    plantedOn: null,
    harvestOn: null,
    latitude: null,
    longitude: null,
    timeZone: null,
    weatherSource: null,
  };
}

function newTrap(
  match: SheetMatch,
  { trapId, fieldId, insect }: { trapId: string; fieldId: string; insect: string },
  visits: readonly Visit[],
  problems: ProblemList,
): TrapRecord {
  const first = visits[0]!;
  const written = told(match, first, 'design');
  const design = designNamed(written);
  if (design instanceof CellFault) fault(problems, match, first, 'design', written, design);
  const station = match.columns.station === undefined ? '' : first.told('station').text;
  return {
    trapId,
    station: station === '' ? first.trapName : station,
    insect,
    design: design as TrapDesign,
    latitude: null,
    longitude: null,
    hungOn: hungOn(match, visits, problems),
    takenDownOn: null,
    informs: [fieldId],
  };
}

function hungOn(match: SheetMatch, visits: readonly Visit[], problems: ProblemList): string {
  if (cellMissing(match, visits[0]!)) {
    const expected = 'the day the trap was hung; the match gives none for empty cells';
    fault(problems, match, visits[0]!, 'hungOn', '', new CellFault(expected, 'Fill it in, or set hungOn in the match.'));
  }
  const firstDay = visits.map(({ day }) => day).sort()[0]!;
  const cell = visits[0]!.told('hungOn');
  if (match.columns.hungOn !== undefined && cell.text !== '') {
    const day = sheetDay(cell, { order: match.dateOrder, year: match.year });
    if (day !== null) return day;
    fault(
      problems,
      match,
      visits[0]!,
      'hungOn',
      cell.text,
      new CellFault('the day the trap was hung', 'Write it as YYYY-MM-DD.'),
    );
  }
  return match.hungOn === null || match.hungOn === 'first-date' ? firstDay : match.hungOn;
}

const cellMissing = (match: SheetMatch, visit: Visit): boolean =>
  match.columns.hungOn !== undefined && visit.told('hungOn').text === '' && match.hungOn === null;
