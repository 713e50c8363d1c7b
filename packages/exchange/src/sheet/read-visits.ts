/** Every sighting read as a visit by a settled match, and what is wrong with those that cannot be. */
import {
  CellFault,
  CONDITIONS,
  type Condition,
  explainDay,
  type IsoDay,
  nearest,
  parseDay,
  type SheetMatch,
  UNFIT_REASONS,
  type UnfitReason,
} from '@duskwatch/core';
import type { ProblemList } from '../files/problem-list.ts';
import { dayOfCheck, meaningOf } from './read-sheet.ts';
import type { Sighting } from './sightings.ts';
import { writtenCount } from './words/written-count.ts';

/** One sighting read: still by the trap's name in the sheet. */
export interface Visit {
  readonly sighting: Sighting;
  readonly trapName: string;
  readonly day: IsoDay;
  readonly targetCount: number | null;
  readonly otherCount: number | null;
  readonly condition: Condition;
  readonly unfitReason: UnfitReason | null;
  readonly note: string | null;
}

type Figures = (sighting: Sighting, day: IsoDay, figure: number) => { count: number; note: string } | CellFault;

/** Reads what can be read and reports the others, each by its cell. */
export function readVisits(
  seen: readonly Sighting[],
  match: SheetMatch,
  nameOf: (sighting: Sighting) => string,
  decimalComma: (sighting: Sighting) => boolean,
  problems: ProblemList,
): Visit[] {
  const figures = figureReader(seen, match, nameOf, decimalComma);
  return seen.flatMap((sighting) => {
    const { meaning, figure, word } = meaningOf(sighting, match, decimalComma(sighting));
    if (meaning === 'not-checked') return [];
    const fault = (at: { row: number; column: string; text: string }, { expected, fix }: CellFault) => {
      const where = { file: problems.file, row: at.row, column: at.column };
      problems.add({ where, got: at.text === '' ? 'an empty cell' : at.text, expected, fix });
    };
    const day = dayOfCheck(sighting, match) ?? unreadableDay(sighting.day.text);
    const name = nameOf(sighting) || sighting.insect;
    if (day instanceof CellFault) fault(sighting.day, day);
    if (name === '')
      fault(
        { ...sighting.told('trap'), text: '' },
        new CellFault('the name of a trap', 'Fill in the trap, or remove the count.'),
      );
    const wordSaysUnfit = meaning === 'unfit' || (UNFIT_REASONS as readonly string[]).includes(meaning);
    const counted =
      meaning === 'zero'
        ? { count: 0, note: '' }
        : wordSaysUnfit && figure === null
          ? null
          : figureCounted(sighting, day, figure, figures);
    if (counted instanceof CellFault) fault({ ...sighting, text: sighting.count.text }, counted);
    const other = otherCount(sighting.told('otherCount').text);
    if (other instanceof CellFault) fault(sighting.told('otherCount'), other);
    const condition = wordSaysUnfit
      ? 'unfit'
      : meaning === 'doubtful'
        ? 'doubtful'
        : conditionOf(sighting.told('condition').text, match);
    if (condition instanceof CellFault) fault(sighting.told('condition'), condition);
    if (
      day instanceof CellFault ||
      name === '' ||
      counted instanceof CellFault ||
      other instanceof CellFault ||
      condition instanceof CellFault
    )
      return [];
    return [
      {
        sighting,
        trapName: name,
        day,
        targetCount: counted?.count ?? null,
        otherCount: other,
        condition,
        unfitReason: wordSaysUnfit && meaning !== 'unfit' ? (meaning as UnfitReason) : null,
        note: noteOf(sighting.told('note').text, word === null ? '' : sighting.count.text, counted?.note ?? ''),
      },
    ];
  });
}

function figureCounted(sighting: Sighting, day: IsoDay | CellFault, figure: number | null, figures: Figures) {
  if (figure === null) return new CellFault('a count of moths', 'Write the figure, or say in the match what the word means.');
  return day instanceof CellFault ? null : figures(sighting, day, figure);
}

/** Moths since the trap was emptied; figures already divided are multiplied by the nights that they were divided by. */
function figureReader(
  seen: readonly Sighting[],
  match: SheetMatch,
  nameOf: (sighting: Sighting) => string,
  decimalComma: (sighting: Sighting) => boolean,
): Figures {
  if (match.figures === 'total' || match.figures === null) {
    const expected = 'a whole number of moths';
    return (_, __, figure) =>
      Number.isInteger(figure) && figure >= 0
        ? { count: figure, note: '' }
        : new CellFault(expected, 'Correct it, or say in the match that the figures are per night or per week.');
  }
  const negative = new CellFault('no less than no moths', 'Correct the figure.');
  const perNights = match.figures === 'per-week' ? 7 : 1;
  const daysOf = new Map<string, number[]>();
  const keyOf = (sighting: Sighting) => `${nameOf(sighting)}\n${sighting.insect}`;
  for (const sighting of seen) {
    const day = dayOfCheck(sighting, match);
    if (day === null || meaningOf(sighting, match, decimalComma(sighting)).meaning === 'not-checked') continue;
    daysOf.set(keyOf(sighting), [...(daysOf.get(keyOf(sighting)) ?? []), parseDay(day)!]);
  }
  for (const days of daysOf.values()) days.sort((a, b) => a - b);
  return (sighting, day, figure) => {
    if (figure < 0) return negative;
    const number = parseDay(day)!;
    const before = daysOf.get(keyOf(sighting))?.findLast((each) => each < number) ?? hungBefore(match, number);
    if (before === null)
      return new CellFault(
        'nights before this visit, to turn moths per night into moths',
        'Say in the match when the traps were hung.',
      );
    const count = (figure * (number - before)) / perNights;
    // A figure rounded for showing comes back to a whole number only nearly.
    return {
      count: Math.round(count),
      note: `${sighting.count.text} ${match.figures === 'per-week' ? 'per week' : 'per night'}`,
    };
  };
}

const hungBefore = ({ hungOn }: SheetMatch, day: number): number | null => {
  const hung = hungOn === null || hungOn === 'first-date' ? null : parseDay(hungOn);
  return hung === null || hung >= day ? null : hung;
};

function unreadableDay(text: string): CellFault {
  const { fix } = explainDay(text);
  return new CellFault('a day in the order that the match names', text === '' ? 'Fill in the day.' : fix);
}

function otherCount(text: string): number | null | CellFault {
  if (text === '') return null;
  const { figure } = writtenCount(text, false);
  return figure !== null && Number.isInteger(figure)
    ? figure
    : new CellFault('a whole number of other moths, or nothing', 'Correct the figure, or empty the cell.');
}

function conditionOf(text: string, match: SheetMatch): Condition | CellFault {
  const word = text.toLowerCase();
  const known = CONDITIONS.find((condition) => condition === word) ?? CONDITION_WORDS.get(word);
  if (known !== undefined) return known;
  if (text === '' && match.constants.condition !== null) return match.constants.condition;
  const close = nearest(word, CONDITIONS);
  return new CellFault(`one of ${CONDITIONS.join(', ')}`, close === null ? 'Use one of these words.' : `Did you mean ${close}?`);
}

const CONDITION_WORDS = new Map<string, Condition>([
  ['ok', 'fit'],
  ['good', 'fit'],
  ['fine', 'fit'],
  ['working', 'fit'],
  ['bien', 'fit'],
  ['buena', 'fit'],
  ['bad', 'unfit'],
  ['mala', 'unfit'],
  ['doubtful', 'doubtful'],
  ['dudosa', 'doubtful'],
]);

function noteOf(...parts: readonly string[]): string | null {
  const said = [...new Set(parts)].filter((part) => part !== '').join('; ');
  return said === '' ? null : said;
}
