/** What can be wrong between tables: a trap that no table lists, a check from before its trap was hung. */
import type { Problem } from '../base/problem.ts';
import { checkTable, knownStage, problemAt } from './check-table.ts';
import { type Context, type KnownWords, type Locate, unlocated } from './locate.ts';
import { nearestFew } from './nearest.ts';
import { type Program, RECORD_KINDS, type RecordKind } from './program.ts';
import { allTables } from './tables.ts';

/**
 * Ids that are named somewhere but whose record could not be read, so that one fault is not reported as many.
 * Null: the table itself could not be read, and nothing that refers to it can be judged.
 */
export interface Claimed {
  readonly fields: ReadonlySet<string> | null;
  readonly traps: ReadonlySet<string> | null;
}

export interface ProgramChecks {
  readonly locate?: Locate;
  readonly words?: KnownWords | null;
}

/** Every problem of a whole program; an empty list means that it may be stored and advised on. */
export function checkProgram(program: Program, { locate = unlocated, words = null }: ProgramChecks = {}): Problem[] {
  const problems: Problem[] = [];
  const context: Context = { locate, words, report: (problem) => problems.push(problem) };
  for (const kind of RECORD_KINDS) checkTable(kind, program[kind], context);
  checkReferences(program, context);
  return problems;
}

export function checkReferences(program: Program, context: Context, claimed: Claimed = noneClaimed): void {
  const known = {
    fields: claimed.fields && new Set([...program.fields.map((field) => field.fieldId), ...claimed.fields]),
    traps: claimed.traps && new Set([...program.traps.map((trap) => trap.trapId), ...claimed.traps]),
  };
  const refers = (kind: RecordKind, index: number, column: string, id: string, to: 'fields' | 'traps') => {
    const ids = known[to];
    if (ids === null || ids.has(id)) return;
    const thing = to === 'fields' ? 'field_id' : 'trap_id';
    const close = nearestFew(id, ids);
    const fix = close.length > 0 ? `Did you mean ${close.join(' or ')}?` : `Add it to ${to}.csv, or correct it.`;
    problemAt(context, kind, index)(column, id, `a ${thing} that is in ${to}.csv`, fix, { kind: 'unknown-reference', to, close });
  };

  for (const { kind, foreignKeys } of allTables) {
    for (const { column, table } of foreignKeys) {
      program[kind].forEach((record, index) => {
        const id = 'trapId' in record ? record.trapId : (record as { fieldId: string }).fieldId;
        refers(kind, index, column, id, table as 'fields' | 'traps');
      });
    }
  }
  program.traps.forEach((trap, index) => {
    for (const id of trap.informs) refers('traps', index, 'informs', id, 'fields');
  });
  checkWhileHung(program, context);
  checkStages(program, context);
  checkWeatherSources(program, context);
}

const noneClaimed: Claimed = { fields: new Set(), traps: new Set() };

function checkWhileHung({ traps, checks }: Program, context: Context): void {
  const byId = new Map(traps.map((trap) => [trap.trapId, trap]));
  checks.forEach(({ trapId, checkedOn }, index) => {
    const trap = byId.get(trapId);
    if (trap === undefined || (trap.takenDownOn !== null && trap.takenDownOn < trap.hungOn)) return;
    if (checkedOn < trap.hungOn) {
      const expected = `a day on or after ${trap.hungOn}, when trap ${trapId} was hung`;
      problemAt(context, 'checks', index)('checked_on', checkedOn, expected, 'Correct the day here, or hung_on in traps.csv.', {
        kind: 'before-hung',
        trapId,
        hungOn: trap.hungOn,
      });
    } else if (trap.takenDownOn !== null && checkedOn > trap.takenDownOn) {
      const expected = `a day up to ${trap.takenDownOn}, when trap ${trapId} was taken down`;
      problemAt(context, 'checks', index)(
        'checked_on',
        checkedOn,
        expected,
        'Correct the day here, or taken_down_on in traps.csv.',
        { kind: 'after-taken-down', trapId, takenDownOn: trap.takenDownOn },
      );
    }
  });
}

function checkStages({ fields, stages }: Program, context: Context): void {
  const cropOf = new Map(fields.map((field) => [field.fieldId, field.crop]));
  stages.forEach(({ fieldId, stage }, index) => {
    const crop = cropOf.get(fieldId);
    if (crop !== undefined)
      knownStage({ words: context.words, problem: problemAt(context, 'stages', index) }, 'stage', crop, stage);
  });
}

/** A field may name its source only among those that weather.csv holds; with no weather at all it stays unknown. */
function checkWeatherSources({ fields, weather }: Program, context: Context): void {
  if (weather.length === 0) return;
  const sources = new Set(weather.map((day) => day.sourceId));
  fields.forEach(({ weatherSource }, index) => {
    if (weatherSource === null || sources.has(weatherSource)) return;
    const close = nearestFew(weatherSource, sources);
    const known = close.length > 0 ? close : [...sources].slice(0, 5);
    const fix = `Use ${known.join(' or ')}, or add its days to weather.csv.`;
    problemAt(context, 'fields', index)('weather_source', weatherSource, 'a source_id that is in weather.csv', fix, {
      kind: 'unknown-weather-source',
      known,
    });
  });
}
