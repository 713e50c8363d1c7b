import { allTables, asFahrenheit, type Column, nearest, type Problem, type RecordKind, type Table } from '@duskwatch/core';

interface ReadColumn {
  readonly column: Column;
  /** Position in the row; null when the file leaves the column out. */
  readonly index: number | null;
}

export interface MatchedHeader {
  readonly columns: readonly ReadColumn[];
  /** Cells of a row that mean something: headers without a name at the right end are not counted. */
  readonly width: number;
  /** False when figures of the table cannot be compared, as with tmin in °C and tmax in °F. */
  readonly comparable: boolean;
}

/** A header as the tables name it: case, spaces and dashes do not matter. */
export const plainHeader = (cell: string): string =>
  cell
    .trim()
    .toLowerCase()
    .replace(/[\s-]+/g, '_');

/** Finds each column of the table, reporting headers that are wrong, missing, unknown or there twice. */
export function matchHeader(
  table: Table,
  cells: readonly string[],
  file: string,
  report: (problem: Problem) => void,
  row = 1,
): MatchedHeader {
  const written = cells.map(plainHeader);
  while (written.at(-1) === '') written.pop();
  const say = (column: string, got: string, expected: string, fix: string) =>
    report({ where: { file, row, column }, got, expected, fix });

  const columns = inFahrenheit(written) && inDegrees(table) ? table.columns.map(fahrenheitOr(written)) : table.columns;
  const comparable = !inDegrees(table) || oneUnit(written, say);
  const indexes = new Map<string, number>();
  const unknown: number[] = [];
  written.forEach((name, index) => {
    const first = indexes.get(name);
    if (!isColumn(table, columns, name)) unknown.push(index);
    else if (first === undefined) indexes.set(name, index);
    else
      say(
        name,
        `${name} a second time, in column ${index + 1}`,
        `it once; column ${first + 1} is ${name} too`,
        'Remove one of the two.',
      );
  });

  const missing = () => columns.filter((column) => !indexes.has(column.name));
  for (const index of unknown) {
    const name = cells[index]!.trim();
    const meant = nearest(
      written[index]!,
      missing().map((column) => column.name),
    );
    const expected = `a column of ${table.kind}: ${columns.map((column) => column.name).join(', ')}`;
    if (meant !== null) {
      say(name, name, meant, `Rename the column ${meant}.`);
      indexes.set(meant, index);
    } else if (name === '') {
      say(`column ${index + 1}`, 'a column without a name', expected, 'Name the column, or remove it.');
    } else {
      say(name, name, expected, notOfTable(table, written) ?? 'Rename the column, or remove it.');
    }
  }
  for (const { name, needs } of missing()) {
    if (needs !== 'nothing') {
      say(name, 'no such column', `${name} among the columns`, notOfTable(table, written) ?? `Add the column ${name}.`);
    }
  }
  return {
    columns: columns.map((column) => ({ column, index: indexes.get(column.name) ?? null })),
    width: written.length,
    comparable,
  };
}

type Say = (column: string, got: string, expected: string, fix: string) => void;

/** Temperatures of these tables may be written in °F. */
const inDegrees = ({ kind }: Table) => kind === 'weather' || kind === 'normals';

const inFahrenheit = (written: readonly string[]) => written.includes('tmin_f') || written.includes('tmax_f');

const fahrenheitOr = (written: readonly string[]) => (column: Column) =>
  column.name.endsWith('_c') && !written.includes(column.name) ? asFahrenheit(column) : column;

function oneUnit(written: readonly string[], say: Say): boolean {
  const present = ['tmin_c', 'tmax_c', 'tmin_f', 'tmax_f'].filter((name) => written.includes(name));
  const units = new Set(present.map((name) => name.at(-1)));
  if (units.size < 2) return true;
  const expected = 'tmin_c and tmax_c, or tmin_f and tmax_f';
  say(present.join(', '), `${present.join(' with ')}`, expected, 'Keep one unit for both, and remove the other columns.');
  return false;
}

/** A temperature in the unit not read is not an unknown column: mixed units are their own problem. */
function isColumn(table: Table, columns: readonly Column[], name: string): boolean {
  return columns.some((column) => column.name === name) || (table.kind === 'weather' && /^tm(in|ax)_[cf]$/.test(name));
}

function notOfTable(table: Table, written: readonly string[]): string | null {
  const other = tableOfHeader(written);
  return other === null || other === table.kind ? null : `These are the columns of ${other}.csv: check which file is which.`;
}

/** The table whose columns a header holds, or null. */
export function tableOfHeader(header: readonly string[]): RecordKind | null {
  const written = new Set(header.map(plainHeader));
  if (written.has('tmin_f')) written.add('tmin_c');
  if (written.has('tmax_f')) written.add('tmax_c');
  const fits = allTables.filter((table) => table.columns.every(({ name, needs }) => needs === 'nothing' || written.has(name)));
  const known = (table: Table) => table.columns.filter(({ name }) => written.has(name)).length;
  return fits.toSorted((a, b) => known(b) - known(a))[0]?.kind ?? null;
}
