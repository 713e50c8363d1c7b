/**
 * How a sheet that people already keep is to be read: where each fact of a count stands, and what its words mean.
 * One way of saying it serves every layout: a day per column, a trap per column, a check per row, insects under each
 * date, a block per farm.
 */
import { z } from 'zod';
import { CONDITIONS, isoDay, UNFIT_REASONS } from './schema.ts';
import { weatherMatchSchema } from './weather-match.ts';
import { DATE_ORDERS } from './written-day.ts';

const column = z.string().regex(/^[A-Z]{1,3}$/, { error: 'expected the letters of a column' });
const row = z.int().min(1);
const word = z.string().trim().min(1);

/** What a sheet can tell of a count, besides the count. */
export const SHEET_ROLES = [
  'trap',
  'station',
  'day',
  'month',
  'year',
  'insect',
  'otherCount',
  'condition',
  'note',
  'design',
  'field',
  'farm',
  'crop',
  'hungOn',
] as const;
export type SheetRole = (typeof SHEET_ROLES)[number];

/** Where a fact stands. `fill`: an empty cell says what the one before it said, as under a merged heading. */
export const sheetPlaceSchema = z.discriminatedUnion('in', [
  z.object({ in: z.literal('column'), column, fill: z.boolean() }),
  z.object({ in: z.literal('row'), row, fill: z.boolean() }),
  /** One cell for all counts of the table. */
  z.object({ in: z.literal('cell'), row, column }),
  /** Rows within the table, each a heading of those below it. */
  z.object({ in: z.literal('headings'), rows: z.array(row).min(1), column }),
  z.object({ in: z.literal('sheet-name') }),
]);
export type SheetPlace = z.infer<typeof sheetPlaceSchema>;

/** Why a row or column is no count: worked out from others, weather, words, a time of day, or not understood. */
export const ASIDE_REASONS = ['total', 'weather', 'words', 'time', 'unknown'] as const;

export const sheetTableSchema = z.object({
  /** Sheet of the workbook; null for a text file. */
  sheet: z.string().nullable(),
  /** First and last row of its counts, from 1. */
  from: row,
  to: row,
  /** Columns that hold counts. */
  counts: z.array(column).min(1),
  /** Where insect and trap, or station, stand in one place, its label names both (`North CEW`). */
  places: z.partialRecord(z.enum(SHEET_ROLES), sheetPlaceSchema),
  asideColumns: z.array(z.object({ column, why: z.enum(ASIDE_REASONS) })),
  asideRows: z.array(z.object({ row, why: z.enum(ASIDE_REASONS) })),
});
export type SheetTable = z.infer<typeof sheetTableSchema>;

/**
 * What a word beside or in place of a count can mean: nobody looked; a zero; the figure in the cell counts and the rest is
 * a remark; the same, but the visit is doubtful; or the trap was unfit, and why where the word says it.
 */
export const WORD_MEANINGS = ['not-checked', 'zero', 'count', 'doubtful', 'unfit', ...UNFIT_REASONS] as const;
export type WordMeaning = (typeof WORD_MEANINGS)[number];

/** What the figures of a sheet are: all moths since the trap was emptied, or already divided by nights or weeks. */
export const FIGURE_MEANINGS = ['total', 'per-night', 'per-week'] as const;
export type FigureMeaning = (typeof FIGURE_MEANINGS)[number];

/** What a person still has to say before a sheet can be imported, as a value; the sentence is made from it at the edge. */
export const sheetQuestionSchema = z.object({
  /** `dateOrder`, `insect`, `word:trap down`, `insect:FAW`: what `answers` are named by. */
  id: z.string(),
  ask: z.enum([
    'dateOrder',
    'year',
    'figures',
    'dayMeans',
    'word',
    'insectName',
    'insect',
    'design',
    'designName',
    'crop',
    'farm',
    'field',
    'condition',
    'hungOn',
    'temperatureUnit',
    'precipitationUnit',
    'source',
    'clock',
  ]),
  /** What of the sheet the question is about: a word, a name, a date. */
  about: z.string().nullable(),
  /** Where it stands, and what stands there; the first few. */
  evidence: z.array(z.object({ sheet: z.string().nullable(), row, column, text: z.string() })),
  /** In how many cells. */
  cells: z.int().min(0),
  /** Answers to choose from; empty: any. */
  choices: z.array(z.string()),
  suggestion: z.string().nullable(),
});
export type SheetQuestion = z.infer<typeof sheetQuestionSchema>;

export const sheetMatchSchema = z.object({
  kind: z.literal('counts'),
  tables: z.array(sheetTableSchema).min(1),
  /** Order of day, month and year; null while it is not settled, or where no date needs it. */
  dateOrder: z.enum(DATE_ORDERS).nullable(),
  /** Year of days written without one that no heading tells. */
  year: z.int().min(1900).max(2200).nullable(),
  /** Days from the day written to the day of the check: 7 where weeks are written by their first day. */
  dayShift: z.int().min(-7).max(7).nullable(),
  figures: z.enum(FIGURE_MEANINGS).nullable(),
  /** Words beside or in place of a count, `#` for its figure; null while the meaning is not settled. */
  words: z.record(z.string(), z.enum(WORD_MEANINGS).nullable()),
  /** Insects by the names that the sheet has for them, as slugs; null while not settled. */
  insects: z.record(z.string(), z.string().nullable()),
  /** Trap designs by the names that the sheet has for them. */
  designs: z.record(z.string(), z.string().nullable()),
  /** What holds for every trap or check where the sheet does not tell. */
  constants: z.object({
    insect: word.nullable(),
    design: word.nullable(),
    crop: word.nullable(),
    farm: word.nullable(),
    /** A field's name, or `each-trap`: a field of its own for each trap. */
    field: word.nullable(),
    condition: z.enum(CONDITIONS).nullable(),
  }),
  /** Day on which traps not yet known were hung; `first-date`: the first day the sheet has a count for each. */
  hungOn: z.union([z.literal('first-date'), isoDay]).nullable(),
});
export type SheetMatch = z.infer<typeof sheetMatchSchema>;

/** What was understood of a file, the best so far. */
export const sheetReadingSchema = z.object({
  kind: z.enum(['counts', 'weather', 'folder']),
  /** How many traps: a trap is one insect at one place. */
  traps: z.int().min(0),
  /** Visits, unfit ones too; a blank cell is none. */
  checks: z.int().min(0),
  /** Slugs of the catalogue; an insect it does not know by the sheet's own name. */
  insects: z.array(z.string()),
  from: isoDay.nullable(),
  to: isoDay.nullable(),
  /** What stands beside or in place of counts. */
  words: z.array(z.string()),
  /** How many days have a check, or weather. */
  days: z.int().min(0),
});
export type SheetReading = z.infer<typeof sheetReadingSchema>;

export const sheetProposalSchema = z.object({
  reading: sheetReadingSchema,
  /** Sheets of a workbook that are not read, and why: hidden, worked out from the others, or without counts or weather. */
  asideSheets: z.array(z.object({ sheet: z.string(), why: z.enum(['hidden', 'summary', 'nothing']) })),
  questions: z.array(sheetQuestionSchema),
  /** Null where nothing has to be matched: a program folder, one of its tables. */
  match: z.discriminatedUnion('kind', [sheetMatchSchema, weatherMatchSchema]).nullable(),
});
export type SheetProposal = z.infer<typeof sheetProposalSchema>;
