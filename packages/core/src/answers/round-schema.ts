/** A drive past the stations, as the phone needs it: complete, so that it works without signal. */
import { z } from 'zod';
import type { Shape } from '../base/shape.ts';
import { localTextSchema, standingSchema } from '../catalogue/schema.ts';
import { conditionSchema, isoDay, trapDesignSchema, UNFIT_REASONS } from '../records/schema.ts';
import { keepOutSchema, namedFieldSchema, namedProgramSchema, observedStageSchema, skippedSchema } from './schema.ts';

const roundTrapSchema = z
  .object({
    trapId: z.string(),
    insect: z.string(),
    insectName: localTextSchema,
    scientificName: z.string(),
    design: trapDesignSchema,
    hungOn: isoDay,
    heightM: z.number().nullable().describe('Height of the opening to keep, in metres; null when the catalogue has none.'),
    lastVisit: z
      .object({
        on: isoDay,
        visit: z.int(),
        count: z.int().nullable(),
        condition: conditionSchema,
        emptied: z.boolean(),
        unfitReason: z.enum(UNFIT_REASONS).nullable(),
      })
      .nullable(),
    most: z.int().nullable().describe('Most moths of the target that one visit to it has found; null when none was counted.'),
    told: z
      .array(z.object({ count: z.int(), nights: z.int() }))
      .describe('Its last visits that say something of their nights, oldest first: what the next should find.'),
    skipped: skippedSchema,
    doubt: z
      .object({
        kind: z.enum(['silent', 'loud']),
        nights: z.int(),
        count: z.int(),
        expected: z.number().describe('What each other trap of its insect and design caught meanwhile, at the mean.'),
      })
      .nullable()
      .describe('What the records leave in doubt about it, to be looked at there; null: nothing, or put right since.'),
    checkDue: isoDay,
    due: z.boolean(),
    lure: z
      .object({
        placedOn: isoDay,
        lifeDays: z.int().nullable(),
        ageDays: z.int(),
        change: z.boolean().describe('It ends before the next visit would come.'),
      })
      .nullable(),
    marks: z
      .object({ note: localTextSchema, standing: standingSchema })
      .nullable()
      .describe('What tells the target from others, from the catalogue; null when it is not in it.'),
    lookAlikes: z
      .array(
        z.object({
          insect: z.string().nullable().describe('Its slug, where the catalogue holds it.'),
          name: localTextSchema,
          note: localTextSchema,
        }),
      )
      .describe('In words, from the catalogue.'),
  })
  .meta({ id: 'RoundTrap' });
export type RoundTrap = Shape<typeof roundTrapSchema>;

export const roundFieldSchema = namedFieldSchema
  .extend({
    crop: z.string(),
    stage: observedStageSchema.nullable(),
    stages: z
      .array(z.object({ id: z.string(), name: localTextSchema }))
      .describe('Canonical stage words of the crop, in order; empty when the crop is not in the catalogue.'),
    keepOut: z.array(keepOutSchema),
  })
  .meta({ id: 'RoundField' });
export type RoundField = Shape<typeof roundFieldSchema>;

const roundStopSchema = z
  .object({
    station: z.string(),
    latitude: z.number().nullable(),
    longitude: z.number().nullable(),
    due: z.boolean(),
    traps: z.array(roundTrapSchema),
    fields: z.array(roundFieldSchema),
  })
  .meta({ id: 'RoundStop' });
export type RoundStop = Shape<typeof roundStopSchema>;

export const roundSchema = z
  .object({
    program: namedProgramSchema,
    on: isoDay,
    stops: z.array(roundStopSchema).describe('Every station with a trap hanging, in driving order.'),
    dueLengthKm: z.number().describe('Great-circle kilometres past the stations that are due.'),
  })
  .meta({ id: 'Round' });
export type RoundView = Shape<typeof roundSchema>;
