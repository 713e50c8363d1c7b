/** What a person may know of a program. Everything that leaves a server for a person is computed from this. */
import type { Person } from '../people/person.ts';
import { emptyProgram, type Program } from './program.ts';
import type { FieldRecord, NormalRecord, SourceRecord, TrapRecord, WeatherRecord } from './schema.ts';
import { weatherSourceFor, weatherSourcesOf } from './weather-source.ts';

/**
 * A program cut down to what a person may know.
 *
 * - Coordinator: all of it.
 * - Scout: all of it but what things cost, and where weather is fetched.
 * - Grower: the own farms' fields and what was written about them; the traps that inform these fields with their
 *   places, checks and lures, but not which other fields they inform; the weather that informs these fields; the
 *   program's rules; not how the program plans, buys and stores, nor what it was asked and answered. The advice for an
 *   own field is the same as it is from the whole program.
 * - Reader: traps under numbers, with their counts; no skip, field, farm, place, note, treatment or weather.
 * - Disabled: nothing.
 */
export function scopeProgram(program: Program, person: Pick<Person, 'role' | 'farms' | 'disabled'>): Program {
  if (person.disabled) return emptyProgram();
  switch (person.role) {
    case 'coordinator':
      return program;
    case 'scout': {
      const { prices, sources } = program;
      if (prices.length === 0 && sources.every(({ address }) => address === null)) return program;
      return { ...program, prices: [], sources: sources.map(withoutAddress) };
    }
    case 'grower':
      return programOfFarms(program, new Set(person.farms));
    case 'reader':
      return programWithoutPlaces(program);
  }
}

/** An address that days are fetched from may hold a key to it. */
const withoutAddress = (source: SourceRecord): SourceRecord => ({ ...source, address: null });

function programOfFarms(program: Program, farms: ReadonlySet<string>): Program {
  const own = program.fields.filter((field) => farms.has(field.farm));
  const fieldIds = new Set(own.map((field) => field.fieldId));
  const ofOwnField = (record: { readonly fieldId: string }) => fieldIds.has(record.fieldId);
  const traps = program.traps
    .map((trap) => ({ ...trap, informs: trap.informs.filter((field) => fieldIds.has(field)) }))
    .filter((trap) => trap.informs.length > 0);
  const { fields, sources, weather, normals } = weatherOf(program, own);
  return {
    ...emptyProgram(program.settings),
    fields,
    stages: program.stages.filter(ofOwnField),
    traps,
    ...recordsOfTraps(program, traps),
    sources,
    weather,
    normals,
    samples: program.samples.filter(ofOwnField),
    treatments: program.treatments.filter(ofOwnField),
    decisions: program.decisions.filter(ofOwnField),
    rules: program.rules,
  };
}

/** A name that no source has: it keeps a field from taking the only source left for its own. */
const NO_SOURCE = '?';

/**
 * The sources that inform the fields, and where it is open which one does, also those that nobody claims. Sources
 * can be named after farms, so that the others' are left out.
 */
function weatherOf(
  program: Program,
  own: readonly FieldRecord[],
): { fields: FieldRecord[]; sources: SourceRecord[]; weather: WeatherRecord[]; normals: NormalRecord[] } {
  const all = weatherSourcesOf(
    program.weather.map((record) => record.sourceId),
    program.sources,
  );
  const claimed = new Set(program.fields.flatMap((field) => [field.weatherSource, field.fieldId, field.farm]));
  const isOpen = (field: FieldRecord) => weatherSourceFor(field, all) === null;
  const open = own.some(isOpen) ? [...all.ids].filter((id) => !claimed.has(id)) : [];
  const kept = new Set([...own.map((field) => weatherSourceFor(field, all)), ...open].filter((id) => id !== null));
  const fillers = program.sources.flatMap(({ sourceId, fillFrom }) => (kept.has(sourceId) ? (fillFrom ?? []) : []));
  for (const filler of fillers) kept.add(filler);
  const onlyOneLeft = kept.size === 1 && all.ids.size > 1;
  return {
    fields: own.map((field) =>
      onlyOneLeft && isOpen(field) && field.weatherSource === null ? { ...field, weatherSource: NO_SOURCE } : field,
    ),
    sources: program.sources.filter(({ sourceId }) => kept.has(sourceId)).map(withoutAddress),
    weather: program.weather.filter((record) => kept.has(record.sourceId)),
    normals: program.normals.filter((record) => kept.has(record.sourceId)),
  };
}

function programWithoutPlaces(program: Program): Program {
  const numbers = new Map(program.traps.map((trap, index) => [trap.trapId, `${index + 1}`]));
  const records = recordsOfTraps(program, program.traps);
  const traps = program.traps.map(
    ({ trapId, insect, design, hungOn, takenDownOn }): TrapRecord => ({
      trapId: numbers.get(trapId)!,
      station: numbers.get(trapId)!,
      insect,
      design,
      latitude: null,
      longitude: null,
      hungOn,
      takenDownOn,
      informs: [],
    }),
  );
  return {
    ...emptyProgram(program.settings),
    traps,
    lures: records.lures.map(({ trapId, placedOn, lifeDays }) => ({ trapId: numbers.get(trapId)!, placedOn, lifeDays })),
    // Named one by one: what is added to a check one day stays behind until somebody decides otherwise.
    checks: records.checks.map(({ trapId, checkedOn, visit, targetCount, otherCount, condition, emptied }) => ({
      trapId: numbers.get(trapId)!,
      checkedOn,
      visit,
      targetCount,
      otherCount,
      condition,
      emptied,
      note: null,
    })),
  };
}

function recordsOfTraps(program: Program, traps: readonly TrapRecord[]): Pick<Program, 'checks' | 'lures' | 'skips'> {
  const trapIds = new Set(traps.map((trap) => trap.trapId));
  return {
    checks: program.checks.filter((check) => trapIds.has(check.trapId)),
    lures: program.lures.filter((lure) => trapIds.has(lure.trapId)),
    skips: program.skips.filter((skip) => trapIds.has(skip.trapId)),
  };
}
