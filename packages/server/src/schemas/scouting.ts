import { LANGUAGES, type ScoutingView } from '@duskwatch/core';
import { z } from 'zod';
import { verb } from './advice.ts';
import { asOf, date } from './common.ts';
import { insectName, localName, named, observedStage } from './week.ts';

const unit = z.enum(['plants', 'ears', 'fruit']);
const walk = z
  .object({ places: z.int(), perPlace: z.int() })
  .describe('So many units at each place of a lap, new places on the next one.');
const standing = z.enum(['published', 'practice', 'memory', 'own', 'chosen']);
const assumed = z.array(
  z.object({
    id: z.string(),
    value: z.number(),
    unit: localName,
    why: localName,
    source: z.string(),
    standing,
    note: localName.nullable().exactOptional(),
  }),
);

const distribution = z.union([
  z.object({ kind: z.literal('negative-binomial'), k: z.number() }),
  z.object({ kind: z.literal('poisson') }),
  z.object({ kind: z.literal('binomial') }),
]);

const plan = z.object({
  test: z
    .object({
      distribution,
      m0: z.number().describe('Share of units, or insects per unit, at which the field is surely below.'),
      m1: z.number().describe('At which it is surely above.'),
      alpha: z.number(),
      beta: z.number(),
      slope: z.number(),
      lowerIntercept: z.number(),
      upperIntercept: z.number(),
      designEffect: z.number().describe('By how many times the lines are moved out so that the plan keeps its risks.'),
      weight: z.number(),
    })
    .describe('Stop below at a total of slope·n + lowerIntercept or less, above at slope·n + upperIntercept or more.'),
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
  standing,
  walk,
  clumping: z
    .object({ correlation: z.number(), samples: z.int(), places: z.int() })
    .nullable()
    .describe('Where the correlation is from: so many own samples; none: assumed. Null: set by hand.'),
  assumed,
});

const pair = z.object({
  insect: z.string(),
  verb,
  by: date.nullable(),
  rules: z.array(z.object({ ruleId: z.string(), match: z.enum(['now', 'any', 'unknown', 'not-yet', 'over']) })),
  lastSample: z
    .object({
      sampledOn: date,
      kind: z.string(),
      examined: z.int(),
      infested: z.int().nullable(),
      total: z.int().nullable(),
    })
    .nullable(),
});

export const scoutingView: z.ZodType<ScoutingView> = z.object({
  program: named,
  on: date,
  insects: z.array(insectName),
  crops: z.array(z.object({ crop: z.string(), stages: z.array(z.object({ id: z.string(), name: localName })) })),
  plans: z.array(plan),
  counting: z.array(z.object({ insect: z.string(), unit, units: z.int(), walk, correlation: z.number(), assumed })),
  looks: z.array(z.object({ insect: z.string(), crop: z.string(), unit: z.string(), text: localName, source: z.string() })),
  fields: z.array(
    z.object({
      fieldId: z.string(),
      name: z.string(),
      farm: z.string(),
      crop: z.string(),
      growthHabit: z.string().nullable(),
      latitude: z.number().nullable(),
      longitude: z.number().nullable(),
      stage: observedStage.nullable(),
      keepOut: z.array(z.object({ until: date, hours: z.number(), product: z.string() })),
      pairs: z.array(pair),
    }),
  ),
});

/** An address holds so many; more are printed by leaving all of them out, or in two goes. */
export const MOST_SHEETS = 100;

const risk = z.coerce.number().gt(0).lt(0.5).optional();
const level = z.coerce.number().gt(0).max(1_000).optional();

export const sheetsQuery = asOf.extend({
  sheet: z
    .union([z.string(), z.array(z.string()).max(MOST_SHEETS)])
    .optional()
    .describe('`field|insect` or `field|insect|rule`, once for each sheet. Default: all that is to be scouted on the day.'),
  paper: z.enum(['a4', 'letter']).default('a4'),
  language: z.enum(LANGUAGES).default('en'),
  alpha: risk.describe('Accepted risk of calling a field above that is surely below.'),
  beta: risk.describe('Accepted risk of calling a field below that is surely above.'),
  m0: level.describe('Surely below: share of units, or insects per unit.'),
  m1: level.describe('Surely above.'),
  correlation: z.coerce.number().min(0).lt(1).optional().describe('Of any two units at one place.'),
  k: level.describe('Dispersion per unit, where insects or egg masses are counted.'),
});
