/** Stations whose traps fall due, as a desk plans rounds past them. */
import { z } from 'zod';
import type { Shape } from '../base/shape.ts';
import { isoDay } from '../records/schema.ts';
import { namedFieldSchema, namedProgramSchema } from './schema.ts';

const stationToVisitSchema = z
  .object({
    id: z.string(),
    latitude: z.number().nullable(),
    longitude: z.number().nullable(),
    due: isoDay,
    traps: z.int(),
    keepOutUntil: isoDay.nullable().describe('Last day on which a recorded re-entry interval keeps people off.'),
    trapIds: z.array(z.string()),
    fields: z.array(namedFieldSchema),
  })
  .meta({ id: 'StationToVisit' });
export type StationToVisit = Shape<typeof stationToVisitSchema>;

export const roundsSchema = z
  .object({
    program: namedProgramSchema,
    on: isoDay,
    until: isoDay,
    stations: z.array(stationToVisitSchema).describe('With a trap to check up to the last day, soonest first.'),
  })
  .meta({ id: 'Rounds' });
export type RoundsView = Shape<typeof roundsSchema>;
