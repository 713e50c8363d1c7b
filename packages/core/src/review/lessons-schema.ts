/** What a program's records teach, ready to draw: days as text, no figure without end, names for fields. */
import { z } from 'zod';
import { problemSchema } from '../base/problem-schema.ts';
import type { Shape } from '../base/shape.ts';
import { standingSchema } from '../catalogue/schema.ts';
import { isoDay, trapDesignSchema } from '../records/schema.ts';

const interval = { low: z.number(), high: z.number() };

export const estimateSchema = z
  .object({ value: z.number(), ...interval, level: z.number().describe('Confidence level of the interval.') })
  .meta({ id: 'Estimate' });

const boundedEstimateSchema = z
  .object({
    value: z.number().nullable(),
    low: z.number().nullable(),
    high: z.number().nullable(),
    level: z.number(),
  })
  .meta({ id: 'BoundedEstimate', description: 'An estimate as JSON can hold it; null: without limit.' });
export type BoundedEstimate = Shape<typeof boundedEstimateSchema>;

const errorRateSchema = z
  .object({ wrong: z.int(), of: z.int(), share: z.number().nullable(), ...interval })
  .meta({ id: 'ErrorRate', description: 'A share of samples; null where there were none.' });
export type ErrorRate = Shape<typeof errorRateSchema>;

const errorsSchema = z.object({ needless: errorRateSchema, missed: errorRateSchema });
export type Errors = Shape<typeof errorsSchema>;

const notKnown = <R extends string>(reasons: readonly [R, ...R[]]) =>
  z.object({
    known: z.literal(false),
    reason: z.enum(reasons),
    problem: problemSchema.describe('What was found, what would be needed, and how to get it.'),
    figures: z
      .object({ have: z.number(), need: z.number() })
      .nullable()
      .describe('How many there are and how many it takes, where that is what is missing.'),
  });

const nights = z.number().describe('Trap-nights.');

const sideBySideLessonSchema = z
  .object({
    insect: z.string(),
    compared: z.enum(['design', 'lure-life']),
    leftOut: z.object({
      'no-information': nights,
      doubtful: nights,
      'lure-spent': nights,
      'lure-not-stated': nights,
      'other-nights': nights,
      older: nights,
    }),
    lureUnknown: nights,
    used: z.int(),
    learned: z.discriminatedUnion('known', [
      z.object({
        known: z.literal(true),
        ratios: z.array(
          z.object({
            treatment: z.string(),
            against: z.string(),
            ratio: estimateSchema,
            sharedBlocks: z.int(),
            sites: z.int(),
            scatter: z.enum(['seen', 'assumed']).describe('Whether differences between sites were seen or assumed.'),
            siteLogSd: z.number(),
            sitesForUsefulRatio: z.int(),
            seasons: z.array(z.object({ season: z.int(), ratio: estimateSchema, sharedBlocks: z.int(), sites: z.int() })),
            trend: z
              .object({
                perYear: estimateSchema,
                clear: z.boolean(),
                first: z.object({ season: z.int(), ratio: z.number() }),
                last: z.object({ season: z.int(), ratio: z.number() }),
              })
              .nullable(),
            published: z
              .object({ low: z.number(), high: z.number(), source: z.string() })
              .nullable()
              .describe('What is published of these two designs for the insect, in the same direction; null: nothing.'),
          }),
        ),
        leftOut: z.object({ alone: z.int(), empty: z.int() }),
      }),
      notKnown(['one-treatment', 'too-few-shared-nights', 'too-few-moths']),
    ]),
  })
  .meta({ id: 'SideBySideLesson' });
export type SideBySideLesson = Shape<typeof sideBySideLessonSchema>;

const lureLessonSchema = z
  .object({
    insect: z.string(),
    leftOut: z.object({
      noInformation: z.int(),
      doubtful: z.int(),
      ageUnknown: z.int(),
      alone: z.int(),
      older: z.int(),
    }),
    used: z.int(),
    learned: z.discriminatedUnion('known', [
      z.object({
        known: z.literal(true),
        perWeek: boundedEstimateSchema.describe('Catch after a week of age against before, as a factor.'),
        halfLifeDays: boundedEstimateSchema,
        weakens: z.boolean(),
        oldestDays: z.number(),
        curve: z
          .array(z.object({ ageDays: z.number(), value: z.number(), ...interval }))
          .describe("Catch as a share of a fresh lure's, up to the oldest lure seen."),
      }),
      notKnown(['changed-together', 'never-changed', 'too-few-observations', 'no-fit']),
    ]),
  })
  .meta({ id: 'LureLesson' });
export type LureLesson = Shape<typeof lureLessonSchema>;

const infestationSampleSchema = z
  .object({
    field: z.string(),
    name: z.string(),
    farm: z.string(),
    sampledOn: isoDay,
    examined: z.int(),
    found: z.int(),
    perNight: z
      .number()
      .nullable()
      .describe('Moths per trap per night at the lag; null where no lag is known or no catch at it.'),
  })
  .meta({ id: 'InfestationSample' });
export type InfestationSample = Shape<typeof infestationSampleSchema>;

const responseSchema = z.enum(['share-infested', 'count-per-unit']);

const catchToInfestationSchema = z.object({
  known: z.literal(true),
  response: responseSchema,
  lag: estimateSchema
    .extend({ openBelow: z.boolean(), openAbove: z.boolean() })
    .describe('Days, or degree-days where the lesson names a model.'),
  lagDays: z.number().nullable().describe('As many days as it was in the mean of the samples; null where no catch is near it.'),
  profile: z.array(z.object({ lag: z.number(), logLikelihood: z.number() })),
  heterogeneity: z.number(),
  curve: z.array(z.object({ perNight: z.number(), value: z.number(), ...interval })),
  suggestion: z.object({ perNight: z.number(), notCalled: z.int(), errors: errorsSchema }),
  leftOut: z.int(),
});
export type CatchToInfestationKnown = Shape<typeof catchToInfestationSchema>;

const infestationLessonSchema = z
  .object({
    insect: z.string(),
    crop: z.string(),
    kind: z.string(),
    design: trapDesignSchema,
    response: responseSchema,
    ruleLevel: z.number().nullable(),
    heat: z
      .object({ modelId: z.string(), unit: z.enum(['C', 'F']) })
      .nullable()
      .describe('The model in whose degree-days the lag is told; null: in days.'),
    used: z.int(),
    leftOut: z.object({ notCounted: z.int(), treated: z.int(), noCatch: z.int() }),
    samples: z.array(infestationSampleSchema),
    learned: z.discriminatedUnion('known', [
      catchToInfestationSchema,
      notKnown(['too-few-pairs', 'too-few-fields', 'one-sided', 'no-relation', 'outside-catches', 'no-fit', 'no-rule-level']),
    ]),
    inForce: z
      .object({
        ruleId: z.string(),
        source: z.string(),
        standing: standingSchema,
        perNight: z.number().describe('Moths per trap per night from which it asks for a decision.'),
        stages: z.array(z.string()),
        intervalDays: z.int().nullable(),
        errors: errorsSchema.nullable().describe('Null while no lag is known.'),
      })
      .nullable()
      .describe('The rule that reads the catch today.'),
  })
  .meta({ id: 'InfestationLesson' });
export type InfestationLesson = Shape<typeof infestationLessonSchema>;

export const lessonsSchema = z
  .object({
    on: isoDay,
    level: z.number().describe('Confidence level of every interval.'),
    sideBySide: z.array(sideBySideLessonSchema),
    lures: z.array(lureLessonSchema),
    infestation: z.array(infestationLessonSchema),
  })
  .meta({ id: 'Lessons' });
export type LessonsView = Shape<typeof lessonsSchema>;
