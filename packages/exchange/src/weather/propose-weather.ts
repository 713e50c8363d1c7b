/** Looks at tables of weather of any make, and says how they would be read and what a person still has to say. */
import {
  type IsoDay,
  PRECIPITATION_UNITS,
  type SheetProposal,
  type SheetQuestion,
  TEMPERATURE_UNITS,
  type WeatherMatch,
  type WeatherTable,
  type WrittenPrecipitationUnit,
  type WrittenTemperatureUnit,
} from '@duskwatch/core';
import { cellIn, columnIndex, columnLetters, type Grid } from '../sheet/grid.ts';
import { roleOf } from '../sheet/header-words.ts';
import { daysDown, headingRows } from '../sheet/layout/days-down.ts';
import { GridView } from '../sheet/layout/view.ts';
import { dayMeant, ordersOf, serialDay, writtenDay } from '../sheet/words/written-day.ts';
import { isWorldTime, weatherFigure } from './weather-cells.ts';
import { elementOf, precipitationUnitIn, temperatureUnitIn } from './weather-headings.ts';

/** The table of weather of a sheet; null where it has none that can be read. */
export function findWeather(grid: Grid): WeatherTable | null {
  const view = new GridView(grid);
  for (let row = 0; row < Math.min(view.height, ROWS_TO_SEARCH); row++) {
    const down = daysDown(view, row, view.height);
    if (down === null) continue;
    const headings = headingRows(view, row);
    const width = Math.max(...grid.rows.slice(row, row + ROWS_TO_SEARCH).map((cells) => cells.length));
    const headingOf = (column: number) =>
      headings
        .map((each) => view.text(each, column))
        .filter((text) => text !== '')
        .join(' ');
    const long = longTable(view, row, width);
    const elements = Array.from({ length: width }, (_, column) => ({
      column,
      heading: headingOf(column),
      element: column === down.column ? undefined : elementOf(headingOf(column)),
    }));
    const columns = elements.flatMap(({ column, element }) => (element ? [{ column: columnLetters(column), element }] : []));
    if (columns.every(({ element }) => element === 'precipitation') && long === null) return null;
    const named = elements.find(
      ({ heading }) => /^(station(_?id)?|name|estaci[oó]n)$/i.test(heading.trim()) || roleOf(heading) === 'station',
    );
    return {
      sheet: grid.sheet,
      from: row + 1,
      to: view.height,
      day: columnLetters(down.column),
      station: long?.station ?? (named === undefined ? null : columnLetters(named.column)),
      columns: long === null ? withoutReadings(columns) : [],
      long: long === null ? null : { element: long.element, value: long.value, quality: long.quality },
      asideColumns: elements.flatMap(({ column, heading, element }) =>
        element === null && heading !== '' ? [{ column: columnLetters(column), heading }] : [],
      ),
    };
  }
  return null;
}

const ROWS_TO_SEARCH = 60;

/** Where the extremes of the day stand, single readings beside them say nothing more. */
function withoutReadings(columns: WeatherTable['columns']): WeatherTable['columns'] {
  const hasExtremes = columns.some(({ element }) => element === 'tmin') && columns.some(({ element }) => element === 'tmax');
  const kept = hasExtremes ? columns.filter(({ element }) => element !== 'temperature') : columns;
  return kept.filter(({ element }, index) => kept.findIndex((each) => each.element === element) === index);
}

/** An archive's year: station, day, kind of figure, figure, flags for measurement, quality and source (GHCN-Daily readme, from memory). */
function longTable(view: GridView, row: number, width: number) {
  const kind = Array.from({ length: width }, (_, column) => column).find((column) =>
    view.mostly(column, row, row + ROWS_TO_SEARCH, (at) => /^[A-Z]{4}$|^[A-Z]{2}\d{2}$/.test(view.text(at, column)), 0.95),
  );
  if (
    kind === undefined ||
    !view.mostly(kind + 1, row, row + ROWS_TO_SEARCH, (at) => /^-?\d+$/.test(view.text(at, kind + 1)), 0.9)
  )
    return null;
  return {
    element: columnLetters(kind),
    value: columnLetters(kind + 1),
    quality: columnLetters(kind + 3),
    station: kind >= 2 ? columnLetters(0) : null,
  };
}

export function proposeWeather(
  grids: readonly Grid[],
  file: string,
): Pick<SheetProposal, 'reading' | 'questions' | 'match'> | null {
  const found = grids.flatMap((grid) => {
    const table = findWeather(grid);
    return table === null ? [] : [{ grid, table }];
  });
  if (found.length === 0) return null;
  const days = daysOf(found);
  const questions: SheetQuestion[] = [];
  const ask = (
    question: Pick<SheetQuestion, 'id' | 'ask' | 'choices' | 'suggestion'>,
    cells: readonly SheetQuestion['evidence'][number][],
  ) => questions.push({ about: cells[0]?.text ?? null, cells: cells.length, evidence: cells.slice(0, 3), ...question });
  if (days.needsOrder && days.order === null)
    ask({ id: 'dateOrder', ask: 'dateOrder', choices: ['dmy', 'mdy'], suggestion: days.likely }, days.cells);

  const temperatures = cellsOf(found, (element) => element !== 'precipitation' && element !== 'PRCP');
  const rain = cellsOf(found, (element) => element === 'precipitation' || element === 'PRCP');
  const texts = headingTexts(found);
  const isLong = found.some(({ table }) => table.long !== null);
  const temperatureUnit: WrittenTemperatureUnit | null = isLong ? 'tenths-C' : oneOf(texts.temperature.map(temperatureUnitIn));
  const precipitationUnit: WrittenPrecipitationUnit | null = isLong
    ? 'tenths-mm'
    : rain.length === 0
      ? null
      : oneOf(texts.rain.map(precipitationUnitIn));
  if (temperatureUnit === null)
    ask(
      { id: 'temperatureUnit', ask: 'temperatureUnit', choices: [...TEMPERATURE_UNITS], suggestion: likelyUnit(temperatures) },
      temperatures,
    );
  if (rain.length > 0 && precipitationUnit === null) {
    const likely = temperatureUnit ?? likelyUnit(temperatures);
    const suggestion = likely === 'F' ? 'in' : likely === 'C' ? 'mm' : 'tenths-mm';
    ask({ id: 'precipitationUnit', ask: 'precipitationUnit', choices: [...PRECIPITATION_UNITS], suggestion }, rain);
  }
  const isNamed = found.every(({ table }) => table.station !== null);
  if (!isNamed) ask({ id: 'source', ask: 'source', choices: [], suggestion: file.replace(/\.[^.]+$/, '') }, days.cells);
  const world = days.cells.some(({ text }) => isWorldTime(text)) || texts.day.some((text) => /\b(utc|gmt|zulu)\b/i.test(text));
  if (world) ask({ id: 'clock', ask: 'clock', choices: [], suggestion: null }, days.cells);
  const match: WeatherMatch = {
    kind: 'weather',
    tables: found.map(({ table }) => table),
    dateOrder: days.order,
    temperatureUnit,
    precipitationUnit,
    sourceId: null,
    addHours: world ? null : 0,
  };
  const sorted = [...days.days].sort();
  return {
    reading: {
      kind: 'weather',
      traps: 0,
      checks: 0,
      insects: [],
      from: sorted[0] ?? null,
      to: sorted.at(-1) ?? null,
      words: [],
      days: days.days.size,
    },
    questions,
    match,
  };
}

type Found = { readonly grid: Grid; readonly table: WeatherTable };

function daysOf(found: readonly Found[]) {
  const cells = found.flatMap(({ grid, table }) =>
    grid.rows.slice(table.from - 1, table.to).flatMap((_, index) => {
      const cell = cellIn(grid, table.from - 1 + index, columnIndex(table.day));
      return cell.text === '' ? [] : [{ sheet: grid.sheet, row: table.from + index, column: table.day, text: cell.text, cell }];
    }),
  );
  const written = cells.flatMap(({ cell }) => writtenDay(cell) ?? []);
  const numeric = written.filter((day) => day.is === 'numeric' && day.first !== day.second);
  const fitting = (['mdy', 'dmy'] as const).filter((order) => numeric.every((day) => ordersOf(day).includes(order)));
  const distinct = (order: 'mdy' | 'dmy') =>
    new Set(written.map((day) => dayMeant(day, { order, year: null, shift: 0 })?.slice(0, 7))).size;
  // Weather runs on day by day: the order that needs fewer months is the likelier.
  const likely = fitting.length === 1 ? fitting[0]! : distinct('mdy') <= distinct('dmy') ? ('mdy' as const) : ('dmy' as const);
  const days = new Set<IsoDay>(
    cells.flatMap(({ cell }) => {
      const day = writtenDay(cell);
      return (day === null ? serialDay(cell) : dayMeant(day, { order: likely, year: null, shift: 0 })) ?? [];
    }),
  );
  return {
    days,
    likely,
    needsOrder: numeric.length > 0,
    order: numeric.length === 0 ? ('mdy' as const) : fitting.length === 1 ? fitting[0]! : null,
    cells: cells.map(({ cell: _, ...where }) => where),
  };
}

/** Some cells of a kind, those at the extremes first: they tell the unit. */
function cellsOf(found: readonly Found[], isKind: (element: string) => boolean): SheetQuestion['evidence'] {
  const cells = found.flatMap(({ grid, table }) =>
    grid.rows.slice(table.from - 1, table.to).flatMap((_, index) => {
      const row = table.from + index;
      const columns =
        table.long === null
          ? table.columns.filter(({ element }) => isKind(element)).map(({ column }) => column)
          : isKind(cellIn(grid, row - 1, columnIndex(table.long.element)).text)
            ? [table.long.value]
            : [];
      return columns.map((column) => ({ sheet: grid.sheet, row, column, text: cellIn(grid, row - 1, columnIndex(column)).text }));
    }),
  );
  const figureOf = ({ text }: { readonly text: string }) => {
    const figure = weatherFigure(text, false, false);
    return figure.is === 'figure' ? Math.abs(figure.value) : -1;
  };
  return cells.filter((cell) => figureOf(cell) >= 0).sort((a, b) => figureOf(b) - figureOf(a));
}

/** A guess to be confirmed: no air is above 60 °C, few growing seasons stay below 45 °F. */
function likelyUnit(cells: SheetQuestion['evidence']): WrittenTemperatureUnit | null {
  const figures = cells.flatMap(({ text }) => {
    const figure = weatherFigure(text, false, false);
    return figure.is === 'figure' ? [figure.value] : [];
  });
  const highest = figures.reduce((most, figure) => Math.max(most, figure), Number.NEGATIVE_INFINITY);
  if (highest > 135) return 'tenths-C';
  return highest > 55 ? 'F' : 'C';
}

function headingTexts(found: readonly Found[]) {
  const above = found.map(({ grid, table }) => {
    const rows = Array.from({ length: Math.min(ROWS_TO_SEARCH, table.from - 1) }, (_, index) => index);
    const inColumn = (column: string) =>
      rows.map((row) => cellIn(grid, row, columnIndex(column)).text).filter((text) => text !== '');
    const ofKind = (isKind: (element: string) => boolean) =>
      table.columns.filter(({ element }) => isKind(element)).map(({ column }) => inColumn(column).join(' '));
    return {
      temperature: ofKind((element) => element !== 'precipitation'),
      rain: ofKind((element) => element === 'precipitation'),
      day: inColumn(table.day),
    };
  });
  return {
    temperature: above.flatMap((each) => each.temperature),
    rain: above.flatMap((each) => each.rain),
    day: above.flatMap((each) => each.day),
  };
}

/** The one unit that all headings name; null where one names none, or they differ. */
function oneOf<T>(units: readonly (T | null)[]): T | null {
  const first = units[0] ?? null;
  return first !== null && units.every((unit) => unit === first) ? first : null;
}
