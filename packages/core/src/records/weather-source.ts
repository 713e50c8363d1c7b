/** Which weather informs a field. */
import { distanceKm } from '../base/distance.ts';
import type { FieldRecord, SourceRecord } from './schema.ts';

/** Weather from farther away is taken only where somebody says so; told with the program's other assumptions. */
export const WEATHER_FAR_KM = 50;

/** The sources that have days, and what is written down of sources. */
export interface WeatherSources {
  readonly ids: ReadonlySet<string>;
  readonly about: ReadonlyMap<string, SourceRecord>;
  /** Those that stand for themselves: what fills the gaps of another is no field's by itself. */
  readonly own: readonly string[];
}

export function weatherSourcesOf(withDays: Iterable<string>, sources: readonly SourceRecord[]): WeatherSources {
  const ids = new Set(withDays);
  const fillers = new Set(sources.map(({ fillFrom }) => fillFrom));
  return {
    ids,
    about: new Map(sources.map((source) => [source.sourceId, source])),
    own: [...ids].filter((id) => !fillers.has(id)),
  };
}

/** What people wrote down of a source stands against what a file says of it: only the sources of which nothing is held. */
export function newSources(given: readonly SourceRecord[], held: readonly SourceRecord[]): SourceRecord[] {
  const known = new Set(held.map(({ sourceId }) => sourceId));
  return given.filter(({ sourceId }) => !known.has(sourceId));
}

/**
 * The weather source of a field: the one it names, the one named after it or its farm, or the program's only one, unless
 * that is far away: whether its weather holds there is for a person to say, by naming it.
 */
export function weatherSourceFor(field: FieldRecord, sources: WeatherSources): string | null {
  for (const id of [field.weatherSource, field.fieldId, field.farm]) {
    if (id !== null && sources.ids.has(id)) return id;
  }
  const only = onlySource(field, sources);
  return only === null || isFar(sourceKm(field, only, sources)) ? null : only;
}

/** The program's only source where it is too far from the field to be taken unasked, and how far. */
export function farSource(
  field: FieldRecord,
  sources: WeatherSources,
): { readonly sourceId: string; readonly km: number } | null {
  if (weatherSourceFor(field, sources) !== null) return null;
  const sourceId = onlySource(field, sources);
  const km = sourceId === null ? null : sourceKm(field, sourceId, sources);
  return sourceId === null || km === null ? null : { sourceId, km };
}

function onlySource(field: FieldRecord, { own }: WeatherSources): string | null {
  return field.weatherSource === null && own.length === 1 ? own[0]! : null;
}

/** Kilometres from a field to a source; null where the place of one is not known. */
export function sourceKm(field: FieldRecord, sourceId: string, { about }: WeatherSources): number | null {
  const source = about.get(sourceId);
  return source === undefined ? null : distanceKm(field, source);
}

const isFar = (km: number | null) => km !== null && km > WEATHER_FAR_KM;
