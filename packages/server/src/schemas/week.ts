import type { CellReason, WeekView } from '@duskwatch/core';
import { z } from 'zod';
import { adviceInShort, design, oneOf, verb } from './advice.ts';
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
  fieldId: z.string().nullable().describe("A field whose advice rests on this trap; null when none of the week's does."),
});

type ReasonOf<K extends CellReason['kind']> = CellReason & { readonly kind: K };

const cellReason = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('out-of-season'),
    why: oneOf<ReasonOf<'out-of-season'>['why']>({
      'not-a-host': true,
      'not-planted': true,
      harvested: true,
      'harvest-stop': true,
      stage: true,
    }),
  }),
  z.object({
    kind: z.literal('missing'),
    what: oneOf<ReasonOf<'missing'>['what']>({
      trap: true,
      rule: true,
      stage: true,
      weather: true,
      'weather-source': true,
      model: true,
      biofix: true,
      crop: true,
      'nearby-crop': true,
      protection: true,
    }),
  }),
  z.object({
    kind: z.literal('trap-unusable'),
    why: oneOf<ReasonOf<'trap-unusable'>['why']>({
      'never-checked': true,
      overdue: true,
      unfit: true,
      'count-went-down': true,
      'left-uncounted': true,
      'not-hung': true,
      'taken-down': true,
    }),
  }),
  z.object({ kind: z.literal('lure-spent') }),
]);

const cellAdvice = adviceInShort.extend({
  reason: cellReason.nullable().describe('Why there is no date to give.'),
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
      cells: z.array(z.object({ advice: cellAdvice, line: seasonLine.nullable() })).describe('In the order of `insects`.'),
    }),
  ),
});
