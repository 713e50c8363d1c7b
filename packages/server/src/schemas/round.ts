import { CONDITIONS, type RoundView } from '@duskwatch/core';
import { z } from 'zod';
import { design } from './advice.ts';
import { date } from './common.ts';
import { localName, named, observedStage } from './week.ts';

const metres = z.number().nullable();

const lure = z.object({
  placedOn: date,
  lifeDays: z.int().nullable(),
  ageDays: z.int(),
  change: z.boolean().describe('It ends before the next visit would come.'),
});

const trap = z.object({
  trapId: z.string(),
  insect: z.string(),
  insectName: localName,
  scientificName: z.string(),
  design,
  hungOn: date,
  heightM: metres.describe('Height of the opening to keep, m.'),
  lastVisit: z
    .object({
      on: date,
      visit: z.int(),
      count: z.int().nullable(),
      condition: z.enum(CONDITIONS),
      emptied: z.boolean(),
    })
    .nullable(),
  checkDue: date,
  due: z.boolean(),
  lure: lure.nullable(),
  lookAlikes: z.array(z.object({ name: localName, note: localName })),
});

const field = z.object({
  fieldId: z.string(),
  name: z.string(),
  farm: z.string(),
  crop: z.string(),
  stage: observedStage.nullable(),
  stages: z.array(z.object({ id: z.string(), name: localName })),
  keepOut: z
    .array(z.object({ until: date, hours: z.number(), product: z.string() }))
    .describe('Re-entry intervals, as entered from the label, that are not over.'),
});

export const roundView: z.ZodType<RoundView> = z.object({
  program: named,
  on: date,
  stops: z.array(
    z.object({
      station: z.string(),
      latitude: z.number().nullable(),
      longitude: z.number().nullable(),
      due: z.boolean(),
      traps: z.array(trap),
      fields: z.array(field),
    }),
  ),
  dueLengthKm: z.number().describe('Great-circle kilometres past the stations that are due.'),
});
