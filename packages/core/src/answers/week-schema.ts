/** This week: what is due, and the verb for every field and insect. */
import { z } from 'zod';
import { adviceSchema, missingSchema, outOfSeasonSchema, verbSchema } from '../advice/types.ts';
import type { Shape } from '../base/shape.ts';
import { unusableSchema } from '../catch/types.ts';
import { isoDay } from '../records/schema.ts';
import {
  insectNameSchema,
  namedFieldSchema,
  namedProgramSchema,
  observedStageSchema,
  rateLineSchema,
  skippedSchema,
} from './schema.ts';

const cellReasonSchema = z
  .discriminatedUnion('kind', [
    z.object({ kind: z.literal('out-of-season'), why: outOfSeasonSchema }),
    z.object({ kind: z.literal('missing'), what: missingSchema }),
    z.object({ kind: z.literal('trap-unusable'), why: unusableSchema }),
    z.object({ kind: z.literal('trap-doubt') }),
    z.object({ kind: z.literal('lure-spent') }),
  ])
  .meta({ id: 'CellReason' });
/** Why a cell has no date to give, in the words of the one piece of evidence that says it best. */
export type CellReason = Shape<typeof cellReasonSchema>;

const cellAdviceSchema = adviceSchema
  .pick({ verb: true, by: true, dueSince: true, rate: true, interval: true, confidence: true })
  .extend({ reason: cellReasonSchema.nullable().describe('Why there is no date to give.') });
/** What a cell says of its advice, without what that rests on: of hundreds of fields nobody opens more than a few. */
export type CellAdvice = Shape<typeof cellAdviceSchema>;

const weekCellSchema = z
  .object({
    advice: cellAdviceSchema,
    line: rateLineSchema.nullable().describe('As a small picture shows it: rates to three figures.'),
  })
  .meta({ id: 'WeekCell' });
export type WeekCell = Shape<typeof weekCellSchema>;

const weekFieldSchema = namedFieldSchema
  .extend({
    crop: z.string(),
    growthHabit: z.string().nullable(),
    stage: observedStageSchema.nullable(),
    cells: z.array(weekCellSchema).describe('In the order of `insects`.'),
  })
  .meta({ id: 'WeekField' });
export type WeekField = Shape<typeof weekFieldSchema>;

const dueTrapSchema = z
  .object({
    trapId: z.string(),
    station: z.string(),
    insect: z.string(),
    why: z.enum(['check-due', 'check-overdue', 'unfit', 'lure-due', 'lure-overdue']),
    due: isoDay,
    daysLate: z.int().describe('Days past due; 0 today.'),
    skipped: skippedSchema,
    fieldId: z.string().nullable().describe("A field whose advice rests on this trap; null when none of the week's does."),
  })
  .meta({ id: 'DueTrap' });
export type DueTrap = Shape<typeof dueTrapSchema>;

const dueFieldSchema = namedFieldSchema
  .extend({ insect: z.string(), verb: verbSchema, by: isoDay.nullable(), dueSince: isoDay.nullable() })
  .meta({ id: 'DueField' });
export type DueField = Shape<typeof dueFieldSchema>;

export const weekSchema = z
  .object({
    program: namedProgramSchema,
    on: isoDay,
    countsTo: isoDay.nullable().describe('Newest check known on that day; null when there is none.'),
    weatherTo: isoDay.nullable().describe('Newest weather known on that day; null when there is none.'),
    insects: z.array(insectNameSchema),
    due: z.object({
      decisions: z.array(dueFieldSchema),
      scouting: z.array(dueFieldSchema),
      checks: z.array(dueTrapSchema),
      lures: z.array(dueTrapSchema),
    }),
    fields: z.array(weekFieldSchema),
  })
  .meta({ id: 'Week' });
export type WeekView = Shape<typeof weekSchema>;
