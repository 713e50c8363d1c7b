import type { LearnView, ReviewView, YearsView } from '@duskwatch/core';
import { UNFIT_REASONS } from '@duskwatch/core';
import { z } from 'zod';
import { design, verb } from './advice.ts';
import { date, problem } from './common.ts';

const estimate = z.object({ value: z.number(), low: z.number(), high: z.number(), level: z.number() });
const bounded = z.object({
  value: z.number().nullable(),
  low: z.number().nullable(),
  high: z.number().nullable(),
  level: z.number(),
});

const notKnown = <R extends string>(reasons: readonly [R, ...R[]]) =>
  z.object({
    known: z.literal(false),
    reason: z.enum(reasons),
    problem,
    figures: z.object({ have: z.number(), need: z.number() }).nullable(),
  });

const nights = z.number().describe('Trap-nights.');

const sideBySide = z.object({
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
  learned: z.union([
    z.object({
      known: z.literal(true),
      ratios: z.array(
        z.object({
          treatment: z.string(),
          against: z.string(),
          ratio: estimate,
          sharedBlocks: z.int(),
          sites: z.int(),
          scatter: z.enum(['seen', 'assumed']).describe('Whether differences between sites were seen or assumed.'),
          siteLogSd: z.number(),
          sitesForUsefulRatio: z.int(),
          seasons: z.array(z.object({ season: z.int(), ratio: estimate, sharedBlocks: z.int(), sites: z.int() })),
          trend: z
            .object({
              perYear: estimate,
              clear: z.boolean(),
              first: z.object({ season: z.int(), ratio: z.number() }),
              last: z.object({ season: z.int(), ratio: z.number() }),
            })
            .nullable(),
          published: z.object({ low: z.number(), high: z.number(), source: z.string() }).nullable(),
        }),
      ),
      leftOut: z.object({ alone: z.int(), empty: z.int() }),
    }),
    notKnown(['one-treatment', 'too-few-shared-nights', 'too-few-moths']),
  ]),
});

const lure = z.object({
  insect: z.string(),
  leftOut: z.object({ noInformation: z.int(), doubtful: z.int(), ageUnknown: z.int(), alone: z.int(), older: z.int() }),
  used: z.int(),
  learned: z.union([
    z.object({
      known: z.literal(true),
      perWeek: bounded.describe('Catch after a week of age against before.'),
      halfLifeDays: bounded.describe('Null: without end.'),
      weakens: z.boolean(),
      oldestDays: z.number(),
      curve: z.array(z.object({ ageDays: z.number(), value: z.number(), low: z.number(), high: z.number() })),
    }),
    notKnown(['changed-together', 'never-changed', 'too-few-observations', 'no-fit']),
  ]),
});

const errorRate = z.object({
  wrong: z.int(),
  of: z.int(),
  share: z.number().nullable(),
  low: z.number(),
  high: z.number(),
});
const errors = z.object({ needless: errorRate, missed: errorRate });
const response = z.enum(['share-infested', 'count-per-unit']);

const infestation = z.object({
  insect: z.string(),
  crop: z.string(),
  kind: z.string(),
  design,
  response,
  ruleLevel: z.number().nullable(),
  used: z.int(),
  leftOut: z.object({ notCounted: z.int(), treated: z.int(), noCatch: z.int() }),
  samples: z.array(
    z.object({
      field: z.string(),
      name: z.string(),
      farm: z.string(),
      sampledOn: date,
      examined: z.int(),
      found: z.int(),
      perNight: z.number().nullable(),
    }),
  ),
  learned: z.union([
    z.object({
      known: z.literal(true),
      response,
      lag: estimate.extend({ openBelow: z.boolean(), openAbove: z.boolean() }),
      profile: z.array(z.object({ lag: z.number(), logLikelihood: z.number() })),
      heterogeneity: z.number(),
      curve: z.array(z.object({ perNight: z.number(), value: z.number(), low: z.number(), high: z.number() })),
      suggestion: z.object({ perNight: z.number(), notCalled: z.int(), errors }),
      leftOut: z.int(),
    }),
    notKnown(['too-few-pairs', 'one-sided', 'no-relation', 'outside-catches', 'no-fit', 'no-rule-level']),
  ]),
  inForce: z
    .object({
      ruleId: z.string(),
      source: z.string(),
      standing: z.enum(['published', 'practice', 'memory', 'own']),
      perNight: z.number(),
      stages: z.array(z.string()),
      intervalDays: z.int().nullable(),
      errors: errors.nullable(),
    })
    .nullable(),
});

export const learnView: z.ZodType<LearnView> = z.object({
  on: date,
  level: z.number(),
  sideBySide: z.array(sideBySide),
  lures: z.array(lure),
  infestation: z.array(infestation),
});

const part = z.object({
  timing: z.array(
    z.object({
      insect: z.string(),
      design,
      traps: z.int(),
      moths: z.int(),
      perNight: z.object({ value: z.number(), low: z.number(), high: z.number() }).nullable(),
      firstCatch: date.nullable(),
      peak: z.object({ from: date, to: date, perNight: z.number() }).nullable(),
      tenth: date.nullable(),
      half: date.nullable(),
      nineTenths: date.nullable(),
      unseenNights: z.int(),
      blindTrapNights: z.int(),
    }),
  ),
  visits: z.object({
    visits: z.int(),
    luresPlaced: z.int(),
    luresWithoutLife: z.int(),
    trapsWithoutLure: z.array(z.string()),
    unfit: z.array(z.object({ reason: z.enum(UNFIT_REASONS).nullable(), visits: z.int(), traps: z.int() })),
    missed: z.array(z.object({ trapId: z.string(), from: date, to: date.nullable(), nights: z.int() })),
    lateLures: z.array(z.object({ trapId: z.string(), dueOn: date, changedOn: date.nullable(), daysLate: z.int() })),
  }),
  calls: z.object({
    given: z.object({
      watch: z.int(),
      scout: z.int(),
      decide: z.int(),
      covered: z.int(),
      blind: z.int(),
      none: z.int(),
    }),
    scoutSampled: z.int(),
    decideSampled: z.int(),
    decideTreated: z.int(),
    sampledInfested: z.int(),
  }),
  rows: z.array(
    z.object({
      field: z.string(),
      name: z.string(),
      insect: z.string(),
      verb,
      from: date,
      to: date,
      ruleId: z.string().nullable(),
      sample: z.object({ on: date, kind: z.string(), examined: z.int(), infested: z.int().nullable() }).nullable(),
      treatment: z.object({ on: date, product: z.string() }).nullable(),
    }),
  ),
  work: z.object({ traps: z.int(), lures: z.int(), visits: z.int(), samples: z.int(), decisions: z.int() }),
});

export const reviewView: z.ZodType<ReviewView> = z.object({
  year: z.int(),
  from: date,
  to: date,
  through: date,
  open: z.boolean(),
  within: z.int(),
  daysChecked: z.int(),
  daysRead: z.int(),
  program: part,
  farms: z.array(part.extend({ farm: z.string() })),
  uncalled: z.array(z.object({ farm: z.string(), name: z.string(), insect: z.string(), on: date })),
});

export const yearsView: z.ZodType<YearsView> = z.object({
  insect: z.string(),
  heat: z
    .object({
      rule: z.object({
        method: z.string(),
        cutoff: z.string(),
        lower: z.number(),
        upper: z.number().nullable(),
        unit: z.enum(['F', 'C']),
      }),
      modelId: z.string(),
      sourceId: z.string(),
    })
    .nullable() as z.ZodType<YearsView['heat']>,
  noHeat: z.enum(['no-model', 'no-weather-source', 'several-weather-sources']).nullable(),
  lines: z.array(
    z.object({
      year: z.int(),
      open: z.boolean(),
      design,
      traps: z.int(),
      stations: z.array(z.string()),
      points: z.array(
        z.object({
          from: date,
          to: date,
          drawnFrom: date,
          drawnTo: date,
          heatFrom: z.number().nullable(),
          heatTo: z.number().nullable(),
          perNight: z.number().nullable(),
          low: z.number().nullable(),
          high: z.number().nullable(),
          shareSoFar: z.number().nullable(),
        }),
      ),
    }),
  ),
});
