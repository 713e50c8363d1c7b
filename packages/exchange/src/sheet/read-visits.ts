import {
  CellFault,
  CONDITIONS,
  type Condition,
  cellReader,
  explainDay,
  type IsoDay,
  nearest,
  type SheetMatch,
  tables,
  type UnfitReason,
} from '@duskwatch/core';
import type { ProblemList } from '../files/problem-list.ts';
import type { Grid, SheetCell } from './grid.ts';
import { sheetDay } from './sheet-day.ts';
import type { Sighting } from './sightings.ts';

/** One sighting read: still by the trap's name in the sheet. */
export interface Visit {
  readonly row: number;
  readonly trapName: string;
  readonly day: IsoDay;
  readonly targetCount: number | null;
  readonly otherCount: number | null;
  readonly condition: Condition;
  readonly unfitReason: UnfitReason | null;
  readonly note: string | null;
  readonly told: Sighting['told'];
}

/** Reads every sighting that can be read and reports what is wrong with the others. */
export function readVisits(grid: Grid, match: SheetMatch, seen: readonly Sighting[], problems: ProblemList): Visit[] {
  const style = { order: match.dateOrder, year: match.year };
  const readTarget = countReader('target_count', grid);
  const readOther = countReader('other_count', grid);
  return seen.flatMap((sighting) => {
    const { row, column, trap, told } = sighting;
    const sound = <T>(value: T | CellFault, cell: SheetCell, at: { row: number; column: string }): value is T => {
      if (!(value instanceof CellFault)) return true;
      const got = cell.text === '' ? 'an empty cell' : cell.text;
      problems.add({ where: { file: problems.file, ...at }, got, expected: value.expected, fix: value.fix });
      return false;
    };
    const columnOf = (role: keyof SheetMatch['columns']) => ({ row, column: match.columns[role] ?? column });

    const meaning = match.words[sighting.count.text];
    if (meaning === 'not-checked') return [];
    const wordSaysUnfit = meaning !== undefined && meaning !== null;
    const nothingCounted = wordSaysUnfit || sighting.count.text === '';
    const day = sheetDay(sighting.day, style) ?? unreadableDay(sighting.day);
    const target = nothingCounted ? null : readTarget(sighting.count);
    const other = readOther(told('otherCount'));
    const condition = wordSaysUnfit ? 'unfit' : conditionOf(told('condition'), match);
    const name = trap.text === '' ? new CellFault('the name of a trap', 'Fill in the trap, or remove the count.') : trap.text;
    const reads = [
      sound(day, sighting.day, sighting.dayAt),
      sound(target, sighting.count, { row, column }),
      sound(other, told('otherCount'), columnOf('otherCount')),
      sound(condition, told('condition'), columnOf('condition')),
      sound(name, trap, columnOf('trap')),
    ];
    if (reads.includes(false)) return [];
    return [
      {
        row,
        trapName: trap.text,
        day: day as IsoDay,
        targetCount: target as number | null,
        otherCount: other as number | null,
        condition: condition as Condition,
        unfitReason: wordSaysUnfit && meaning !== 'unfit' ? meaning : null,
        note: noteOf(told('note').text, wordSaysUnfit ? sighting.count.text : ''),
        told,
      },
    ];
  });
}

function countReader(name: string, grid: Grid): (cell: SheetCell) => number | null | CellFault {
  const read = cellReader(tables.checks.columns.find((column) => column.name === name)!, grid);
  return ({ text }) => read(text) as number | null | CellFault;
}

function unreadableDay(cell: SheetCell): CellFault {
  const { fix } = explainDay(cell.text);
  return new CellFault('a day in the order that the match names', cell.text === '' ? 'Fill in the day.' : fix);
}

function conditionOf({ text }: SheetCell, match: SheetMatch): Condition | CellFault {
  if (match.columns.condition === undefined) return match.constants.condition!;
  const word = text.toLowerCase();
  const known = CONDITIONS.find((condition) => condition === word);
  if (known !== undefined) return known;
  if (text === '' && match.constants.condition !== null) return match.constants.condition;
  const close = nearest(word, CONDITIONS);
  return new CellFault(`one of ${CONDITIONS.join(', ')}`, close === null ? 'Use one of these words.' : `Did you mean ${close}?`);
}

function noteOf(...parts: readonly string[]): string | null {
  const said = parts.filter((part) => part !== '').join('; ');
  return said === '' ? null : said;
}
