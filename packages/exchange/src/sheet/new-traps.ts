/** Makes the traps and fields that a sheet names and the program does not know. */
import {
  CellFault,
  canonicalCrop,
  type FieldRecord,
  fieldSchema,
  groupBy,
  type Program,
  type SheetMatch,
  type TrapDesign,
  type TrapRecord,
  trapSchema,
} from '@duskwatch/core';
import type { ProblemList } from '../files/problem-list.ts';
import { insectOf } from './read-sheet.ts';
import type { Visit } from './read-visits.ts';
import { designNamed, insectNamed } from './resolve-words.ts';
import { dayMeant, writtenDay } from './words/written-day.ts';

export interface NewTraps {
  readonly fields: readonly FieldRecord[];
  readonly traps: readonly TrapRecord[];
  readonly idOf: (visit: Visit) => string;
}

export function newTraps(match: SheetMatch, visits: readonly Visit[], existing: Program, problems: ProblemList): NewTraps {
  const known = new Set(existing.traps.map(({ trapId }) => trapId));
  const unknown = visits.filter(({ trapName }) => !known.has(trapName));
  const slugs = insectSlugs(match, unknown, problems);
  const slugOf = ({ sighting }: Visit) => slugs.get(insectOf(sighting, match) ?? '')!;
  const insectsAt = new Map<string, Set<string>>();
  for (const visit of unknown) insectsAt.set(visit.trapName, (insectsAt.get(visit.trapName) ?? new Set()).add(slugOf(visit)));
  /** Where a sheet counts several insects under one name, each has a trap of its own there. */
  const idOf = (visit: Visit) =>
    (insectsAt.get(visit.trapName)?.size ?? 0) > 1 ? `${visit.trapName} ${slugOf(visit)}` : visit.trapName;

  const byTrap = groupBy(unknown, idOf);
  const fields = new Map<string, FieldRecord>();
  const fieldIds = new Set(existing.fields.map(({ fieldId }) => fieldId));
  const traps = [...byTrap].map(([trapId, ofTrap]) => {
    const fieldId = fieldNameOf(match, trapId, ofTrap[0]!);
    if (!fieldIds.has(fieldId) && !fields.has(fieldId)) fields.set(fieldId, newField(match, fieldId, ofTrap[0]!));
    return newTrap(match, { trapId, fieldId, insect: slugOf(ofTrap[0]!) }, ofTrap, problems);
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

/** The slug of every insect that the visits name; each that is unknown is reported once, where it first stands. */
function insectSlugs(match: SheetMatch, visits: readonly Visit[], problems: ProblemList): Map<string, string> {
  const slugs = new Map<string, string>();
  for (const { sighting } of visits) {
    const name = insectOf(sighting, match) ?? '';
    if (slugs.has(name)) continue;
    const slug = insectNamed(name);
    slugs.set(name, slug instanceof CellFault ? name : slug);
    if (!(slug instanceof CellFault)) continue;
    const { row, column } = sighting.told('insect');
    problems.add({
      where: { file: problems.file, row, column },
      got: name || 'an empty cell',
      expected: slug.expected,
      fix: slug.fix,
    });
  }
  return slugs;
}

function fieldNameOf({ constants }: SheetMatch, trapId: string, { sighting }: Visit): string {
  const name = sighting.names.field || constants.field || 'each-trap';
  return name === 'each-trap' ? trapId : name;
}

function newField({ constants }: SheetMatch, fieldId: string, { sighting: { names } }: Visit): FieldRecord {
  return {
    fieldId,
    farm: names.farm || (constants.farm ?? ''),
    name: fieldId,
    crop: canonicalCrop(names.crop || (constants.crop ?? '')),
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
  const { sighting, trapName } = visits[0]!;
  const written = sighting.names.design;
  const design = designNamed(match.designs[written] ?? (written || (match.constants.design ?? '')));
  if (design instanceof CellFault) fault(problems, visits[0]!, 'design', written, design);
  return {
    trapId,
    station: sighting.names.station || trapName,
    insect,
    design: design as TrapDesign,
    latitude: null,
    longitude: null,
    hungOn: hungOn(match, visits, problems),
    takenDownOn: null,
    informs: [fieldId],
  };
}

function fault(
  problems: ProblemList,
  { sighting }: Visit,
  role: 'design' | 'hungOn',
  text: string,
  { expected, fix }: CellFault,
): void {
  const { row, column } = sighting.told(role);
  problems.add({ where: { file: problems.file, row, column }, got: text === '' ? 'an empty cell' : text, expected, fix });
}

function hungOn(match: SheetMatch, visits: readonly Visit[], problems: ProblemList): string {
  const firstDay = visits.map(({ day }) => day).sort()[0]!;
  const cell = visits[0]!.sighting.told('hungOn');
  if (cell.text !== '') {
    const written = writtenDay(cell);
    const day = written === null ? null : dayMeant(written, { order: match.dateOrder, year: match.year, shift: 0 });
    if (day !== null) return day;
    fault(problems, visits[0]!, 'hungOn', cell.text, new CellFault('the day the trap was hung', 'Write it as YYYY-MM-DD.'));
  }
  return match.hungOn === null || match.hungOn === 'first-date' ? firstDay : match.hungOn;
}
