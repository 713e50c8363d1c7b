/** Flights, dates to come and larvae of a field. */
import { z } from 'zod';
import { datesSchema } from '../advice/types.ts';
import type { Shape } from '../base/shape.ts';
import { eventSchema, localTextSchema, standingSchema } from '../catalogue/schema.ts';
import { isoDay, trapDesignSchema } from '../records/schema.ts';

export type DatesView = Shape<typeof datesSchema>;

const intervalSchema = z.object({ low: z.number(), high: z.number() });
export type IntervalView = Shape<typeof intervalSchema>;

const momentSchema = intervalSchema
  .extend({
    heat: z.number().describe('Degree-days on the axis of the flights, with the 80 % interval.'),
    dates: datesSchema.nullable().describe('Null: not dated.'),
  })
  .meta({ id: 'FlightMoment' });
export type FlightMomentView = Shape<typeof momentSchema>;

export const flightSchema = z
  .object({
    number: z.int(),
    moths: intervalSchema.extend({ estimate: z.number() }),
    start: momentSchema.describe('5 % of the flight has flown.'),
    peak: momentSchema,
    end: momentSchema.describe('95 % of the flight has flown.'),
    flown: intervalSchema.extend({
      share: z.number(),
      told: z
        .enum(['share', 'between', 'cannot-tell'])
        .describe('What may be said: the figure, only its 80 % interval, or not even that.'),
    }),
    status: z.enum(['to-come', 'running', 'over']),
  })
  .meta({ id: 'Flight' });
export type FlightView = Shape<typeof flightSchema>;

export const noFlightsSchema = z.enum(['no-trap', 'no-model', 'no-weather-source', 'no-heat', 'nothing-caught']).nullable();

const seasonFlightsSchema = z
  .object({
    design: trapDesignSchema,
    traps: z.int().describe('Of the design, informing the field.'),
    modelName: localTextSchema,
    unit: z.enum(['C', 'F']).describe('Unit of the degree-days.'),
    axisFrom: isoDay.describe('The day the heat axis begins.'),
    heatSoFar: z.number(),
    knownThrough: isoDay.describe('The last day measured.'),
    list: z.array(flightSchema),
    tried: z
      .array(z.object({ flights: z.int(), bic: z.number() }))
      .describe('Numbers of flights tried, lowest BIC first: the first is the one shown.'),
    unsure: z.boolean(),
    level: z.number(),
    scatter: z
      .object({ ofVisit: z.number(), ofNight: z.number() })
      .describe("Variances of a factor with mean 1: of one trap's visit, and of a night for all traps together."),
    together: z
      .object({ trapIds: z.array(z.string()), moths: z.int() })
      .describe('The traps of the region whose counts were fitted together, and their moths.'),
    expected: z
      .array(z.object({ heat: z.number(), spread: z.number(), seasons: z.int(), published: z.number().nullable() }))
      .describe('Peaks that the model or past seasons led one to expect, with one standard deviation.'),
    pastSeasons: z.array(z.int()).describe('Their years, newest first.'),
    moths: z.int().describe("Caught by the field's own traps."),
    intervals: z.int(),
    leftOut: z.int(),
    curve: z
      .array(z.object({ on: isoDay, perNight: z.array(z.number()) }))
      .describe('Moths per trap and night expected of each flight, night by night; heat after `knownThrough` is expected heat.'),
    agreement: z.array(
      z.object({
        flight: z.int().nullable(),
        compared: z.enum(['start', 'peak']),
        published: z.number(),
        tolerance: z.number(),
        difference: z.number().nullable(),
        verdict: z.enum(['agrees', 'early', 'late', 'cannot tell']),
        why: z.enum(['no-flight-near', 'number-of-flights-unsure', 'moment-too-uncertain']).nullable(),
      }),
    ),
  })
  .meta({ id: 'SeasonFlights' });
export type SeasonFlights = Shape<typeof seasonFlightsSchema>;

const forecastEventSchema = z
  .object({
    event: eventSchema,
    generation: z.int().nullable(),
    begins: datesSchema,
    before: z
      .array(z.object({ asOf: isoDay, dates: datesSchema }))
      .describe('What was expected with the weather known some days earlier, oldest first.'),
  })
  .meta({ id: 'ForecastEvent' });
export type ForecastEventView = Shape<typeof forecastEventSchema>;

const forecastSchema = z
  .object({
    modelId: z.string(),
    forecastThrough: isoDay
      .nullable()
      .describe("Last day of the user's own weather forecast that the dates rest on; null: none."),
    events: z.array(forecastEventSchema),
  })
  .meta({ id: 'Forecast' });
export type ForecastView = Shape<typeof forecastSchema>;

export const stageDaysSchema = z.object({ from: isoDay, to: isoDay.nullable().describe('Null: later than can be dated.') }).meta({
  id: 'StageDays',
  description: 'From the first moths of a catch to the last: the days on which one stage of their offspring is in the field.',
});
export type StageDays = Shape<typeof stageDaysSchema>;

const larvaeRowSchema = z
  .object({
    trapId: z.string(),
    from: isoDay,
    to: isoDay,
    moths: z.int(),
    eggs: stageDaysSchema,
    smallLarvae: stageDaysSchema.nullable(),
    largeLarvae: stageDaysSchema.nullable(),
  })
  .meta({ id: 'LarvaeRow' });
export type LarvaeRow = Shape<typeof larvaeRowSchema>;

const larvaeSchema = z
  .object({
    modelName: localTextSchema,
    source: z.string(),
    standing: standingSchema,
    design: trapDesignSchema,
    measuredThrough: isoDay,
    hatch: z.object({ ten: isoDay.nullable(), half: isoDay.nullable(), ninety: isoDay.nullable() }),
    worthGoing: datesSchema.nullable(),
    days: z
      .array(z.object({ on: isoDay, egg: z.number(), small: z.number(), large: z.number() }))
      .describe('Shares of the moths caught whose offspring are in a stage, day by day.'),
    twoSizes: z.boolean().describe('True where the model tells large larvae from small ones.'),
    rows: z.array(larvaeRowSchema).describe('Newest catch first; nights without moths are left out.'),
  })
  .meta({ id: 'Larvae' });
export type LarvaeView = Shape<typeof larvaeSchema>;

const insectFlightsSchema = z
  .object({
    insect: z.string(),
    flights: seasonFlightsSchema.nullable(),
    noFlights: noFlightsSchema,
    forecasts: z.array(forecastSchema),
    larvae: larvaeSchema.nullable(),
  })
  .meta({ id: 'InsectFlights' });
export type InsectFlights = Shape<typeof insectFlightsSchema>;

export const fieldFlightsSchema = z
  .object({
    on: isoDay,
    fieldId: z.string(),
    weatherSource: z
      .string()
      .nullable()
      .describe('Where a weather forecast for this field is written down; null: the field has no weather source.'),
    insects: z.array(insectFlightsSchema),
  })
  .meta({ id: 'FieldFlights' });
export type FieldFlightsView = Shape<typeof fieldFlightsSchema>;
