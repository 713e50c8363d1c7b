/** One field: its season with every insect, and what the verbs rest on. */
import { z } from 'zod';
import { ratePointSchema } from '../advice/rate-points.ts';
import { adviceSchema, expectedSchema, verbSchema } from '../advice/types.ts';
import type { Shape } from '../base/shape.ts';
import { eventSchema, localTextSchema, standingSchema } from '../catalogue/schema.ts';
import { conditionSchema, decisionSchema, isoDay, RATE_UNITS, trapDesignSchema } from '../records/schema.ts';
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

const ruleShownSchema = z
  .object({
    ruleId: z.string(),
    kind: z.enum(['catch', 'infestation']),
    region: z.string().describe('Empty when it is not tied to one.'),
    may: z.enum(['decide', 'send-scouting']),
    standing: standingSchema,
    source: z.string(),
    stages: z.array(z.string()).describe('Stages at which it holds; empty: any.'),
    design: trapDesignSchema.nullable().describe('Null: the rule names none.'),
    steps: z
      .array(
        z.object({
          fromPerNight: z.number(),
          belowPerNight: z.number().nullable(),
          figure: z.number().describe('As the rule has it, in `per`.'),
          per: z.enum(['night', 'week']),
          intervalDays: z.int().nullable().describe('Days between decisions.'),
          inForce: z.boolean().describe('The present catch stands in this step of the rule in use.'),
        }),
      )
      .describe('Of a catch rule: from which figures on it asks for something.'),
    sample: z
      .object({ unit: z.string(), sign: z.string(), share: z.number(), examine: z.int() })
      .nullable()
      .describe('Of a rule for what is found on the plants.'),
    inUse: z.boolean(),
    says: verbSchema.nullable().describe('Null where the records give it nothing to speak of.'),
    harvestStopDays: z.int().nullable().describe('It asks for nothing when fewer days than these are left to harvest.'),
    weather: z
      .array(
        z.object({
          when: z.enum(['maxima-below', 'maxima-above']),
          temperatureC: z.number(),
          days: z.int(),
          addDays: z.int(),
          applied: z.boolean().nullable(),
        }),
      )
      .describe('Changes of the interval in cool or hot weather.'),
  })
  .meta({ id: 'RuleShown', description: 'One rule for a field and an insect, with what it says of what is known now.' });
export type RuleShown = Shape<typeof ruleShownSchema>;

const otherwiseSchema = z
  .object({
    when: z.enum([
      'catch-below',
      'catch-over',
      'treated',
      'decided-not',
      'sample-above',
      'sample-below',
      'cover-over',
      'no-check',
    ]),
    perNight: z.number().nullable(),
    verb: verbSchema,
    intervalDays: z.int().nullable().describe('Days between decisions that the rule would then give.'),
    on: isoDay.nullable(),
  })
  .meta({ id: 'Otherwise', description: 'What would change the verb, and to which.' });
export type Otherwise = Shape<typeof otherwiseSchema>;

const decisionsAheadSchema = z
  .object({
    again: z.array(isoDay).describe('While the catch holds, if it were decided on the day read.'),
    noneFrom: isoDay.nullable().describe('First day from which the rule asks no more, harvest being near.'),
  })
  .meta({ id: 'DecisionsAhead' });
export type DecisionsAhead = Shape<typeof decisionsAheadSchema>;

const treatmentShownSchema = z
  .object({
    appliedOn: isoDay,
    appliedAt: z.string().nullable(),
    product: z.string().describe('Empty where nobody knows which.'),
    rate: z.number().nullable(),
    rateUnit: z.enum(RATE_UNITS).nullable(),
    protectsUntil: isoDay.nullable(),
    coversUntil: isoDay
      .nullable()
      .describe('First day no longer covered by the one treatment that the advice speaks of; null for others.'),
  })
  .meta({ id: 'TreatmentShown' });

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
    samples: z.array(sampleShownSchema.extend({ photo: z.string().nullable() })),
    treatments: z.array(treatmentShownSchema),
    decisions: z.array(decisionSchema.pick({ decidedOn: true, decision: true, reason: true, note: true })),
    rules: z.array(ruleShownSchema).describe('The one in use first.'),
    otherwise: z.array(otherwiseSchema).describe('What would change the verb.'),
    ahead: decisionsAheadSchema,
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
