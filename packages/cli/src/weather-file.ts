import { basename, parse } from 'node:path';
import { type DailyExtremes, ok, type Result, refuse, seriesFromRecords, type WeatherRecord } from '@duskwatch/core';
import { isNoaaHeader, type NoaaUnits, readNoaaDaily, readTable, readText } from '@duskwatch/exchange';
import { delimiterIn, headerOf } from './import/header.ts';
import { optionProblem } from './outcome.ts';

export interface WeatherFileOptions {
  /** Which source, where the file holds several. */
  readonly source?: string;
  /** Units of a station file that does not say. */
  readonly units?: NoaaUnits;
}

/** The daily extremes of one source in a weather file of any kind we read. */
export async function readWeatherFile(path: string, { source, units }: WeatherFileOptions): Promise<Result<DailyExtremes>> {
  const text = await readText(path);
  if (!text.ok) return text;
  const file = basename(path);
  const records = isNoaaHeader(headerOf(text.value))
    ? readNoaaDaily(text.value, file, units === undefined ? {} : { units })
    : readWeatherTable(text.value, file);
  return records.ok ? chooseSource(seriesFromRecords(records.value), file, source) : records;
}

/** Records of our own weather table, which in a file of its own may leave its source unsaid. */
function readWeatherTable(text: string, file: string): Result<readonly WeatherRecord[]> {
  const read = readTable('weather', withSource(text, parse(file).name), file);
  return read.ok ? ok(read.value.records) : read;
}

function chooseSource(all: ReadonlyMap<string, DailyExtremes>, file: string, source: string | undefined): Result<DailyExtremes> {
  const names = [...all.keys()].sort();
  const chosen = source === undefined && names.length === 1 ? names[0]! : source;
  const series = chosen === undefined ? undefined : all.get(chosen);
  if (series) return ok(series);
  if (names.length === 0)
    return refuse({
      where: { file },
      got: 'no days',
      expected: 'a row for each day',
      fix: 'Add the days, or name another file.',
    });
  return refuse(
    optionProblem(
      '--source',
      source ?? '',
      `one of the sources in ${file}: ${names.join(', ')}`,
      `Name one, as --source ${names[0]}.`,
    ),
  );
}

/** The table with its file's name as source, when it has a day and an extreme but no source_id column. */
function withSource(text: string, name: string): string {
  const [header = '', ...lines] = text.split(/\r?\n/);
  const columns = headerOf(header);
  const isDaily = columns.includes('date') && columns.some((column) => /^tm(in|ax)_[cf]$/.test(column));
  if (!isDaily || columns.includes('source_id')) return text;
  const delimiter = delimiterIn(header);
  const source = `"${name.replaceAll('"', '""')}"`;
  const rows = lines.map((line) => (line.trim() === '' ? line : `${source}${delimiter}${line}`));
  return [`source_id${delimiter}${header}`, ...rows].join('\n');
}
