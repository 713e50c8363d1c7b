/** Tables of weather read by a settled match: a day's extremes and precipitation, in °C and mm. */
import {
  celsius,
  checkTable,
  formatDay,
  type IsoDay,
  ok,
  parseDay,
  type Result,
  SHARE_OF_DAY,
  type WeatherElement,
  type WeatherMatch,
  type WeatherRecord,
  type WeatherTable,
} from '@duskwatch/core';
import { ProblemList } from '../files/problem-list.ts';
import { cellIn, columnIndex, type Grid } from '../sheet/grid.ts';
import { dayMeant, serialDay, writtenDay } from '../sheet/words/written-day.ts';
import { minutesIn, weatherFigure } from './weather-cells.ts';

interface Reading {
  readonly row: number;
  readonly column: string;
  readonly element: WeatherElement;
  /** In °C or mm. */
  readonly value: number;
}

interface DayOfSource {
  readonly sourceId: string;
  readonly day: IsoDay;
  readonly row: number;
  /** Rows that tell of the day. */
  rows: number;
  readonly readings: Reading[];
}

export interface WeatherRead {
  readonly records: readonly WeatherRecord[];
  /** Days with too few of their readings for extremes, which stay unknown. */
  readonly partialDays: readonly IsoDay[];
}

/** Refused with every cell that does not read, and with figures that no weather has: they are in another unit than was said. */
export function readWeather(grids: readonly Grid[], match: WeatherMatch, file: string): Result<WeatherRead> {
  const problems = new ProblemList(file);
  const days = new Map<string, DayOfSource>();
  for (const table of match.tables) {
    const grid = grids.find(({ sheet }) => sheet === table.sheet) ?? grids[0]!;
    for (let row = table.from; row <= table.to; row++) readRow(grid, table, match, row, days, problems);
  }
  const all = [...days.values()];
  const usual = usualRows(all);
  const partialDays = all.filter(({ rows }) => rows < SHARE_OF_DAY * usual).map(({ day }) => day);
  const partial = new Set(partialDays);
  const records = all.map((day) => recordOf(day, usual > 1 && partial.has(day.day)));
  if (problems.isEmpty)
    checkTable('weather', records, { locate: (_, index) => ({ file, row: all[index]!.row }), words: null, report: problems.add });
  return problems.isEmpty ? ok({ records, partialDays }) : { ok: false, problems: problems.all() };
}

function readRow(
  grid: Grid,
  table: WeatherTable,
  match: WeatherMatch,
  row: number,
  days: Map<string, DayOfSource>,
  problems: ProblemList,
): void {
  const cell = (column: string) => cellIn(grid, row - 1, columnIndex(column));
  const dayCell = cell(table.day);
  if (dayCell.text === '') return;
  const where = { file: problems.file, row };
  const written = writtenDay(dayCell);
  const day = written === null ? serialDay(dayCell) : dayMeant(written, { order: match.dateOrder, year: null, shift: 0 });
  if (day === null) {
    problems.add({
      where: { ...where, column: table.day },
      got: dayCell.text,
      expected: 'a day with its year',
      fix: 'Correct the day, or remove the row.',
    });
    return;
  }
  const sourceId = (table.station === null ? '' : cell(table.station).text) || (match.sourceId ?? '');
  const own = shifted(day, minutesIn(dayCell.text), match.addHours ?? 0);
  const key = `${sourceId}\n${own}`;
  const ofDay = days.get(key) ?? { sourceId, day: own, row, rows: 0, readings: [] };
  days.set(key, ofDay);
  ofDay.rows++;
  for (const { column, element } of cellsOfRow(table, (letters) => cell(letters).text)) {
    const { text } = cell(column);
    const figure = weatherFigure(text, grid.decimalComma, element === 'precipitation');
    if (figure.is === 'missing') continue;
    if (figure.is === 'word') {
      problems.add({
        where: { ...where, column },
        got: text,
        expected: 'a figure, or M for a missing one',
        fix: 'Correct the cell, or empty it.',
      });
      continue;
    }
    const value = element === 'precipitation' ? inMillimetres(figure.value, match) : inCelsius(figure.value, match);
    const fault = impossible(element, value);
    if (fault !== null) problems.add({ where: { ...where, column }, got: text, ...fault });
    else ofDay.readings.push({ row, column, element, value });
  }
}

/** Which cells of a row hold what. */
function cellsOfRow({ columns, long }: WeatherTable, textAt: (column: string) => string): WeatherTable['columns'] {
  if (long === null) return columns;
  const element = LONG_ELEMENTS[textAt(long.element)];
  const failed = long.quality !== null && textAt(long.quality) !== '';
  return element === undefined || failed ? [] : [{ column: long.value, element }];
}

const LONG_ELEMENTS: Readonly<Record<string, WeatherElement>> = { TMIN: 'tmin', TMAX: 'tmax', PRCP: 'precipitation' };

function shifted(day: IsoDay, minutes: number | null, addHours: number): IsoDay {
  if (addHours === 0 && minutes !== 24 * 60) return day;
  const days = Math.floor(((minutes ?? 0) / 60 + addHours) / 24);
  const number = parseDay(day)!;
  // The midnight that ends a day is its own: loggers write it as 24:00.
  return minutes === 24 * 60 && addHours === 0 ? day : formatDay((number + days) as typeof number);
}

const inCelsius = (value: number, { temperatureUnit }: WeatherMatch): number =>
  temperatureUnit === 'F' ? celsius(value, 'F') : temperatureUnit === 'tenths-C' ? value / 10 : value;
const inMillimetres = (value: number, { precipitationUnit }: WeatherMatch): number =>
  precipitationUnit === 'in' ? value * 25.4 : precipitationUnit === 'tenths-mm' ? value / 10 : value;

/** Beyond any on record (−89.2 °C Vostok 1983, 56.7 °C Furnace Creek 1913, 1,825 mm in a day at La Réunion 1966: WMO archive of extremes). */
function impossible(element: WeatherElement, value: number): { expected: string; fix: string } | null {
  if (element === 'precipitation') {
    if (value >= 0 && value <= 1_825) return null;
    return {
      expected: 'precipitation of at most 1,825 mm in a day',
      fix: 'If the figures are tenths of mm, or mm taken for inches, answer precipitationUnit anew.',
    };
  }
  if (value >= -89.2 && value <= 56.7) return null;
  return {
    expected: 'a temperature between −89.2 and 56.7 °C',
    fix: 'If the figures are in °F, or in tenths of °C, answer temperatureUnit anew.',
  };
}

/** How many rows most days have. */
function usualRows(days: readonly DayOfSource[]): number {
  const times = new Map<number, number>();
  for (const { rows } of days) times.set(rows, (times.get(rows) ?? 0) + 1);
  return [...times].sort((a, b) => b[1] - a[1] || b[0] - a[0])[0]?.[0] ?? 0;
}

function recordOf({ sourceId, day, readings }: DayOfSource, isPartial: boolean): WeatherRecord {
  const of = (...elements: WeatherElement[]) =>
    readings.filter(({ element }) => elements.includes(element)).map(({ value }) => value);
  const lows = of('tmin', 'temperature');
  const highs = of('tmax', 'temperature');
  const rain = of('precipitation');
  const known = (values: readonly number[], pick: (values: readonly number[]) => number) =>
    isPartial || values.length === 0 ? null : tidy(pick(values));
  return {
    sourceId,
    date: day,
    tminC: known(lows, (values) => values.reduce((a, b) => Math.min(a, b))),
    tmaxC: known(highs, (values) => values.reduce((a, b) => Math.max(a, b))),
    precipitationMm: known(rain, (values) => values.reduce((a, b) => a + b, 0)),
  };
}

/** Sums and conversions leave digits that nobody measured. */
const tidy = (value: number): number => Math.round(value * 1e6) / 1e6;
