import { ok, type Problem, type Result, refuse } from '../base/problem.ts';
import type { TravelTable } from './travel.ts';

/** Nobody drives for longer between two stops of a day's round. */
const LONGEST_MINUTES = 1_440;

/**
 * Driving minutes as a user writes them down: the first row and the first column name the places in the same order, and
 * each cell is the way from its row's place to its column's. Cells are parted by comma, semicolon or tab; with the last
 * two, decimals may have a comma. Names may stand in double quotes. A place to itself may be left empty.
 */
export function readTravelTable(text: string): Result<TravelTable> {
  const lines = text
    .replace(/^\uFEFF/, '')
    .split(/\r\n|\r|\n/)
    .filter((line) => line.trim() !== '');
  const mark = [';', '\t', ','].find((each) => lines[0]?.includes(each));
  if (lines.length < 2 || mark === undefined)
    return refuse(problem(1, null, lines[0]?.slice(0, 40) ?? '', 'names of places in the first row and the first column'));
  const cells = lines.map((line) => split(line, mark));
  const ids = cells[0]!.slice(1);
  const problems: Problem[] = [];
  const twice = ids.find((id, index) => ids.indexOf(id) !== index);
  if (twice !== undefined) problems.push(problem(1, twice, twice, 'each place once'));
  if (ids.includes('')) problems.push(problem(1, null, 'a column without a name', 'a place above each column'));
  if (cells.length - 1 !== ids.length)
    problems.push(problem(cells.length, null, `${cells.length - 1} rows`, `${ids.length} rows, one for each column`));
  const minutes = cells.slice(1).map((row, r) => {
    if (row[0] !== ids[r]) problems.push(problem(r + 2, null, row[0] ?? '', `${ids[r] ?? 'no row'}, as in the first row`));
    return ids.map((id, c) => {
      const got = row[c + 1] ?? '';
      if (r === c) return 0;
      const value = got === '' ? Number.NaN : Number(mark === ',' ? got : got.replace(',', '.'));
      if (!(value >= 0 && value <= LONGEST_MINUTES))
        problems.push(problem(r + 2, id, got, `minutes from 0 to ${LONGEST_MINUTES}`));
      return value;
    });
  });
  return problems.length > 0 ? refuse(...problems.slice(0, 20)) : ok({ ids, minutes });
}

function split(line: string, mark: string): string[] {
  const cells: string[] = [];
  let cell = '';
  let quoted = false;
  for (let at = 0; at < line.length; at++) {
    const letter = line[at]!;
    if (letter === '"' && quoted && line[at + 1] === '"') {
      cell += letter;
      at++;
    } else if (letter === '"') quoted = !quoted;
    else if (letter === mark && !quoted) {
      cells.push(cell.trim());
      cell = '';
    } else cell += letter;
  }
  return [...cells, cell.trim()];
}

const problem = (row: number, column: string | null, got: string, expected: string): Problem => ({
  where: { row, ...(column !== null && { column }) },
  got,
  expected,
  fix: 'mend it and choose the file again',
});
