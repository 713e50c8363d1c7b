import {
  CellFault,
  cellReader,
  celsius,
  checkTable,
  explainDay,
  ok,
  type Problem,
  parseDay,
  type Result,
  refuse,
  type SourceRecord,
  tables,
  type WeatherRecord,
} from '@duskwatch/core';
import { delimiterOf, scanRows } from '../csv/scan-rows.ts';
import { ProblemList } from '../files/problem-list.ts';
import { STATION_HEADINGS, type StationTold, stationSources } from '../weather/station-places.ts';
import { inferNoaaUnits, type NoaaUnits } from './noaa-units.ts';

export interface NoaaOptions {
  /** Units the file was ordered in; needed where its figures could be read in more than one. */
  readonly units?: NoaaUnits;
  readonly maxProblems?: number;
}

const COLUMNS = ['STATION', 'DATE', 'TMAX', 'TMIN', 'PRCP'] as const;
type NoaaColumn = (typeof COLUMNS)[number];
type NoaaRow = { readonly row: number } & Readonly<Record<NoaaColumn, string>>;

export const isNoaaHeader = (header: readonly string[]): boolean => {
  const names = header.map((cell) => cell.trim().toUpperCase());
  return ['STATION', 'DATE'].every((name) => names.includes(name)) && (names.includes('TMAX') || names.includes('TMIN'));
};

/** The stations of such a file that say where they are (NAME, LATITUDE, LONGITUDE, ELEVATION in metres). */
export function noaaStations(text: string): SourceRecord[] {
  let header: readonly string[] | null = null;
  const told: StationTold[] = [];
  scanRows(text, delimiterOf(text), (cells) => {
    if (header === null) {
      header = cells.map((cell) => cell.trim());
      return;
    }
    const at = (wanted: RegExp) => cells[header!.findIndex((name) => wanted.test(name))]?.trim() ?? '';
    const { name, latitude, longitude, elevation } = STATION_HEADINGS;
    told.push({
      sourceId: at(/^station$/i),
      name: at(name),
      latitude: at(latitude),
      longitude: at(longitude),
      elevation: at(elevation),
    });
  });
  return stationSources(told);
}

/**
 * Daily summaries of a NOAA station as CSV (columns STATION, DATE, TMAX, TMIN, PRCP; any others, such as attributes,
 * are left aside). Empty cells and −9999 are missing days. STATION becomes the weather source.
 */
export function readNoaaDaily(text: string, file: string, options: NoaaOptions = {}): Result<WeatherRecord[]> {
  const problems = new ProblemList(file, options.maxProblems);
  const rows = noaaRows(text, file, problems);
  if (!problems.isEmpty) return { ok: false, problems: problems.all() };
  const cells = (...columns: NoaaColumn[]) =>
    columns.flatMap((column) => rows.map((row) => row[column]).filter((cell) => cell !== ''));
  const units = options.units ?? inferNoaaUnits(cells('TMAX', 'TMIN'), cells('PRCP'));
  if (units === null) return refuse(askUnits(file, cells('TMAX')));

  const records = rows.map((row) => recordOf(row, units, problems));
  const rowAt = (index: number) => rows[index]!.row;
  if (problems.isEmpty) {
    checkTable('weather', records, { locate: (_, index) => ({ file, row: rowAt(index) }), words: null, report: problems.add });
  }
  return problems.isEmpty ? ok(records) : { ok: false, problems: problems.all() };
}

function noaaRows(text: string, file: string, problems: ProblemList): NoaaRow[] {
  const rows: NoaaRow[] = [];
  let indexes: Readonly<Record<NoaaColumn, number>> | null = null;
  const unclosed = scanRows(text, delimiterOf(text), (cells, row) => {
    if (indexes === null) {
      const header = cells.map((cell) => cell.trim().toUpperCase());
      indexes = Object.fromEntries(COLUMNS.map((name) => [name, header.indexOf(name)])) as Record<NoaaColumn, number>;
      for (const name of ['STATION', 'DATE', 'TMAX', 'TMIN'] as const) {
        if (indexes[name] === -1) problems.add(missingColumn(file, row, name, cells));
      }
      return;
    }
    const at = indexes;
    const cell = (name: NoaaColumn) => {
      const written = cells[at[name]]?.trim() ?? '';
      return /^-?9999(\.0*)?$/.test(written) ? '' : written;
    };
    rows.push({ row, STATION: cell('STATION'), DATE: cell('DATE'), TMAX: cell('TMAX'), TMIN: cell('TMIN'), PRCP: cell('PRCP') });
  });
  if (unclosed !== null) {
    const where = { file, row: unclosed };
    problems.add({
      where,
      got: 'a double quote that never closes',
      expected: 'a closing double quote',
      fix: 'Download the file again.',
    });
  } else if (indexes === null) {
    problems.add({
      where: { file },
      got: 'an empty file',
      expected: `a header with ${COLUMNS.join(', ')}`,
      fix: 'Choose another file.',
    });
  }
  return rows;
}

const missingColumn = (file: string, row: number, name: string, header: readonly string[]): Problem => ({
  where: { file, row, column: name },
  got: header.join(', '),
  expected: `${name} among the columns`,
  fix: 'Order the daily summaries again with TMAX and TMIN (PRCP is optional).',
});

function askUnits(file: string, maxima: readonly string[]): Problem {
  const figures = maxima.map(Number).filter(Number.isFinite);
  const got =
    figures.length === 0
      ? 'no temperatures'
      : `TMAX from ${figures.reduce((a, b) => Math.min(a, b))} to ${figures.reduce((a, b) => Math.max(a, b))}, which could be in more than one unit`;
  return {
    where: { file, column: 'TMAX, TMIN' },
    got,
    expected: 'the units: standard (°F, inches), metric (°C, mm) or tenths (tenths of °C and mm, as in raw GHCN-Daily)',
    fix: 'Say which units the file was ordered in.',
  };
}

const readers = Object.fromEntries(
  tables.weather.columns.map((column) => [column.name, cellReader(column, { decimalComma: false })]),
);

function recordOf(row: NoaaRow, units: NoaaUnits, problems: ProblemList): WeatherRecord {
  const fault = (column: NoaaColumn, got: string, expected: string, fix: string) =>
    problems.add({ where: { file: problems.file, row: row.row, column }, got, expected, fix });
  const checked = (column: NoaaColumn, name: string, written: string) => {
    const value = readers[name]!(written);
    if (!(value instanceof CellFault)) return value;
    fault(column, row[column] === '' ? 'an empty cell' : row[column], value.expected, value.fix);
    return null;
  };
  const figure = (column: NoaaColumn, name: string, convert: (value: number) => number) => {
    const written = row[column];
    const value = Number(written);
    return checked(column, name, written === '' || !Number.isFinite(value) ? written : String(convert(value))) as number | null;
  };
  return {
    sourceId: checked('STATION', 'source_id', row.STATION) as string,
    date: dayOf(row.DATE, fault),
    tminC: figure('TMIN', 'tmin_c', TEMPERATURE_C[units]),
    tmaxC: figure('TMAX', 'tmax_c', TEMPERATURE_C[units]),
    precipitationMm: figure('PRCP', 'precipitation_mm', PRECIPITATION_MM[units]),
  };
}

const TEMPERATURE_C: Readonly<Record<NoaaUnits, (value: number) => number>> = {
  standard: (value) => celsius(value, 'F'),
  metric: (value) => value,
  tenths: (value) => value / 10,
};

const PRECIPITATION_MM: Readonly<Record<NoaaUnits, (value: number) => number>> = {
  standard: (inches) => inches * 25.4,
  metric: (value) => value,
  tenths: (value) => value / 10,
};

function dayOf(written: string, fault: (column: NoaaColumn, got: string, expected: string, fix: string) => void): string {
  const iso = written.replace(/^(\d{4})(\d{2})(\d{2})$/, '$1-$2-$3');
  if (parseDay(iso) !== null) return iso;
  const { expected, fix } = explainDay(written);
  fault('DATE', written === '' ? 'an empty cell' : written, expected, fix);
  return '';
}
