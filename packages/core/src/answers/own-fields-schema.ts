/** A grower's own fields: what there is to do on each, the most urgent first. */
import { z } from 'zod';
import { adviceSchema } from '../advice/types.ts';
import type { Shape } from '../base/shape.ts';
import { isoDay } from '../records/schema.ts';
import { namedFieldSchema, namedProgramSchema, observedStageSchema } from './schema.ts';

const ownFieldSchema = namedFieldSchema
  .extend({
    crop: z.string(),
    growthHabit: z.string().nullable(),
    stage: observedStageSchema.nullable(),
    lead: adviceSchema.describe('The most urgent of what is said of the field.'),
    further: z
      .array(adviceSchema.pick({ insect: true, verb: true, by: true, dueSince: true }))
      .describe('What else is to be done or known there, in the order of urgency; without what is only watched.'),
    nextCheck: isoDay
      .nullable()
      .describe('The first day on which a trap that informs the field is to be checked; null: none is.'),
  })
  .meta({ id: 'OwnField' });
export type OwnField = Shape<typeof ownFieldSchema>;

export const ownFieldsSchema = z
  .object({
    program: namedProgramSchema,
    on: isoDay,
    countsTo: isoDay.nullable().describe('Newest check known on that day; null when there is none.'),
    acting: z.array(ownFieldSchema).describe('Fields that ask for something, or are covered or not seen: the most urgent first.'),
    resting: z
      .array(ownFieldSchema)
      .describe('Fields on which everything is only watched, out of season, or not judged by any rule.'),
  })
  .meta({ id: 'OwnFields' });
export type OwnFieldsView = Shape<typeof ownFieldsSchema>;
