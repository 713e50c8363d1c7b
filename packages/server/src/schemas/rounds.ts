import type { RoundsView } from '@duskwatch/core';
import { z } from 'zod';
import { asOf, date } from './common.ts';

export const roundsQuery = asOf.extend({ until: date.optional().describe('Last day of the plan. Default: the day itself.') });

export const roundsView: z.ZodType<RoundsView & { readonly drivingTimesFrom: string | null }> = z.object({
  program: z.object({ name: z.string(), invented: z.boolean() }),
  on: date,
  until: date,
  stations: z.array(
    z.object({
      id: z.string(),
      latitude: z.number().nullable(),
      longitude: z.number().nullable(),
      due: date,
      traps: z.int(),
      window: z.null().optional(),
      keepOutUntil: date.nullable().describe('Last day on which a recorded re-entry interval keeps people off.'),
      trapIds: z.array(z.string()),
      fields: z.array(z.object({ fieldId: z.string(), name: z.string(), farm: z.string() })),
    }),
  ),
  drivingTimesFrom: z.string().nullable().describe('Host that can be asked for driving times; it then learns the places.'),
});

/** The service’s own servers answer no more at once. */
const MOST_PLACES = 100;

export const placesBody = z.object({
  places: z
    .array(z.object({ id: z.string().max(200), latitude: z.number().min(-90).max(90), longitude: z.number().min(-180).max(180) }))
    .min(2)
    .max(MOST_PLACES),
});

export const drivingTimes = z.object({ ids: z.array(z.string()), minutes: z.array(z.array(z.number())) });
