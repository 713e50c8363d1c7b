/**
 * A program as it was known on one day, indexed for questions about fields.
 *
 * Everything after that day is left out, so that a past day can be looked at as it was known then. Histories and
 * heat are computed when first asked for and kept: one new check leaves those of every other trap as they are.
 */

import { type Day, day, dayOf, formatDay, yearOf } from '../base/day.ts';
import { groupBy, groupByEach } from '../base/group-by.ts';
import { ASSUMPTIONS, canonicalCrop, catalogue } from '../catalogue/index.ts';
import { catchIntervals } from '../catch/index.ts';
import type { CatchInterval, TrapHistory } from '../catch/types.ts';
import { type HeatTrack, heatTrack } from '../heat/index.ts';
import type { HeatRule } from '../heat/types.ts';
import type { Program } from '../records/program.ts';
import type {
  CheckRecord,
  DecisionRecord,
  FieldRecord,
  LureRecord,
  SampleRecord,
  StageRecord,
  TrapRecord,
  TreatmentRecord,
} from '../records/schema.ts';
import { type WeatherSources, weatherSourceFor, weatherSourcesOf } from '../records/weather-source.ts';
import { forecastWeather, type MonthlyNormals, measuredWeather, normalsFromRecords, truncateSeries } from '../weather/index.ts';
import type { DailyExtremes } from '../weather/types.ts';
import type { SharedOutlook } from './shared.ts';
import type { Advice } from './types.ts';

export interface Prepared {
  /** The program as written, but with each crop under the catalogue's name. */
  readonly program: Program;
  readonly on: Day;
  /** Insects anybody in the program traps, samples or treats, in the catalogue's order. */
  readonly insects: readonly string[];
  readonly fields: ReadonlyMap<string, FieldRecord>;
  readonly traps: ReadonlyMap<string, TrapRecord>;
  /** Traps by the cell they inform. */
  readonly trapsByCell: ReadonlyMap<string, readonly TrapRecord[]>;
  readonly checksByTrap: ReadonlyMap<string, readonly CheckRecord[]>;
  readonly luresByTrap: ReadonlyMap<string, readonly LureRecord[]>;
  readonly stagesByField: ReadonlyMap<string, readonly StageRecord[]>;
  readonly samplesByCell: ReadonlyMap<string, readonly SampleRecord[]>;
  readonly treatmentsByCell: ReadonlyMap<string, readonly TreatmentRecord[]>;
  readonly decisionsByCell: ReadonlyMap<string, readonly DecisionRecord[]>;
  /** As measured, by source. */
  readonly weather: ReadonlyMap<string, DailyExtremes>;
  /** Of the months, by source: those that have all twelve. */
  readonly normals: ReadonlyMap<string, MonthlyNormals>;
  /** Somebody's own forecasts, by the source they are for. */
  readonly forecasts: ReadonlyMap<string, DailyExtremes>;
  readonly histories: Map<string, TrapHistory>;
  readonly heat: Map<string, HeatTrack>;
  /** What the moths of sets of traps have left in a field; see `larvaeFinding`. */
  readonly outlooks: Map<string, SharedOutlook>;
  /** The same program as it was known on earlier days, by the day; see `asOf`. */
  readonly past: Map<Day, Prepared>;
  /** On an earlier day, what it was read from; else null. */
  readonly present: Prepared | null;
  /** Answers that many cells share, by the checks they rest on and by a key of their own. */
  readonly shared: Map<RestsOn, Map<string, unknown>>;
  /** What was advised, by cell. */
  readonly advice: Map<string, Advice>;
}

/**
 * The checks that an answer rests on: it is worked out anew when one of them is written. `visits`: those of the traps of
 * one insect and design up to the day read. `scatter`: those, and how they scatter, which an earlier day takes from the present.
 */
export type RestsOn = 'all checks' | 'no check' | `visits ${string}` | `scatter ${string}`;

type Kind = Pick<TrapRecord, 'insect' | 'design'>;
export const visitsOf = ({ insect, design }: Kind): RestsOn => `visits ${insect} ${design}`;
export const scatterOf = ({ insect, design }: Kind): RestsOn => `scatter ${insect} ${design}`;

/** The answer to `key`, worked out once for a prepared program. */
export function once<T>(prepared: Prepared, restsOn: RestsOn, key: string, answer: () => T): T {
  let known = prepared.shared.get(restsOn);
  if (!known) {
    known = new Map();
    prepared.shared.set(restsOn, known);
  }
  if (!known.has(key)) known.set(key, answer());
  return known.get(key) as T;
}

export const cellKey = (field: string, insect: string): string => `${field}\n${insect}`;

/** Indexes a program as known at the end of `on`. Records are taken to be valid: `checkProgram` finds those that are not. */
export function prepare(written: Program, options: { readonly on: Day }): Prepared {
  const { on } = options;
  const program = {
    ...written,
    fields: written.fields.map((field) => ({ ...field, crop: canonicalCrop(field.crop) })),
    rules: written.rules.map((rule) => ({ ...rule, crop: canonicalCrop(rule.crop) })),
  };
  const today = formatDay(on);
  const traps = program.traps.filter((trap) => trap.hungOn <= today);
  const samples = program.samples.filter((sample) => sample.sampledOn <= today);
  const treatments = program.treatments.filter((treatment) => treatment.appliedOn <= today);
  const weather = new Map<string, DailyExtremes>();
  for (const [id, series] of measuredWeather(program)) weather.set(id, truncateSeries(series, on));

  return {
    program,
    on,
    insects: insectsOf(program),
    fields: new Map(program.fields.map((field) => [field.fieldId, field])),
    traps: new Map(traps.map((trap) => [trap.trapId, trap])),
    trapsByCell: groupByEach(traps, (trap) => trap.informs.map((field) => cellKey(field, trap.insect))),
    checksByTrap: groupBy(program.checks, (check) => check.trapId),
    luresByTrap: groupBy(program.lures, (lure) => lure.trapId),
    stagesByField: sortedGroup(
      program.stages.filter((stage) => stage.observedOn <= today),
      (stage) => stage.fieldId,
      (stage) => stage.observedOn,
    ),
    samplesByCell: sortedGroup(
      samples,
      (sample) => cellKey(sample.fieldId, sample.insect),
      (sample) => sample.sampledOn,
    ),
    treatmentsByCell: sortedGroup(
      treatments,
      (t) => cellKey(t.fieldId, t.insect),
      (t) => t.appliedOn,
    ),
    decisionsByCell: sortedGroup(
      program.decisions.filter(({ decidedOn }) => decidedOn <= today),
      ({ fieldId, insect }) => cellKey(fieldId, insect),
      ({ decidedOn }) => decidedOn,
    ),
    weather,
    normals: normalsFromRecords(program.normals),
    forecasts: forecastWeather(program, on),
    histories: new Map(),
    heat: new Map(),
    outlooks: new Map(),
    past: new Map(),
    present: null,
    shared: new Map(),
    advice: new Map(),
  };
}

/**
 * The program as it was known at the end of an earlier day, made once. Only weather is cut off: whoever reads records
 * leaves out those after `on`.
 */
export function asOf(prepared: Prepared, on: Day): Prepared {
  if (on >= prepared.on) return prepared;
  const known = prepared.past.get(on);
  if (known) return known;
  const earlier: Prepared = {
    ...prepared,
    on,
    weather: new Map([...prepared.weather].map(([id, series]) => [id, truncateSeries(series, on)])),
    forecasts: forecastWeather(prepared.program, on),
    histories: new Map(),
    heat: new Map(),
    outlooks: new Map(),
    past: new Map(),
    present: prepared,
    shared: new Map(),
    advice: new Map(),
  };
  prepared.past.set(on, earlier);
  return earlier;
}

/**
 * The same day after checks at `touched` traps were written; `written` is the program with these checks, and no other
 * record differs. Kept is what rests on weather, plantings, and traps of other insects and designs; and of earlier days
 * also what was caught by then. How the visits of traps of one kind scatter is learned from all of them, so that what was
 * read from their rates is worked out anew.
 */
export function withChecks(prepared: Prepared, written: Program, touched: ReadonlySet<string>): Prepared {
  const program = { ...prepared.program, checks: written.checks };
  const own = groupBy(
    program.checks.filter(({ trapId }) => touched.has(trapId)),
    ({ trapId }) => trapId,
  );
  // A trap that was never checked before takes its place among the others, as it would from the start.
  const isNew = [...own.keys()].some((trapId) => !prepared.checksByTrap.has(trapId));
  const checksByTrap = isNew ? groupBy(program.checks, ({ trapId }) => trapId) : new Map([...prepared.checksByTrap, ...own]);
  const changedFrom = [...touched]
    .map((trapId) => firstChange(prepared.checksByTrap.get(trapId) ?? [], own.get(trapId) ?? []))
    .reduce<string | null>((first, on) => (first === null || (on !== null && on < first) ? on : first), null);
  const kinds = [...touched].flatMap((trapId) => prepared.traps.get(trapId) ?? []);
  const scatter = new Set<RestsOn>(['all checks', ...kinds.map(scatterOf)]);
  const visits = new Set<RestsOn>([...scatter, ...kinds.map(visitsOf)]);
  const isTouched = (trapId: string) => touched.has(trapId);
  const isKind = (trap: TrapRecord) => kinds.some(({ insect, design }) => insect === trap.insect && design === trap.design);

  const next: Prepared = {
    ...prepared,
    program,
    checksByTrap,
    histories: without(prepared.histories, isTouched),
    outlooks: without(prepared.outlooks, (_, { trapIds }) => trapIds.some(isTouched)),
    past: new Map(),
    shared: without(prepared.shared, (restsOn) => visits.has(restsOn)),
    advice: without(prepared.advice, (cell) => (prepared.trapsByCell.get(cell) ?? []).some(isKind)),
  };
  for (const [on, day] of prepared.past) {
    // A day before the first change saw none of it.
    const sawNone = changedFrom === null || formatDay(on) < changedFrom;
    next.past.set(on, {
      ...day,
      program,
      checksByTrap,
      histories: sawNone ? day.histories : without(day.histories, isTouched),
      outlooks: sawNone ? day.outlooks : without(day.outlooks, (_, { trapIds }) => trapIds.some(isTouched)),
      present: next,
      shared: without(day.shared, (restsOn) => (sawNone ? scatter : visits).has(restsOn)),
    });
  }
  return next;
}

const without = <K, V>(known: ReadonlyMap<K, V>, isStale: (key: K, value: V) => boolean): Map<K, V> =>
  new Map([...known].filter(([key, value]) => !isStale(key, value)));

/** The first day whose checks are not the same in both; null where all are. */
function firstChange(before: readonly CheckRecord[], after: readonly CheckRecord[]): string | null {
  const [was, is] = [before, after].map((checks) => new Map(checks.map((check) => [JSON.stringify(check), check.checkedOn])));
  const changed = [...was!].filter(([check]) => !is!.has(check)).concat([...is!].filter(([check]) => !was!.has(check)));
  return changed.reduce<string | null>((first, [, on]) => (first === null || on < first ? on : first), null);
}

export function historyOf(prepared: Prepared, trap: TrapRecord): TrapHistory {
  const known = prepared.histories.get(trap.trapId);
  if (known) return known;
  const history = prepared.present ? upTo(prepared.on, historyOf(prepared.present, trap)) : readHistory(prepared, trap);
  prepared.histories.set(trap.trapId, history);
  return history;
}

function readHistory(prepared: Prepared, trap: TrapRecord): TrapHistory {
  const checks = prepared.checksByTrap.get(trap.trapId) ?? [];
  return catchIntervals(trap, checks, prepared.luresByTrap.get(trap.trapId) ?? [], prepared.on);
}

/** Visits, in order, up to and including those of a day. */
export const endedBy = (intervals: readonly CatchInterval[], on: Day): readonly CatchInterval[] =>
  intervals.slice(0, intervals.findLastIndex(({ to }) => to <= on) + 1);

/** No visit changes what those of earlier days told. */
const upTo = (on: Day, { trapId, intervals, questions }: TrapHistory): TrapHistory => ({
  trapId,
  intervals: endedBy(intervals, on),
  questions: questions.filter((question) => question.on <= on),
});

/** Traps that inform a cell and stood at any time in the season that holds `on`. */
export function trapsThisSeason(prepared: Prepared, field: FieldRecord, insect: string): readonly TrapRecord[] {
  const [start, today] = [formatDay(growingYearStart(field, prepared.on)), formatDay(prepared.on)];
  return (prepared.trapsByCell.get(cellKey(field.fieldId, insect)) ?? []).filter(
    (trap) => trap.hungOn <= today && (trap.takenDownOn === null || trap.takenDownOn >= start),
  );
}

/** First day of the growing year: 1 January, or 1 July where the field lies south of the equator. */
export function growingYearStart(field: FieldRecord, on: Day): Day {
  const year = yearOf(on);
  if (field.latitude === null || field.latitude >= 0) return dayOf(year, 1, 1);
  const july = dayOf(year, 7, 1);
  return on >= july ? july : dayOf(year - 1, 7, 1);
}

/** The weather source of a field: the one it names, the one named after it or its farm, or the program's only one. */
/** The sources that have days up to the day read. */
export const weatherSources = (prepared: Prepared): WeatherSources =>
  once(prepared, 'no check', 'weather sources', () => weatherSourcesOf(prepared.weather.keys(), prepared.program.sources));

export function weatherSourceOf(prepared: Prepared, field: FieldRecord): string | null {
  return weatherSourceFor(field, weatherSources(prepared));
}

export function heatOf(prepared: Prepared, sourceId: string, rule: HeatRule): HeatTrack {
  const key = `${sourceId}\n${rule.method} ${rule.cutoff} ${rule.lower} ${rule.upper} ${rule.unit}`;
  const known = prepared.heat.get(key);
  if (known) return known;
  const track = heatTrack(rule, prepared.weather.get(sourceId)!, {
    maxBridgeDays: ASSUMPTIONS.maxBridgeDays.value,
    normals: prepared.normals.get(sourceId) ?? null,
  });
  prepared.heat.set(key, track);
  return track;
}

/** Newest day with both extremes; null when the source has none. */
export function weatherEnd(series: DailyExtremes): Day | null {
  for (let i = series.tminC.length - 1; i >= 0; i--) {
    if (!Number.isNaN(series.tminC[i]!) && !Number.isNaN(series.tmaxC[i]!)) return (series.start + i) as Day;
  }
  return null;
}

export const recordDay = (text: string | null): Day | null => (text === null ? null : day(text));

function insectsOf(program: Program): string[] {
  const seen = new Set<string>();
  for (const record of [program.traps, program.samples, program.treatments, program.rules].flat()) seen.add(record.insect);
  const order = new Map(catalogue.insects.map((insect, index) => [insect.id, index]));
  const place = (insect: string) => order.get(insect) ?? order.size;
  return [...seen].sort((a, b) => place(a) - place(b) || (a < b ? -1 : 1));
}

function sortedGroup<T>(records: readonly T[], key: (record: T) => string, order: (record: T) => string): Map<string, T[]> {
  const groups = groupBy(records, key);
  for (const members of groups.values()) members.sort((a, b) => (order(a) < order(b) ? -1 : order(a) > order(b) ? 1 : 0));
  return groups;
}
