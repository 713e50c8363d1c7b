import { CONDITIONS, type EventId, type FieldView } from '@duskwatch/core';
import { z } from 'zod';
import { advice, design, oneOf, standing } from './advice.ts';
import { date } from './common.ts';
import { insectName, localName, named, observedStage, seasonLine, seasonPoint } from './week.ts';

const checkMark = z.object({
  trapId: z.string(),
  on: date,
  visits: z.array(z.int()),
  nights: z.int(),
  count: z.int().nullable(),
  others: z.int().nullable(),
  condition: z.enum(CONDITIONS),
  lureAgeDays: z.int().nullable(),
  lurePastLife: z.boolean().nullable(),
  note: z.string().nullable(),
});

const expectedDay = z.object({
  early: date,
  middle: date,
  late: date,
  lateOpen: z.boolean(),
  method: z.enum(['reached', 'own-forecast', 'past-years', 'recent-days']),
  years: z.int(),
  forecastThrough: date.nullable().describe("Last day of the user's own weather forecast that the dates rest on."),
});

export const event = oneOf<EventId>({
  'set-out-traps': true,
  'first-moth': true,
  'first-eggs': true,
  'egg-hatch': true,
  'peak-flight': true,
  'treatment-period': true,
  'adult-emergence': true,
  'small-larvae': true,
  'large-larvae': true,
  'first-cutting': true,
  cutting: true,
  'cutting-slows': true,
  'cutting-stops': true,
  pupation: true,
  'next-adults': true,
  'hatch-20-percent': true,
  'peak-egg-laying': true,
});

const heatStrip = z.object({
  modelId: z.string(),
  modelName: localName,
  source: z.string(),
  standing,
  unit: z.enum(['C', 'F']).describe('Unit of the degree-days.'),
  startsOn: date,
  startKind: z.enum(['calendar', 'biofix']),
  days: z.array(z.object({ date, total: z.number().nullable(), bridged: z.boolean() })),
  events: z.array(
    z.object({
      event,
      generation: z.int().nullable(),
      from: z.number(),
      to: z.number().nullable(),
      status: z.enum(['ahead', 'now', 'past']),
      expected: expectedDay.nullable(),
    }),
  ),
  gap: z.object({ from: date, to: date }).nullable(),
});

const fieldInsect = z.object({
  insect: insectName,
  advice,
  lines: z.array(seasonLine),
  earlierSeasons: z
    .array(z.object({ year: z.int(), design, stations: z.array(z.string()), points: z.array(seasonPoint) }))
    .describe('Catch of earlier seasons, its days moved to the same dates of this one.'),
  checks: z.array(checkMark),
  traps: z.array(z.object({ trapId: z.string(), station: z.string(), design, hungOn: date, takenDownOn: date.nullable() })),
  lures: z.array(z.object({ trapId: z.string(), placedOn: date, lifeDays: z.int().nullable() })),
  heat: z.array(heatStrip),
  samples: z.array(
    z.object({
      sampledOn: date,
      kind: z.string(),
      examined: z.int(),
      infested: z.int().nullable(),
      total: z.int().nullable(),
    }),
  ),
  treatments: z.array(z.object({ appliedOn: date, product: z.string(), protectsUntil: date.nullable() })),
});

export const fieldView: z.ZodType<FieldView> = z.object({
  program: named,
  on: date,
  field: z.object({
    fieldId: z.string(),
    name: z.string(),
    farm: z.string(),
    crop: z.string(),
    growthHabit: z.string().nullable(),
    plantedOn: date.nullable(),
    harvestOn: date.nullable(),
  }),
  from: date,
  to: date,
  stages: z.array(observedStage),
  insects: z.array(fieldInsect),
});
