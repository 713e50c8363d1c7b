/** One field: its season with every insect, and what the verbs rest on. */
import { z } from 'zod';
import { ratePointSchema } from '../advice/rate-points.ts';
import { adviceSchema, expectedSchema } from '../advice/types.ts';
import type { Shape } from '../base/shape.ts';
import { eventSchema, localTextSchema, standingSchema } from '../catalogue/schema.ts';
import { conditionSchema, decisionSchema, isoDay, trapDesignSchema } from '../records/schema.ts';
import {
  insectNameSchema,
  namedFieldSchema,
  namedProgramSchema,
  observedStageSchema,
  rateLineSchema,
  sampleShownSchema,
} from './schema.ts';

const earlierSeasonSchema = z
  .object({
    year: z.int().describe('The year in which that season began.'),
    design: trapDesignSchema,
    stations: z.array(z.string()).describe('Where those traps stood.'),
    points: z.array(ratePointSchema),
  })
  .meta({
    id: 'EarlierSeason',
    description:
      "The catch of an earlier season by the traps of one design that informed the field, its days moved to this season's.",
  });
export type EarlierSeason = Shape<typeof earlierSeasonSchema>;

const checkMarkSchema = z
  .object({
    trapId: z.string(),
    on: isoDay,
    visits: z.array(z.int()).describe('The `visit` of each record of that day.'),
    nights: z.int(),
    count: z.int().nullable(),
    others: z.int().nullable(),
    condition: conditionSchema,
    lureAgeDays: z.int().nullable(),
    lurePastLife: z.boolean().nullable(),
    note: z.string().nullable(),
  })
  .meta({ id: 'CheckMark' });
export type CheckMark = Shape<typeof checkMarkSchema>;

const heatStripSchema = z
  .object({
    modelId: z.string(),
    modelName: localTextSchema,
    source: z.string(),
    standing: standingSchema,
    unit: z.enum(['C', 'F']).describe('Unit of the degree-days.'),
    startsOn: isoDay,
    startKind: z.enum(['calendar', 'biofix']),
    days: z
      .array(z.object({ date: isoDay, total: z.number().nullable(), bridged: z.boolean() }))
      .describe('Cumulative degree-days by day; null from the first day that could not be summed.'),
    events: z.array(
      z.object({
        event: eventSchema,
        generation: z.int().nullable(),
        from: z.number(),
        to: z.number().nullable(),
        status: z.enum(['ahead', 'now', 'past']),
        expected: expectedSchema.nullable(),
      }),
    ),
    gap: z.object({ from: isoDay, to: isoDay }).nullable(),
  })
  .meta({ id: 'HeatStrip' });
export type HeatStrip = Shape<typeof heatStripSchema>;

const fieldInsectSchema = z
  .object({
    insect: insectNameSchema,
    advice: adviceSchema,
    lines: z.array(rateLineSchema),
    earlierSeasons: z.array(earlierSeasonSchema).describe('Newest first.'),
    checks: z.array(checkMarkSchema),
    traps: z.array(
      z.object({
        trapId: z.string(),
        station: z.string(),
        design: trapDesignSchema,
        hungOn: isoDay,
        takenDownOn: isoDay.nullable(),
      }),
    ),
    lures: z.array(z.object({ trapId: z.string(), placedOn: isoDay, lifeDays: z.int().nullable() })),
    heat: z.array(heatStripSchema),
    samples: z.array(sampleShownSchema),
    treatments: z.array(z.object({ appliedOn: isoDay, product: z.string(), protectsUntil: isoDay.nullable() })),
    decisions: z.array(decisionSchema.pick({ decidedOn: true, decision: true, reason: true, note: true })),
  })
  .meta({ id: 'FieldInsect' });
export type FieldInsectView = Shape<typeof fieldInsectSchema>;

export const fieldViewSchema = z
  .object({
    program: namedProgramSchema,
    on: isoDay,
    field: namedFieldSchema.extend({
      crop: z.string(),
      growthHabit: z.string().nullable(),
      plantedOn: isoDay.nullable(),
      harvestOn: isoDay.nullable(),
    }),
    from: isoDay.describe('The span of the time axis.'),
    to: isoDay,
    stages: z.array(observedStageSchema),
    insects: z.array(fieldInsectSchema),
  })
  .meta({ id: 'Field' });
export type FieldView = Shape<typeof fieldViewSchema>;
