/** The flights of a program: where each insect is in its flight, farm by farm, and what happens next. */
import { z } from 'zod';
import { datesSchema, verbSchema } from '../advice/types.ts';
import type { Shape } from '../base/shape.ts';
import { isoDay, trapDesignSchema } from '../records/schema.ts';
import { flightSchema, noFlightsSchema, stageDaysSchema } from './flights-schema.ts';

const nextEventSchema = z
  .object({
    what: z.enum(['start', 'peak', 'end', 'larvae']).describe('Of a flight; or the day small larvae are worth looking for.'),
    flight: z.int().nullable().describe('Which flight of the season, from 1; null for larvae.'),
    dates: datesSchema,
  })
  .meta({ id: 'NextEvent' });
export type NextEvent = Shape<typeof nextEventSchema>;

const ridgeSchema = z
  .object({
    from: isoDay.describe('The first day; each figure is of one day more.'),
    known: z.int().describe('How many of the days are measured; heat after them is expected heat.'),
    perNight: z
      .array(z.array(z.number()))
      .describe('Of each flight, moths per trap and night expected by the fitted curve: three figures.'),
    heat: z.array(z.number()).describe('Degree-days from the start of the axis through each day.'),
    unit: z.enum(['C', 'F']),
  })
  .meta({ id: 'FlightRidge' });
export type FlightRidge = Shape<typeof ridgeSchema>;

const flightFieldSchema = z.object({
  fieldId: z.string(),
  name: z.string(),
  verb: verbSchema,
  by: isoDay.nullable(),
  dueSince: isoDay.nullable(),
});

const farmFlightsSchema = z
  .object({
    farm: z.string(),
    insect: z.string(),
    design: trapDesignSchema.nullable().describe('Of the traps that the flights are read from: those that caught most.'),
    traps: z.int(),
    moths: z.int().describe('Caught by these traps this season.'),
    noFlights: noFlightsSchema,
    unsure: z.boolean().describe('Another number of flights fits nearly as well.'),
    other: z.int().nullable().describe('That number; null where the number is sure.'),
    list: z.array(flightSchema),
    next: nextEventSchema.nullable().describe('What comes first from the day on; null: nothing that is dated.'),
    ridge: ridgeSchema.nullable(),
    eggs: stageDaysSchema.nullable().describe('Days on which a twentieth or more of the offspring of the moths caught are eggs.'),
    larvae: stageDaysSchema.nullable().describe('The same of larvae.'),
    fields: z.array(flightFieldSchema).describe('Those that the traps inform, the most pressing first.'),
  })
  .meta({ id: 'FarmFlights', description: "One insect on one farm in the list of a program's flights." });
export type FarmFlights = Shape<typeof farmFlightsSchema>;

export const flightRowsSchema = z
  .object({
    on: isoDay,
    of: z.int().describe('Rows there are in all.'),
    next: z.int().nullable().describe('Ask again from this row on; null: that was all.'),
    rows: z.array(farmFlightsSchema),
  })
  .meta({ id: 'FlightRows' });
export type FlightRows = Shape<typeof flightRowsSchema>;
