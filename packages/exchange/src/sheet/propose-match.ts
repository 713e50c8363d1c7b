import {
  CONDITIONS,
  catalogue,
  type DateOrder,
  ok,
  type Program,
  type Question,
  type Result,
  refuse,
  type SheetMatch,
  TRAP_DESIGNS,
  WORD_MEANINGS,
} from '@duskwatch/core';
import { findLayout } from './find-layout.ts';
import type { Grid } from './grid.ts';
import { isSummary } from './header-roles.ts';
import { openSheets } from './open-sheets.ts';
import { dayForm } from './sheet-day.ts';
import { type Shape, type Sighting, sightings } from './sightings.ts';

export interface ProposeOptions {
  /** Sheet of a workbook to look at; without it the first that looks like counts is proposed and asked about. */
  readonly sheet?: string | null;
  /** Traps already known need no insect, design or field. */
  readonly existing?: Program;
}

/**
 * Looks at a sheet (CSV or XLSX) with a day per column, a trap per column or a check per row, and says how it would
 * be read and what a person still has to say. Nothing is guessed that the sheet does not tell.
 */
export async function proposeMatch(bytes: Uint8Array, file: string, options: ProposeOptions = {}): Promise<Result<SheetMatch>> {
  const opened = await openSheets(bytes, file);
  if (!opened.ok) return opened;
  const { sheets, read } = opened.value;
  const wanted = options.sheet ?? null;
  const candidates = wanted === null ? sheets : sheets.filter((name) => name === wanted);
  const grids = candidates.map(read);
  for (const grid of grids) {
    const found = grid.ok ? findLayout(grid.value) : null;
    if (!grid.ok || found === null) continue;
    return ok(matchOf(grid.value, { ...found, leaveOut: [] }, sheets, wanted, options.existing));
  }
  const unreadable = grids.flatMap((grid) => (grid.ok ? [] : grid.problems));
  if (unreadable.length > 0) return { ok: false, problems: unreadable };
  return refuse({
    where: { file },
    got:
      wanted !== null && candidates.length === 0
        ? `no sheet ${wanted}; there are ${sheets.join(', ')}`
        : 'a sheet in which no days were found',
    expected: 'a day in each column, a trap in each column, or a trap, a date and a count in each row',
    fix: 'Head the columns with days (2025-07-12) or put the days in one column, with the names of the traps in the other direction.',
  });
}

type BareShape = Omit<Shape, 'leaveOut' | 'columns' | 'countColumns'> &
  Pick<Shape, 'columns'> & { readonly countColumns: readonly string[]; readonly leaveOut: string[] };

function matchOf(
  grid: Grid,
  bare: BareShape,
  sheets: readonly string[],
  wanted: string | null,
  existing: Program | undefined,
): SheetMatch {
  const whole: Shape = { ...bare, countColumns: [...bare.countColumns] };
  const labels = new Set(sightings(grid, whole).map(({ trap }) => trap.text));
  const shape: Shape = { ...whole, leaveOut: [...labels].filter(isSummary) };
  const seen = sightings(grid, shape);
  const known = new Set(existing?.traps.map(({ trapId }) => trapId));
  const allKnown = seen.every(({ trap }) => known.has(trap.text));
  const days = daysOf(seen);
  const match: Omit<SheetMatch, 'questions'> = {
    ...shape,
    sheet: grid.sheet,
    ...days,
    year: null,
    blank: 'not-checked',
    words: Object.fromEntries(wordsOf(seen).map((word) => [word, null])),
    constants: { insect: null, design: null, crop: null, farm: null, field: null, condition: null },
    hungOn: null,
  };
  const ofSheet = sheets.length > 1 && wanted === null ? [askSheet(grid.sheet, sheets)] : [];
  return { ...match, questions: [...ofSheet, ...questionsAbout(match, seen, allKnown)] };
}

/** An order is settled when every day of the sheet can be read in it and no other order reads them all. */
function daysOf(seen: readonly Sighting[]): Pick<SheetMatch, 'dateOrder' | 'needsDateOrder' | 'needsYear'> {
  const forms = seen.flatMap(({ day }) => dayForm(day) ?? []);
  const numeric = forms.filter(({ orders }) => orders.length > 0);
  const fitting = (['ymd', 'dmy', 'mdy'] as const).filter((order: DateOrder) =>
    numeric.every(({ orders }) => orders.includes(order)),
  );
  return {
    dateOrder: numeric.length > 0 && fitting.length === 1 ? fitting[0]! : null,
    needsDateOrder: numeric.length > 0,
    needsYear: forms.some(({ needsYear }) => needsYear),
  };
}

const isFigure = (text: string): boolean => /^[+-]?\d+([.,]\d+)?$/.test(text);

const wordsOf = (seen: readonly Sighting[]): string[] => [
  ...new Set(seen.flatMap(({ count }) => (count.text === '' || isFigure(count.text) ? [] : [count.text]))),
];

const askSheet = (proposed: string | null, sheets: readonly string[]): Question => ({
  about: 'sheet',
  ask: 'Which sheet of the workbook holds the counts?',
  choices: [...sheets],
  suggestion: proposed,
});

function questionsAbout(match: Omit<SheetMatch, 'questions'>, seen: readonly Sighting[], allKnown: boolean): Question[] {
  const { columns } = match;
  const questions: Question[] = [];
  const ask = (about: string, text: string, choices: readonly string[] = [], suggestion: string | null = null) =>
    questions.push({ about, ask: text, choices: [...choices], suggestion });

  if (match.needsDateOrder && match.dateOrder === null) {
    const example = seen.find(({ day }) => (dayForm(day)?.orders.length ?? 0) > 1)?.day.text ?? seen[0]!.day.text;
    ask('dateOrder', `In dates such as ${example}, does the day (dmy) or the month (mdy) come first?`, ['dmy', 'mdy']);
  }
  if (match.needsYear) ask('year', 'The days have no year. Which year are they of?');
  for (const word of Object.keys(match.words)) {
    ask(`words.${word}`, `What does "${word}" mean where a count should be?`, WORD_MEANINGS);
  }
  if (columns.condition === undefined) {
    ask('constants.condition', 'No column tells the condition of the traps. What were they at these visits?', CONDITIONS, 'fit');
  }
  if (allKnown) return questions;
  if (columns.insect === undefined)
    ask(
      'constants.insect',
      'Which insect are the traps for?',
      catalogue.insects.map(({ id }) => id),
    );
  if (columns.design === undefined) ask('constants.design', 'What design are the traps?', TRAP_DESIGNS);
  if (columns.field === undefined) {
    ask('constants.field', 'Which field do the traps inform? Give its name, or each-trap for a field of its own for each trap.');
  }
  if (columns.crop === undefined)
    ask(
      'constants.crop',
      'Which crop grows there?',
      catalogue.crops.map(({ id }) => id),
    );
  if (columns.farm === undefined) ask('constants.farm', 'Which farm do the fields belong to?');
  if (columns.hungOn === undefined) {
    ask(
      'hungOn',
      'On which day were the traps hung? With first-date, a trap counts as hung on the day of its first count; that count then has no nights before it and gives no rate.',
      ['first-date'],
    );
  }
  return questions;
}
