import type { FieldFlightsView, FlightRows, FlightView, KBasis } from '@duskwatch/core';
import { z } from 'zod';
import { design, standing } from './advice.ts';
import { date } from './common.ts';
import { event } from './field.ts';
import { localName } from './week.ts';

const dates = z.object({
  early: date,
  middle: date,
  late: date,
  lateOpen: z.boolean(),
  method: z.enum(['reached', 'own-forecast', 'past-years', 'recent-days']),
  years: z.int(),
});
const interval = { low: z.number(), high: z.number() };
const moment = z.object({ heat: z.number(), ...interval, dates: dates.nullable() });
const flight: z.ZodType<FlightView> = z.object({
  number: z.int(),
  moths: z.object({ estimate: z.number(), ...interval }),
  start: moment.describe('5 % of the flight has flown.'),
  peak: moment,
  end: moment.describe('95 % of the flight has flown.'),
  flown: z.object({ share: z.number(), ...interval }),
  status: z.enum(['to-come', 'running', 'over']),
});
const noFlights = z.enum(['no-trap', 'no-model', 'no-weather-source', 'no-heat', 'nothing-caught']).nullable();
const basis: z.ZodType<KBasis> = z.discriminatedUnion('from', [
  z.object({ from: z.literal('own-checks'), ...interval, counts: z.int() }),
  z.object({ from: z.literal('assumed'), why: z.enum(['too-few-checks', 'no-scatter-found', 'no-fit']) }),
]);

const season = z.object({
  design,
  traps: z.int(),
  modelName: localName,
  unit: z.enum(['C', 'F']).describe('Unit of the degree-days.'),
  axisFrom: date,
  heatSoFar: z.number(),
  knownThrough: date,
  list: z.array(flight),
  tried: z.array(z.object({ flights: z.int(), bic: z.number() })).describe('Numbers of flights tried, lowest BIC first.'),
  unsure: z.boolean(),
  level: z.number(),
  k: z.number().nullable(),
  kBasis: basis,
  moths: z.int(),
  intervals: z.int(),
  leftOut: z.int(),
  curve: z.array(z.object({ on: date, perNight: z.array(z.number()) })),
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
});

const forecast = z.object({
  modelId: z.string(),
  forecastThrough: date.nullable(),
  events: z.array(
    z.object({
      event,
      generation: z.int().nullable(),
      begins: dates,
      before: z.array(z.object({ asOf: date, dates })).describe('With the weather known some days earlier.'),
    }),
  ),
});

const stageDays = z.object({ from: date, to: date.nullable() });
const larvae = z.object({
  modelName: localName,
  source: z.string(),
  standing,
  design,
  measuredThrough: date,
  hatch: z.object({ ten: date.nullable(), half: date.nullable(), ninety: date.nullable() }),
  worthGoing: dates.nullable(),
  days: z.array(z.object({ on: date, egg: z.number(), small: z.number(), large: z.number() })),
  twoSizes: z.boolean(),
  rows: z.array(
    z.object({
      trapId: z.string(),
      from: date,
      to: date,
      moths: z.int(),
      eggs: stageDays,
      smallLarvae: stageDays.nullable(),
      largeLarvae: stageDays.nullable(),
    }),
  ),
});

export const fieldFlights: z.ZodType<FieldFlightsView> = z.object({
  on: date,
  fieldId: z.string(),
  weatherSource: z.string().nullable(),
  insects: z.array(
    z.object({
      insect: z.string(),
      flights: season.nullable(),
      noFlights,
      forecasts: z.array(forecast),
      larvae: larvae.nullable(),
    }),
  ),
});

export const flightRows: z.ZodType<FlightRows> = z.object({
  on: date,
  of: z.int().describe('Rows there are in all.'),
  next: z.int().nullable().describe('Ask again from this row on; null: that was all.'),
  rows: z.array(
    z.object({
      fieldId: z.string(),
      field: z.string(),
      farm: z.string(),
      insect: z.string(),
      design: design.nullable(),
      list: z.array(flight),
      unsure: z.boolean(),
      moths: z.int(),
      noFlights,
    }),
  ),
});
