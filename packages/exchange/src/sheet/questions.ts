/** What a sheet leaves open, asked once each, with where it stands; and the match as far as the sheet settles it. */
import {
  CONDITIONS,
  catalogue,
  FIGURE_MEANINGS,
  groupByEach,
  insectIn,
  ownInsectIn,
  type Program,
  type SheetMatch,
  type SheetQuestion,
  type SheetTable,
  TRAP_DESIGNS,
  WORD_MEANINGS,
} from '@duskwatch/core';
import { daysOfSheet } from './days-of-sheet.ts';
import { cellIn, columnIndex, type Grid } from './grid.ts';
import { designWritten } from './resolve-words.ts';
import type { Sighting } from './sightings.ts';
import { trapNamer } from './trap-names.ts';
import { dividedBy, likelyMeaning, writtenCount } from './words/written-count.ts';
import { yearIn } from './words/written-day.ts';

export interface Asking {
  readonly grids: readonly Grid[];
  readonly decimalComma: (sighting: Sighting) => boolean;
  readonly existing: Program | undefined;
  readonly file: string;
}

export interface Asked {
  /** With what the sheet settles; the rest null. */
  readonly match: SheetMatch;
  /** The same with every suggestion taken, for the reading so far. */
  readonly likely: SheetMatch;
  readonly questions: readonly SheetQuestion[];
}

/** So many places where something stands are enough to look at. */
const EVIDENCE = 3;

export function askAll(tables: readonly SheetTable[], seen: readonly Sighting[], asking: Asking): Asked {
  const headings = headingTexts(tables, asking.grids);
  const days = daysOfSheet(seen, headings);
  const questions: SheetQuestion[] = [];
  const ask = (
    question: Pick<SheetQuestion, 'id' | 'ask'> & Partial<SheetQuestion>,
    where: readonly Sighting[] = [],
    cellOf: (sighting: Sighting) => SheetQuestion['evidence'][number] = countCell,
  ) => {
    questions.push({
      about: null,
      choices: [],
      suggestion: null,
      cells: where.length,
      evidence: where.slice(0, EVIDENCE).map(cellOf),
      ...question,
    });
  };

  if (days.needsOrder && days.settledOrder === null) {
    const open = days.open!;
    ask(
      { id: 'dateOrder', ask: 'dateOrder', about: open.day.text, choices: ['dmy', 'mdy'], suggestion: days.likelyOrder },
      dated(seen),
      dayCell,
    );
  }
  const likelyYear = yearIn(asking.file) ?? yearIn(headings.join(' '));
  if (days.lackYear.length > 0)
    ask(
      { id: 'year', ask: 'year', about: days.lackYear[0]!.day.text, suggestion: likelyYear?.toString() ?? null },
      days.lackYear,
      dayCell,
    );
  if (days.week === 'starts')
    ask(
      { id: 'dayMeans', ask: 'dayMeans', choices: ['0', '7'], suggestion: '7', about: dated(seen)[0]?.day.text ?? null },
      dated(seen),
      dayCell,
    );

  const parted = seen.filter((sighting) => writtenCount(sighting.count.text, asking.decimalComma(sighting)).parted);
  const divided = headings.map(dividedBy).find((found) => found !== null) ?? null;
  const mayBeDivided = parted.length > 0 || divided !== null;
  if (mayBeDivided) {
    ask(
      {
        id: 'figures',
        ask: 'figures',
        choices: [...FIGURE_MEANINGS],
        suggestion: divided ?? 'per-night',
        about: parted[0]?.count.text ?? null,
      },
      parted.length > 0 ? parted : seen,
    );
  }

  const words = grouped(seen, (sighting) => writtenCount(sighting.count.text, asking.decimalComma(sighting)).word);
  for (const [word, where] of words) {
    const choices = WORD_MEANINGS.filter((meaning) => word.includes('#') || meaning !== 'count');
    ask({ id: `word:${word}`, ask: 'word', about: word, choices: [...choices], suggestion: likelyMeaning(word) }, where);
  }

  const known = new Set((asking.existing?.traps ?? []).map(({ trapId }) => trapId));
  const nameOf = trapNamer(seen);
  const unknown = seen.filter((sighting) => !known.has(nameOf(sighting)));
  const insects: SheetMatch['insects'] = {};
  const slugs = catalogue.insects.map(({ id }) => id);
  for (const [name, where] of grouped(unknown, ({ insect }) => insect || null)) {
    const found = insectIn(name);
    const isSettled = found !== null && !found.short && slugs.includes(found.slug);
    insects[name] = isSettled ? found.slug : null;
    const own = found === null ? ownInsectIn(name, slugs) : null;
    if (!isSettled)
      ask(
        {
          id: `insect:${name}`,
          ask: 'insectName',
          about: name,
          choices: own === null ? slugs : [own, ...slugs],
          suggestion: found?.slug ?? own,
        },
        where,
        insectCell,
      );
  }
  const designs: SheetMatch['designs'] = {};
  for (const [name, where] of grouped(unknown, ({ names }) => names.design || null)) {
    const design = designWritten(name);
    designs[name] = design;
    if (design === null) ask({ id: `design:${name}`, ask: 'designName', about: name, choices: [...TRAP_DESIGNS] }, where);
  }
  askAboutTraps(unknown, ask);
  if (!tables.every(({ places }) => places.condition !== undefined))
    ask({ id: 'condition', ask: 'condition', choices: [...CONDITIONS], suggestion: 'fit' }, seen);

  const match: SheetMatch = {
    kind: 'counts',
    tables: [...tables],
    dateOrder: days.settledOrder,
    year: null,
    dayShift: days.week === 'starts' ? null : 0,
    figures: mayBeDivided ? null : 'total',
    words: Object.fromEntries([...words.keys()].map((word) => [word, null])),
    insects,
    designs,
    constants: { insect: null, design: null, crop: null, farm: null, field: null, condition: null },
    hungOn: null,
  };
  return { match, likely: withLikely(match, days.likelyOrder, likelyYear), questions };
}

/** Facts that every trap not yet known must have, asked for where the sheet has none. */
function askAboutTraps(
  unknown: readonly Sighting[],
  ask: (question: Pick<SheetQuestion, 'id' | 'ask'> & Partial<SheetQuestion>, where?: readonly Sighting[]) => void,
): void {
  if (unknown.length === 0) return;
  const without = (has: (sighting: Sighting) => boolean) => unknown.filter((sighting) => !has(sighting));
  const noInsect = without(({ insect }) => insect !== '');
  if (noInsect.length > 0) ask({ id: 'insect', ask: 'insect', choices: catalogue.insects.map(({ id }) => id) }, noInsect);
  const noDesign = without(({ names }) => names.design !== '');
  if (noDesign.length > 0) ask({ id: 'design', ask: 'design', choices: [...TRAP_DESIGNS] }, noDesign);
  const noField = without(({ names }) => names.field !== '');
  if (noField.length > 0) ask({ id: 'field', ask: 'field', choices: ['each-trap'], suggestion: 'each-trap' }, noField);
  const noCrop = without(({ names }) => names.crop !== '');
  if (noCrop.length > 0) ask({ id: 'crop', ask: 'crop', choices: catalogue.crops.map(({ id }) => id) }, noCrop);
  const noFarm = without(({ names }) => names.farm !== '');
  if (noFarm.length > 0) ask({ id: 'farm', ask: 'farm' }, noFarm);
  const noHanging = without(({ told }) => told('hungOn').text !== '');
  if (noHanging.length > 0) ask({ id: 'hungOn', ask: 'hungOn', choices: ['first-date'] }, noHanging);
}

const countCell = ({ sheet, row, column, count }: Sighting) => ({ sheet, row, column, text: count.text });
const dayCell = ({ sheet, day }: Sighting) => ({ sheet, row: day.row, column: day.column, text: day.text });
const insectCell = ({ sheet, told, insect }: Sighting) => {
  const { row, column } = told('insect');
  return { sheet, row, column, text: insect };
};

/** One sighting for each day as it is written. */
const dated = (seen: readonly Sighting[]): Sighting[] => [
  ...new Map(seen.map((sighting) => [sighting.day.text, sighting])).values(),
];

/** By what a key says of them; those of which it says nothing are left out. */
const grouped = (seen: readonly Sighting[], keyOf: (sighting: Sighting) => string | null): Map<string, Sighting[]> =>
  groupByEach(seen, (sighting) => [keyOf(sighting)].filter((key) => key !== null));

/** The texts above and at the head of the tables. */
function headingTexts(tables: readonly SheetTable[], grids: readonly Grid[]): string[] {
  const texts = new Set<string>();
  for (const { sheet, from, places } of tables) {
    const grid = grids.find((each) => each.sheet === sheet);
    if (grid === undefined) continue;
    for (let row = Math.max(0, from - 1 - ROWS_OF_HEADINGS); row < from - 1; row++)
      for (const { text } of grid.rows[row] ?? []) if (text !== '') texts.add(text);
    for (const place of Object.values(places))
      if (place?.in === 'cell') texts.add(cellIn(grid, place.row - 1, columnIndex(place.column)).text);
    if (sheet !== null) texts.add(sheet);
  }
  return [...texts];
}

const ROWS_OF_HEADINGS = 5;

/** The match with every suggestion taken. */
function withLikely(match: SheetMatch, order: SheetMatch['dateOrder'], year: number | null): SheetMatch {
  return {
    ...match,
    dateOrder: match.dateOrder ?? order,
    year: match.year ?? year,
    dayShift: match.dayShift ?? 7,
    figures: match.figures ?? 'per-night',
    insects: Object.fromEntries(
      Object.keys(match.insects).map((name) => [name, match.insects[name] ?? insectIn(name)?.slug ?? name]),
    ),
  };
}
