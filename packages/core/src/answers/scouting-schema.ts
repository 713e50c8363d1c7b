/** What a scout needs in the field to sample by: complete, so that it works without signal. */
import { z } from 'zod';
import { verbSchema } from '../advice/types.ts';
import type { Shape } from '../base/shape.ts';
import { assumptionSchema, localTextSchema, standingSchema } from '../catalogue/schema.ts';
import { isoDay } from '../records/schema.ts';
import { roundFieldSchema } from './round-schema.ts';
import { insectNameSchema, namedProgramSchema, sampleShownSchema } from './schema.ts';

const unit = z.enum(['plants', 'ears', 'fruit']);
const walk = z
  .object({ places: z.int(), perPlace: z.int() })
  .describe('So many units at each place of a lap, new places on the next one.');

const sequentialTestSchema = z
  .object({
    distribution: z.discriminatedUnion('kind', [
      z.object({ kind: z.literal('negative-binomial'), k: z.number() }),
      z.object({ kind: z.literal('poisson') }),
      z.object({ kind: z.literal('binomial') }),
    ]),
    m0: z.number().describe('Share of units, or insects per unit, at which the field is surely below.'),
    m1: z.number().describe('At which it is surely above.'),
    alpha: z.number(),
    beta: z.number(),
    designEffect: z.number().describe('By how many times the lines are moved out so that the plan keeps its risks.'),
    slope: z.number(),
    lowerIntercept: z.number(),
    upperIntercept: z.number(),
    weight: z.number(),
  })
  .meta({
    id: 'SequentialTest',
    description: 'Stop below at a total of slope·n + lowerIntercept or less, above at slope·n + upperIntercept or more.',
  });

const scoutingPlanSchema = z
  .object({
    test: sequentialTestSchema,
    minSamples: z.int(),
    maxSamples: z.int(),
    perPlace: z.int().describe('Judged when so many units of a place are done.'),
    correlation: z.number().describe('Of any two units at one place.'),
    ruleId: z.string(),
    insect: z.string(),
    unit,
    sign: z.enum(['infested', 'eggs', 'damaged', 'egg-masses']),
    threshold: z.number(),
    thresholdHigh: z.number().nullable(),
    stages: z.array(z.string()).nullable(),
    combinedWith: z.object({ insect: z.string(), share: z.number() }).nullable(),
    region: z.string(),
    source: z.string(),
    standing: standingSchema,
    walk,
    clumping: z
      .object({ correlation: z.number(), samples: z.int(), places: z.int() })
      .nullable()
      .describe('Where the correlation is from: so many own samples; none: assumed. Null: set by hand.'),
    assumed: z.array(assumptionSchema),
  })
  .meta({ id: 'ScoutingPlan', description: 'A sequential plan for one published rule.' });

const countingPlanSchema = z
  .object({ insect: z.string(), unit, units: z.int(), walk, correlation: z.number(), assumed: z.array(assumptionSchema) })
  .meta({ id: 'CountingPlan', description: 'For an insect without a figure that a sample could be held against.' });

const stageMatchSchema = z.enum(['now', 'any', 'unknown', 'not-yet', 'over']);
/** Whether a rule speaks for the crop as it was last seen. */
export type StageMatch = Shape<typeof stageMatchSchema>;

const scoutingPairSchema = z
  .object({
    insect: z.string(),
    verb: verbSchema,
    by: isoDay.nullable(),
    dueSince: isoDay.nullable(),
    rules: z
      .array(z.object({ ruleId: z.string(), match: stageMatchSchema }))
      .describe('Plans of the rules for the pair, those that hold now first; none: no figure is published, count only.'),
    lastSample: sampleShownSchema.nullable().describe('The newest sample of this season.'),
  })
  .meta({ id: 'ScoutingPair' });
export type ScoutingPair = Shape<typeof scoutingPairSchema>;

const scoutingFieldSchema = roundFieldSchema
  .omit({ stages: true })
  .extend({
    growthHabit: z.string().nullable(),
    latitude: z.number().nullable(),
    longitude: z.number().nullable(),
    pairs: z.array(scoutingPairSchema).describe('Most urgent first.'),
  })
  .meta({ id: 'ScoutingField' });
export type ScoutingField = Shape<typeof scoutingFieldSchema>;

export const scoutingSchema = z
  .object({
    program: namedProgramSchema,
    on: isoDay,
    insects: z.array(insectNameSchema),
    crops: z
      .array(z.object({ crop: z.string(), stages: z.array(z.object({ id: z.string(), name: localTextSchema })) }))
      .describe('Crops of the fields, with the stages that somebody may see, in order.'),
    plans: z.array(scoutingPlanSchema).describe('Each plan once, by its rule.'),
    counting: z.array(countingPlanSchema).describe('For insects without a rule that a sample could reach.'),
    looks: z
      .array(
        z.object({
          insect: z.string(),
          crop: z.string(),
          unit: z.string(),
          text: localTextSchema,
          source: z.string(),
        }),
      )
      .describe('What to look for on a unit of a crop.'),
    fields: z.array(scoutingFieldSchema).describe('Most urgent first.'),
  })
  .meta({ id: 'Scouting' });
export type ScoutingView = Shape<typeof scoutingSchema>;
