/** What a sheet for the wall and the cab needs besides This week: the reasons, and the week's drives ahead. */
import { z } from 'zod';
import { adviceSchema } from '../advice/types.ts';
import type { Shape } from '../base/shape.ts';
import { localTextSchema } from '../catalogue/schema.ts';
import { isoDay } from '../records/schema.ts';
import { namedFieldSchema, namedProgramSchema, skippedSchema } from './schema.ts';

const sheetDecisionSchema = namedFieldSchema.extend({ advice: adviceSchema }).meta({ id: 'SheetDecision' });

const sheetScoutingSchema = sheetDecisionSchema
  .extend({
    look: localTextSchema.nullable().describe('What to look for on a unit; null where the catalogue has no word.'),
    units: z.int().nullable().describe('The largest sample that the plan asks for; null where there is none.'),
    unit: z.enum(['plants', 'ears', 'fruit']),
  })
  .meta({ id: 'SheetScouting' });

const sheetStopSchema = z
  .object({
    station: z.string(),
    traps: z.array(z.object({ trapId: z.string(), insect: z.string() })),
    visits: z
      .array(isoDay)
      .describe('Days on which a trap of the station falls due up to `until`; what is late falls due on `on`.'),
    daysLate: z.int().describe('Of the trap that is latest; 0: none is.'),
    skipped: skippedSchema,
  })
  .meta({ id: 'SheetStop' });
export type SheetStop = Shape<typeof sheetStopSchema>;

const sheetLureSchema = z
  .object({
    insect: z.string(),
    days: z.array(z.object({ on: isoDay, lures: z.int() })).describe('Drives that need any, in their order.'),
    traps: z.array(
      z.object({ trapId: z.string(), on: isoDay, daysPast: z.int().describe('Days between the end of its life and the drive.') }),
    ),
  })
  .meta({ id: 'SheetLure' });
export type SheetLure = Shape<typeof sheetLureSchema>;

export const weekSheetSchema = z
  .object({
    program: namedProgramSchema,
    on: isoDay,
    until: isoDay.describe('Last of the seven days.'),
    decisions: z.array(sheetDecisionSchema).describe('The latest first.'),
    scouting: z.array(sheetScoutingSchema).describe('The latest first.'),
    stops: z.array(sheetStopSchema).describe('Stations with a trap to check within the seven days, as one may drive past them.'),
    lures: z.array(sheetLureSchema).describe('Lures that end before the drive after the one they are taken on.'),
  })
  .meta({ id: 'WeekSheet' });
export type WeekSheetView = Shape<typeof weekSheetSchema>;
