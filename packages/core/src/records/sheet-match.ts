/** How a sheet that people already keep is to be read: what each column, row and word of it means. */
import { z } from 'zod';
import { CONDITIONS, isoDay, UNFIT_REASONS } from './schema.ts';
import { DATE_ORDERS } from './written-day.ts';

const column = z.string().regex(/^[A-Z]{1,3}$/, { error: 'expected the letters of a column' });
const word = z.string().trim().min(1);

export const LAYOUTS = ['day-per-column', 'trap-per-column', 'check-per-row'] as const;
export const COLUMN_ROLES = [
  'trap',
  'station',
  'day',
  'count',
  'otherCount',
  'condition',
  'note',
  'insect',
  'design',
  'field',
  'farm',
  'crop',
  'hungOn',
] as const;
/** What a word in place of a count can mean: nobody looked, or the trap was unfit, and why where the word says it. */
export const WORD_MEANINGS = ['not-checked', 'unfit', ...UNFIT_REASONS] as const;
export type WordMeaning = (typeof WORD_MEANINGS)[number];
export type ColumnRole = (typeof COLUMN_ROLES)[number];

export const questionSchema = z.object({
  /** The part of the match that the answer goes into: `constants.insect`. */
  about: z.string(),
  ask: z.string(),
  /** Answers to choose from; empty: any. */
  choices: z.array(z.string()),
  suggestion: z.string().nullable(),
});

export const sheetMatchSchema = z.object({
  /** Sheet of the workbook; null for a CSV file or a workbook with only one. */
  sheet: z.string().nullable(),
  layout: z.enum(LAYOUTS),
  /** Row that holds the headers, from 1. */
  headerRow: z.int().min(1),
  columns: z.partialRecord(z.enum(COLUMN_ROLES), column),
  /** Columns of counts, where each stands for a day or a trap. */
  countColumns: z.array(column),
  /** Names of rows or columns that are no trap: totals, means. */
  leaveOut: z.array(z.string()),
  /** Order of day, month and year; null while it is not settled. */
  dateOrder: z.enum(DATE_ORDERS).nullable(),
  needsDateOrder: z.boolean(),
  /** Year of days written without one. */
  year: z.int().min(1900).max(2200).nullable(),
  needsYear: z.boolean(),
  /** An empty cell was not checked. It is never zero. */
  blank: z.literal('not-checked'),
  /** Words that stand where a count should; null while their meaning is not settled. */
  words: z.record(z.string(), z.enum(WORD_MEANINGS).nullable()),
  /** What holds for every trap or check that no column tells. */
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
  /** What a person still has to say. Answers go into the match; this list is not read again. */
  questions: z.array(questionSchema),
});

export type SheetMatch = z.infer<typeof sheetMatchSchema>;
export type Question = z.infer<typeof questionSchema>;
export type Layout = SheetMatch['layout'];
