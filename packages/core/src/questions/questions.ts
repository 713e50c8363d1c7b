/** What in a season's records somebody should look at again. Questions only: no record is changed. */

import { type Day, day, formatDay } from '../base/day.ts';
import { groupBy } from '../base/group-by.ts';
import { catchIntervals } from '../catch/intervals.ts';
import type { Program } from '../records/program.ts';
import type { FieldRecord } from '../records/schema.ts';
import { type WeatherSources, weatherSourceFor, weatherSourcesOf } from '../records/weather-source.ts';
import { farmOfTrap } from '../review/farm-of-trap.ts';
import { type GrowingYear, growingYear } from '../review/growing-year.ts';
import { doubtedTraps } from './doubted-traps.ts';
import { type Entry, enteredInBulk } from './entries.ts';
import { expectedCatch } from './expected-catch.ts';
import { swappedColumns, unlikelyCounts } from './odd-counts.ts';
import { repeatedCounts, roundedCounts, sameCountEverywhere } from './repeated.ts';
import { swappedTraps } from './swapped-traps.ts';
import type { RecordQuestion, TrapOfFarm } from './types.ts';

export interface RecordQuestions {
  readonly season: GrowingYear;
  /** Oddest first; those that are no matter of chance last. */
  readonly questions: readonly RecordQuestion[];
  /** Visits of the season that carry information, and those of them that other traps of the kind could be held against. */
  readonly visits: number;
  readonly compared: number;
}

export interface QuestionOptions {
  /** The season that holds this day, as known on it. */
  readonly on: Day;
  /** Who entered which check when, where revisions tell. */
  readonly entries?: readonly Entry[];
}

/**
 * Every kind of question about one season. Traps are held against those of the same insect and design under the same
 * weather source. Doubtful visits are left out: they say themselves that something was wrong.
 */
export function recordQuestions(program: Program, { on, entries = [] }: QuestionOptions): RecordQuestions {
  const season = growingYear(program, on);
  const fields = new Map(program.fields.map((field) => [field.fieldId, field]));
  const sources = weatherSourcesOf(
    program.weather.map(({ sourceId }) => sourceId),
    program.sources,
  );
  const traps = trapsOf(program, season, on, fields);
  const kinds = [...groupBy(traps, (trap) => flightOf(trap, fields, sources)).values()];
  const looks = kinds.flatMap(expectedCatch);
  const farms = new Map(traps.map(({ trap, farm }) => [trap.trapId, farm]));
  const inSeason = program.checks.filter(
    ({ trapId, checkedOn }) => farms.has(trapId) && checkedOn >= formatDay(season.from) && checkedOn <= formatDay(on),
  );
  const byFarm = groupBy(inSeason, ({ trapId }) => farms.get(trapId) ?? '');
  const columns = swappedColumns(looks);
  const swaps = swappedTraps(looks);
  const doubted = doubtedTraps(program, on, looks);
  const explained = new Set([...columns, ...swaps, ...doubted].flatMap(({ checks }) => checks.map(checkKey)));
  const counts = unlikelyCounts(looks).filter(({ checks }) => !checks.some((check) => explained.has(checkKey(check))));
  const questions = [
    ...doubted,
    ...swaps,
    ...columns,
    ...counts,
    ...repeatedCounts(looks),
    ...sameCountEverywhere(looks),
    ...roundedCounts(byFarm),
    ...enteredInBulk(
      entries.filter(({ check }) => farms.has(check.trapId) && growingYear(program, day(check.checkedOn)).from === season.from),
      (trapId) => farms.get(trapId) ?? null,
    ),
  ]
    .sort((a, b) => (a.inSeason ?? 1) - (b.inSeason ?? 1))
    .map((question) => amongNeighbours(question, kinds));
  const visits = traps.reduce((sum, { intervals }) => sum + intervals.length, 0);
  return { season, questions, visits, compared: looks.length };
}

/** Of the nearest in time that fit a line. */
const NEIGHBOURS = 12;

/** The question with what the other traps of the kind caught in the nights of each check it is about. */
function amongNeighbours(question: RecordQuestion, kinds: readonly (readonly TrapOfFarm[])[]): RecordQuestion {
  const checks = question.checks.map((check) => {
    const kind = kinds.find((traps) => traps.some(({ trap }) => trap.trapId === check.trapId)) ?? [];
    const on = day(check.checkedOn);
    const own = kind.find(({ trap }) => trap.trapId === check.trapId)?.intervals.find(({ to }) => to === on);
    if (!own) return check;
    const shared = kind
      .filter(({ trap }) => trap.trapId !== check.trapId)
      .flatMap(({ intervals }) => intervals.filter(({ from, to }) => from < own.to && to > own.from));
    const neighbours = shared
      .sort((a, b) => Math.abs(a.to - own.to) - Math.abs(b.to - own.to) || (a.trapId < b.trapId ? -1 : 1))
      .slice(0, NEIGHBOURS)
      .map(({ trapId, from, to, nights, count }) => ({
        trapId,
        from: formatDay(from),
        to: formatDay(to),
        nights,
        count: count!,
      }));
    return { ...check, neighbours };
  });
  return { ...question, checks };
}

const checkKey = ({ trapId, checkedOn }: RecordQuestion['checks'][number]) => `${trapId}|${checkedOn}`;

function trapsOf(program: Program, season: GrowingYear, on: Day, fields: ReadonlyMap<string, FieldRecord>): TrapOfFarm[] {
  const checks = groupBy(program.checks, ({ trapId }) => trapId);
  return program.traps
    .filter((trap) => trap.hungOn <= formatDay(on) && (trap.takenDownOn === null || trap.takenDownOn >= formatDay(season.from)))
    .map((trap) => ({
      trap,
      farm: farmOfTrap(trap, fields),
      intervals: catchIntervals(trap, checks.get(trap.trapId) ?? [], [], on).intervals.filter(
        ({ from, count, condition }) => from >= season.from && count !== null && condition === 'fit',
      ),
    }));
}

/** Traps under one flight share this. */
function flightOf({ trap }: TrapOfFarm, fields: ReadonlyMap<string, FieldRecord>, sources: WeatherSources): string {
  const field = trap.informs.map((id) => fields.get(id)).find((known) => known !== undefined);
  return `${trap.insect}\n${trap.design}\n${field ? weatherSourceFor(field, sources) : null}`;
}
