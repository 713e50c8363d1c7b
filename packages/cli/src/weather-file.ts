import { basename, parse } from 'node:path';
import { type DailyExtremes, ok, type Result, refuse, seriesFromRecords, type WeatherRecord } from '@duskwatch/core';
import { readTable, readText } from '@duskwatch/exchange';
import { delimiterIn, headerOf } from './import/header.ts';
import { optionProblem } from './outcome.ts';

/** The daily extremes in a weather file; `source` says which, where it holds several. */
export async function readWeatherFile(path: string, source: string | undefined): Promise<Result<DailyExtremes>> {
  const text = await readText(path);
  if (!text.ok) return text;
  const records = readWeatherTable(text.value, basename(path));
  return records.ok ? chooseSource(seriesFromRecords(records.value), basename(path), source) : records;
}

/** Records of our own weather table, which in a file of its own may leave its source unsaid. */
export function readWeatherTable(text: string, file: string): Result<readonly WeatherRecord[]> {
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
