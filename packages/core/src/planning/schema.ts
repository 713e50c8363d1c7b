/** The parts of a season plan, as it is worked out and as it is told. */
import { z } from 'zod';
import { dispersionSchema } from '../advice/dispersion-schema.ts';
import { eventSchema, standingSchema } from '../catalogue/schema.ts';
import { isoDay, trapDesignSchema } from '../records/schema.ts';

const chance = z.number().min(0).max(1);

export const trapNumberRowSchema = z
  .object({
    traps: z.int(),
    nightsBetweenChecks: z.int(),
    visits: z.int().describe('Visits to each trap behind one reading of the rule.'),
    precision: z
      .number()
      .describe('Half-width of the interval of the mean at the threshold, as a share of it, at a level assumed.'),
    missed: chance.describe('The rule is not reached although moths come well above it.'),
    falseAlarm: chance.describe('The rule is reached although moths come well below it.'),
    enough: z.boolean(),
  })
  .meta({ id: 'TrapNumberRow' });

export const plannedDesignSchema = z
  .object({
    design: trapDesignSchema.nullable().describe('Null: nobody knows, and the user must choose.'),
    why: z
      .enum(['stated', 'rule', 'used-before', 'practice', 'not-known'])
      .describe('`rule`: the rule was made for this design. `used-before`: the rule names none, and the program has used it.'),
    source: z.string().nullable(),
    standing: standingSchema.nullable(),
  })
  .meta({ id: 'PlannedDesign' });

export const plannedNumberSchema = z
  .object({
    count: z.int(),
    why: z
      .enum(['stated', 'risk', 'most', 'budget', 'no-rule'])
      .describe(
        '`risk`: the fewest that keep to the risks of a wrong verb. `most`: more would be needed than are kept up. `budget`: cut to the traps there are. `no-rule`: no catch rule to be wrong about, so the fewest that are safe from one failure.',
      ),
    quality: trapNumberRowSchema.nullable().describe('What this number is good for under the rule; null without one.'),
    proposed: z.int().describe('What was proposed before the budget cut it.'),
    dispersion: dispersionSchema.nullable(),
  })
  .meta({ id: 'PlannedNumber' });

export const plannedRuleSchema = z
  .object({
    ruleId: z.string(),
    thresholdPerNight: z.number(),
    windowNights: z.int(),
    source: z.string(),
    standing: standingSchema,
  })
  .meta({ id: 'PlannedRule' });

export const plannedTakeDownSchema = z
  .object({
    on: isoDay.nullable(),
    why: z
      .enum(['stated', 'harvest', 'harvest-as-before', 'as-before', 'assumed', 'not-known'])
      .describe('`harvest-as-before`, `as-before`: the date of an earlier season, a whole number of years on.'),
  })
  .meta({ id: 'PlannedTakeDown' });

/** One past growing year: when the event came, or why it is not known to have come. */
export const pastFlightSchema = z.discriminatedUnion('kind', [
  z.object({
    season: z.int(),
    kind: z.literal('reached'),
    on: isoDay,
    wait: z.int().describe("Days from the model's start, which is day 0."),
  }),
  z
    .object({ season: z.int(), kind: z.literal('not-reached'), heat: z.number() })
    .describe("The whole growing year is known and its heat, in the model's unit, stays below the event."),
  z
    .object({ season: z.int(), kind: z.literal('unknown'), from: isoDay, to: isoDay })
    .describe('Weather is missing before the event came: the year says nothing.'),
]);

export const noHeatReasonSchema = z
  .enum(['no-model', 'no-weather', 'no-whole-year', 'never-reached'])
  .describe(
    '`no-model`: none dates a first flight from a calendar day. `no-whole-year`: there is weather, but no year of it is known up to the event. `never-reached`: in no year did the heat suffice, so here the model expects no flight.',
  );

export const flightSpreadSchema = z
  .object({
    modelId: z.string(),
    event: eventSchema,
    from: z.number(),
    unit: z.enum(['C', 'F']).describe('Unit of the degree-days.'),
    years: z.array(pastFlightSchema).describe('Oldest first.'),
    earliest: isoDay.describe('Of the years that reached the event, carried to the season planned.'),
    median: isoDay,
    latest: isoDay,
    plausible: isoDay.describe(
      "The earlier of `earliest` and the day that one more year comes before only one time in ten; for a single year, that year's day less a stated margin.",
    ),
  })
  .meta({ id: 'FlightSpread' });

export const hangBySchema = z
  .discriminatedUnion('basis', [
    z.object({
      basis: z.literal('heat'),
      on: isoDay,
      leadDays: z.int(),
      spread: flightSpreadSchema,
      caution: z
        .enum(['one-year', 'some-years-without'])
        .nullable()
        .describe('`one-year`: the spread is an assumption. `some-years-without`: the flight does not come every year.'),
    }),
    z
      .object({
        basis: z.literal('chosen'),
        on: isoDay,
        proposed: isoDay,
        leadDays: z.int(),
        spread: flightSpreadSchema,
        caution: z.literal('late').nullable().describe('After the day from which the flight is plausible.'),
      })
      .describe("The user's day, beside the one that heat proposes."),
    z.object({
      basis: z.literal('stated'),
      on: isoDay,
      why: noHeatReasonSchema,
      years: z.array(pastFlightSchema),
    }),
    z.object({
      basis: z.literal('unknown'),
      on: z.null(),
      why: noHeatReasonSchema,
      years: z.array(pastFlightSchema),
    }),
  ])
  .meta({ id: 'HangBy' });

export const lureChangeSchema = z
  .object({
    on: isoDay,
    ageDays: z.int().describe('Days that the lure taken out has hung.'),
    extraVisit: z
      .boolean()
      .describe("True when no check falls within the lure's life, so that somebody must come for the lure alone."),
  })
  .meta({ id: 'LureChange' });

export const lureLifeSchema = z
  .object({
    days: z.int(),
    why: z
      .enum(['stated', 'own-records', 'practice'])
      .describe(
        "`own-records`: the life written with the program's newest lure for the insect. `practice`: the shorter usual one.",
      ),
    source: z.string().nullable(),
  })
  .meta({ id: 'LureLife' });

export const lureMonthSchema = z.object({
  insect: z.string(),
  month: z.string().describe('`YYYY-MM`.'),
  lures: z.int(),
});

export const lureNeedSchema = z
  .object({
    insect: z.string(),
    placed: z.int(),
    reserve: z.int().describe('Reserve and losses together, rounded up to whole lures.'),
    months: z.array(lureMonthSchema),
  })
  .meta({ id: 'LureNeed' });

export const lureOrderSchema = z
  .object({
    insect: z.string(),
    lures: z.int(),
    neededOn: isoDay.describe('The first day on which one of them is placed.'),
    orderBy: isoDay,
    late: z.boolean().describe('True when `orderBy` is already past.'),
    ordinal: z.int().describe('1 for the first order of the season.'),
  })
  .meta({ id: 'LureOrder' });

export const lureStockSchema = z.object({
  insect: z.string(),
  lures: z.int(),
  opened: z.boolean().describe('The package has been opened.'),
  expiresOn: isoDay.nullable().describe('Last day on which they may be placed; null when the package does not say.'),
});

export const stockUseSchema = lureStockSchema
  .extend({
    used: z.int(),
    left: z.int(),
    why: z
      .enum(['expires-before-use', 'opened-without-date', 'not-needed'])
      .nullable()
      .describe('Why some or all are not counted on: past their day before they are needed, or opened without a stated day.'),
  })
  .meta({ id: 'StockUse' });

export const costKindSchema = z.enum(['trap', 'lure', 'gloves', 'post', 'driving-hour', 'driving-km']);

export const rangeSchema = z.object({ low: z.number(), high: z.number() }).meta({ id: 'Range' });

export const priceShownSchema = rangeSchema
  .extend({ standing: z.enum([...standingSchema.options, 'user']), source: z.string().nullable() })
  .meta({ id: 'PriceShown' });

export const totalSchema = rangeSchema
  .extend({ atLeast: z.boolean().describe('Something has no price or no quantity: the true sum is at least this.') })
  .meta({ id: 'Total' });

export const trapStockSchema = z
  .object({
    design: trapDesignSchema.nullable(),
    needed: z.int(),
    kept: z.int(),
    wornOut: z.int(),
    bought: z.int(),
  })
  .meta({ id: 'TrapStock' });

export const placingQuestionSchema = z.discriminatedUnion('kind', [
  z
    .object({ kind: z.literal('one-spot'), trapIds: z.array(z.string()), farthestM: z.number() })
    .describe('Traps of one insect and design draw on the same moths: their catches are read, but count as one for precision.'),
  z
    .object({ kind: z.literal('no-coordinates'), station: z.string(), trapIds: z.array(z.string()) })
    .describe('The station is in no driving order and on no map; its traps are checked and read like others.'),
]);

export const truthCauseSchema = z
  .enum(['blind', 'not-hung', 'lure-spent', 'checks-missed', 'hung-late', 'other-design', 'not-telling', 'as-planned'])
  .describe('The gravest of what went otherwise than planned; the gravest first.');

export const deviationSchema = z
  .discriminatedUnion('kind', [
    z.object({
      kind: z.literal('hung-late'),
      trapId: z.string(),
      daysLate: z.int(),
      firstVisitCaught: z.boolean().describe('Moths were there before anybody looked.'),
    }),
    z.object({ kind: z.literal('not-hung'), missing: z.int(), daysLate: z.int() }),
    z.object({ kind: z.literal('other-design'), trapId: z.string(), design: z.string() }),
    z
      .object({ kind: z.literal('missed-checks'), trapId: z.string(), days: z.array(isoDay), planned: z.int() })
      .describe('Planned days without a visit until the next planned day.'),
    z.object({ kind: z.literal('lure-overdue'), trapId: z.string(), endedOn: isoDay, days: z.int() }),
    z.object({ kind: z.literal('lure-unknown'), trapId: z.string() }),
    z.object({ kind: z.literal('fewer-traps'), planned: z.int(), telling: z.int() }).describe('Traps on one spot count as one.'),
  ])
  .meta({ id: 'PlanDeviation' });

export const effectSchema = z
  .discriminatedUnion('kind', [
    z
      .object({ kind: z.literal('biofix-late'), trapIds: z.array(z.string()) })
      .describe('The start of the flight may have been missed: events dated from a biofix come out late.'),
    z.object({ kind: z.literal('out-of-sight') }).describe('No trap hangs, or none tells anything now.'),
    z
      .object({ kind: z.literal('reads-low'), trapIds: z.array(z.string()) })
      .describe('Catches read low, so that a rule may be reached unseen.'),
    z
      .object({ kind: z.literal('risks-grown'), planned: trapNumberRowSchema, now: trapNumberRowSchema })
      .describe('Risks of a wrong verb as planned and as things are.'),
    z
      .object({ kind: z.literal('rule-not-for-design'), trapIds: z.array(z.string()) })
      .describe('The rule was made for another design.'),
  ])
  .meta({ id: 'EffectOnAdvice' });
