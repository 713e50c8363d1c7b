import { roundsSchema } from '@duskwatch/core';
import { z } from 'zod';
import { asOf, date } from './common.ts';

export const roundsQuery = asOf.extend({ until: date.optional().describe('Last day of the plan. Default: the day itself.') });

export const roundsToPlan = roundsSchema
  .extend({
    drivingTimesFrom: z.string().nullable().describe('Host that can be asked for driving times; it then learns the places.'),
  })
  .meta({ id: 'RoundsToPlan' });

/** The service’s own servers answer no more at once. */
const MOST_PLACES = 100;

export const placesBody = z.object({
  places: z
    .array(z.object({ id: z.string().max(200), latitude: z.number().min(-90).max(90), longitude: z.number().min(-180).max(180) }))
    .min(2)
    .max(MOST_PLACES),
});

export const drivingTimes = z
  .object({ ids: z.array(z.string()), minutes: z.array(z.array(z.number())) })
  .meta({ id: 'DrivingTimes' });
