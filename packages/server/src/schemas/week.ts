import type { WeekView } from '@duskwatch/core';
import { z } from 'zod';
import { advice, design, verb } from './advice.ts';
import { date } from './common.ts';

export const named = z.object({ name: z.string(), invented: z.boolean().describe('True for demonstration data.') });

export const localName = z.object({ en: z.string(), es: z.string() });

export const insectName = z.object({ id: z.string(), scientificName: z.string(), commonName: localName });

export const observedStage = z.object({ stage: z.string(), observedOn: date });

export const seasonPoint = z.object({
  from: date,
  to: date,
  perNight: z.number().nullable(),
  low: z.number().nullable(),
  high: z.number().nullable(),
});

export const seasonLine = z.object({
  design,
  from: date,
  to: date,
  points: z.array(seasonPoint),
  thresholdPerNight: z.number().nullable(),
});

const dueField = z.object({
  fieldId: z.string(),
  name: z.string(),
  farm: z.string(),
  insect: z.string(),
  verb,
  by: date.nullable(),
});

const dueTrap = z.object({
  trapId: z.string(),
  station: z.string(),
  insect: z.string(),
  why: z.enum(['check-due', 'check-overdue', 'unfit', 'lure-due', 'lure-overdue']),
  due: date,
  daysLate: z.int(),
});

export const weekView: z.ZodType<WeekView> = z.object({
  program: named,
  on: date,
  countsTo: date.nullable(),
  weatherTo: date.nullable(),
  insects: z.array(insectName),
  due: z.object({
    decisions: z.array(dueField),
    scouting: z.array(dueField),
    checks: z.array(dueTrap),
    lures: z.array(dueTrap),
  }),
  fields: z.array(
    z.object({
      fieldId: z.string(),
      name: z.string(),
      farm: z.string(),
      crop: z.string(),
      growthHabit: z.string().nullable(),
      stage: observedStage.nullable(),
      cells: z.array(z.object({ advice, line: seasonLine.nullable() })),
    }),
  ),
});
