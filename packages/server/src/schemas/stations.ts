import { CONDITIONS, type StationsView, type TrapView, UNFIT_REASONS } from '@duskwatch/core';
import { z } from 'zod';
import { design, standing } from './advice.ts';
import { date } from './common.ts';
import { insectName, localName, named } from './week.ts';

const degrees = z.number().nullable();
const perNight = z.number().describe('Moths per night.');

const visit = z.object({
  on: date,
  visit: z.int(),
  count: z.int().nullable(),
  others: z.int().nullable(),
  condition: z.enum(CONDITIONS),
  emptied: z.boolean(),
  unfitReason: z.enum(UNFIT_REASONS).nullable(),
  note: z.string().nullable(),
  photo: z.string().nullable(),
});

const season = z.object({
  from: date,
  firstVisit: date,
  lastVisit: date,
  visits: z.int(),
  unfitVisits: z.int(),
  count: z.int(),
  nights: z.int(),
  peak: z.object({ on: date, perNight }).nullable(),
});

const trap = z.object({
  trapId: z.string(),
  insect: insectName,
  design,
  state: z.enum(['hanging', 'planned', 'taken-down']),
  hungOn: date,
  takenDownOn: date.nullable(),
  latitude: degrees,
  longitude: degrees,
  informs: z.array(z.object({ fieldId: z.string(), name: z.string(), farm: z.string() })),
  check: z.object({ due: date, state: z.enum(['not-due', 'due', 'overdue', 'unfit']), daysLate: z.int() }).nullable(),
  lure: z
    .object({
      placedOn: date,
      lifeDays: z.int().nullable(),
      ageDays: z.int(),
      ends: date.nullable(),
      spent: z.boolean().nullable(),
    })
    .nullable(),
  lastVisit: visit.nullable(),
  newest: z.object({ from: date, to: date, nights: z.int(), perNight }).nullable(),
  seasons: z.array(season),
});

const sourced = { source: z.string(), standing };

export const stationsView: z.ZodType<StationsView> = z.object({
  program: named,
  on: date,
  places: z.array(
    z.object({
      station: z.string(),
      place: z.int().describe('Which of the places that bore this station name, from 1.'),
      places: z.int(),
      latitude: degrees,
      longitude: degrees,
      movedM: z.number().nullable().describe('Metres from the place before.'),
      firstHungOn: date,
      inUse: z.boolean(),
      due: z.boolean(),
      traps: z.array(trap),
    }),
  ),
  designs: z.array(z.object({ design, name: localName, heightM: z.number().nullable(), siting: localName, ...sourced })),
  practices: z.array(
    z.object({
      id: z.string(),
      act: z.enum(['siting', 'setting-posts']),
      weight: z.enum(['fact', 'caution']),
      designs: z.array(design).nullable(),
      text: localName,
      ...sourced,
    }),
  ),
});

export const trapView: z.ZodType<TrapView> = trap.extend({
  on: date,
  station: z.string(),
  visits: z.array(visit),
  lures: z.array(z.object({ placedOn: date, lifeDays: z.int().nullable() })),
});
