/** Stations and traps: who stands where, stood where, and what is due there. */
import { z } from 'zod';
import { ratePointSchema } from '../advice/rate-points.ts';
import type { Shape } from '../base/shape.ts';
import { localTextSchema, standingSchema } from '../catalogue/schema.ts';
import { conditionSchema, isoDay, trapDesignSchema, UNFIT_REASONS } from '../records/schema.ts';
import { insectNameSchema, namedFieldSchema, namedProgramSchema, skippedSchema } from './schema.ts';

const degrees = z.number().nullable();
const perNight = z.number().describe('Moths per night.');

const designAdviceSchema = z
  .object({
    design: trapDesignSchema,
    name: localTextSchema,
    heightM: z
      .number()
      .nullable()
      .describe('Height of the opening above ground to keep, in metres; null when the catalogue has none.'),
    siting: localTextSchema,
    source: z.string(),
    standing: standingSchema,
  })
  .meta({ id: 'DesignAdvice', description: 'How to set up a trap of a design, from the catalogue.' });
export type DesignAdvice = Shape<typeof designAdviceSchema>;

const sitingPracticeSchema = z
  .object({
    id: z.string(),
    act: z.enum(['siting', 'setting-posts']),
    weight: z.enum(['fact', 'caution']),
    designs: z.array(trapDesignSchema).nullable(),
    text: localTextSchema,
    source: z.string(),
    standing: standingSchema,
  })
  .meta({
    id: 'SitingPractice',
    description: 'What holds for siting any trap, or for driving its post; cautions first.',
  });
export type SitingPractice = Shape<typeof sitingPracticeSchema>;

const trapVisitSchema = z
  .object({
    on: isoDay,
    visit: z.int(),
    count: z.int().nullable(),
    others: z.int().nullable(),
    condition: conditionSchema,
    emptied: z.boolean(),
    unfitReason: z.enum(UNFIT_REASONS).nullable().describe('Null at a visit that was not unfit, and where nobody said why.'),
    note: z.string().nullable(),
    photo: z.string().nullable(),
  })
  .meta({ id: 'TrapVisit' });
export type TrapVisit = Shape<typeof trapVisitSchema>;

const trapSeasonSchema = z
  .object({
    from: isoDay.describe('First day of the growing year: 1 January, south of the equator 1 July.'),
    firstVisit: isoDay,
    lastVisit: isoDay,
    visits: z.int(),
    unfitVisits: z.int(),
    count: z.int().describe('Moths of the target in the nights that visits account for.'),
    nights: z.int().describe('Nights that visits account for; those before an unfit visit are not among them.'),
    peak: z
      .object({ on: isoDay, perNight })
      .nullable()
      .describe('The visit with the highest nightly catch; null when no visit accounts for any night.'),
  })
  .meta({ id: 'TrapSeason', description: 'One growing year of one trap.' });
export type TrapSeasonSummary = Shape<typeof trapSeasonSchema>;

const trapStateSchema = z.enum(['hanging', 'planned', 'taken-down']);
export type TrapState = Shape<typeof trapStateSchema>;

const stationTrapSchema = z
  .object({
    trapId: z.string(),
    insect: insectNameSchema,
    design: trapDesignSchema,
    state: trapStateSchema,
    hungOn: isoDay,
    takenDownOn: isoDay.nullable(),
    latitude: degrees,
    longitude: degrees,
    informs: z.array(namedFieldSchema),
    check: z
      .object({
        due: isoDay,
        state: z.enum(['not-due', 'due', 'overdue', 'unfit']),
        daysLate: z.int().describe('Days past due; 0 until then.'),
      })
      .nullable()
      .describe('Null unless it hangs.'),
    lure: z
      .object({
        placedOn: isoDay,
        lifeDays: z.int().nullable(),
        ageDays: z.int(),
        ends: isoDay.nullable().describe('Last day of its stated life; null when none is stated.'),
        spent: z.boolean().nullable(),
      })
      .nullable(),
    lastVisit: trapVisitSchema.nullable(),
    skipped: skippedSchema,
    newest: z
      .object({ from: isoDay, to: isoDay, nights: z.int(), perNight })
      .nullable()
      .describe('Moths per night by the newest visit that accounts for any; null when none does.'),
    seasons: z.array(trapSeasonSchema).describe('Newest first.'),
  })
  .meta({ id: 'StationTrap' });
export type StationTrap = Shape<typeof stationTrapSchema>;

const stationPlaceSchema = z
  .object({
    station: z.string(),
    place: z.int().describe('Which of the places that bore this station name, from 1.'),
    places: z.int(),
    latitude: degrees,
    longitude: degrees,
    movedM: z
      .number()
      .nullable()
      .describe('Metres from the place before; null for the first, or when one of the two has no coordinates.'),
    firstHungOn: isoDay,
    inUse: z.boolean().describe('True while any trap hangs.'),
    due: z.boolean(),
    traps: z.array(stationTrapSchema).describe('Hanging first, then planned, then the newest taken down.'),
  })
  .meta({
    id: 'StationPlace',
    description:
      'A place where traps stand or stood. A station whose traps stood elsewhere in another season has several places: their catches are not one history.',
  });
export type StationPlace = Shape<typeof stationPlaceSchema>;

export const stationsSchema = z
  .object({
    program: namedProgramSchema,
    on: isoDay,
    places: z.array(stationPlaceSchema).describe("By name; a name's places newest first."),
    designs: z.array(designAdviceSchema),
    practices: z.array(sitingPracticeSchema),
  })
  .meta({ id: 'Stations' });
export type TrapsView = Shape<typeof stationsSchema>;

const trapChartSchema = z
  .object({
    from: isoDay.describe('First day of the growing year drawn: that of the newest visit.'),
    points: z.array(ratePointSchema),
    withoutInformation: z.array(
      z.object({ from: isoDay, to: isoDay, why: z.enum(['unfit', 'count-went-down', 'left-uncounted']) }),
    ),
    threshold: z
      .object({ perNight, fieldId: z.string(), field: z.string() })
      .nullable()
      .describe('Of the rule of the field it informs that would be reached first; null where none has one.'),
    neighbours: z
      .array(
        z.object({
          trapId: z.string(),
          station: z.string(),
          km: z.number(),
          points: z.array(ratePointSchema.pick({ from: true, to: true, perNight: true })),
        }),
      )
      .describe('Traps of the same insect and design within 10 km, the nearest first, at most eight.'),
  })
  .meta({ id: 'TrapChart', description: "One trap's season as it is drawn." });
export type TrapChart = Shape<typeof trapChartSchema>;

export const trapViewSchema = stationTrapSchema
  .extend({
    on: isoDay,
    station: z.string(),
    visits: z.array(trapVisitSchema),
    lures: z.array(z.object({ placedOn: isoDay, lifeDays: z.int().nullable() })),
    chart: trapChartSchema,
  })
  .meta({ id: 'Trap', description: 'One trap with every visit and lure, newest first.' });
export type TrapView = Shape<typeof trapViewSchema>;
