/** The week for people who do not see the program: what flies, what to do and what is expected, of no single farm. */
import { z } from 'zod';
import type { Shape } from '../base/shape.ts';
import { eventSchema, standingSchema } from '../catalogue/schema.ts';
import { isoDay, trapDesignSchema } from '../records/schema.ts';
import { insectNameSchema, namedProgramSchema } from './schema.ts';

const weekCatchSchema = z
  .object({
    moths: z.int(),
    nights: z.int().describe('Trap-nights that these moths were caught in.'),
    traps: z.int(),
    farms: z.int(),
    perNight: z.number().describe('Moths per trap per night.'),
  })
  .meta({ id: 'WeekCatch', description: 'What the visits of seven days found in traps of one design, all farms together.' });
export type WeekCatch = Shape<typeof weekCatchSchema>;

const expectedSchema = z
  .object({
    event: eventSchema,
    generation: z.int().nullable(),
    fields: z.int().describe('Fields where it is dated.'),
    early: isoDay.describe('The earliest early date of any of them.'),
    middle: isoDay.describe('The middle one of their likely dates.'),
    late: isoDay.describe('The latest late date of any of them.'),
    lateOpen: z.boolean().describe('For some of them there is no late date.'),
    standing: standingSchema.describe('Of the model.'),
    source: z.string().describe('Of the model.'),
  })
  .meta({ id: 'ExpectedEvent' });
export type ExpectedEvent = Shape<typeof expectedSchema>;

const cropWeekSchema = z
  .object({
    crop: z.string().nullable().describe('Null: crops of too few farms each, together.'),
    fields: z.int(),
    farms: z.int(),
    decide: z.int(),
    late: z.int().describe('Of those to decide on: due before this day and unanswered.'),
    scout: z.int(),
    covered: z.int(),
    watch: z.int(),
    blind: z.int(),
    by: isoDay.nullable().describe('The first day by which something is to be decided or looked at.'),
  })
  .meta({
    id: 'CropWeek',
    description: 'Verbs of one insect in the fields of one crop; fields where it is out of season apart.',
  });
export type CropWeek = Shape<typeof cropWeekSchema>;

const bulletinInsectSchema = z
  .object({
    insect: insectNameSchema,
    design: trapDesignSchema.nullable().describe('The design with the most trap-nights; catches of others are not mixed in.'),
    week: weekCatchSchema.nullable().describe('Null: no visit of the week tells anything, or too few farms.'),
    before: weekCatchSchema.nullable().describe('The seven days before.'),
    change: z
      .enum(['more', 'fewer', 'unclear'])
      .nullable()
      .describe('Against the week before; unclear where an interval of 80 % about the ratio takes in 1.'),
    earlier: z
      .array(z.object({ year: z.int(), week: weekCatchSchema }))
      .describe('The same seven days of up to two years before.'),
    season: z
      .array(z.object({ year: z.int(), points: z.array(z.object({ on: isoDay, perNight: z.number() })) }))
      .describe('Catch week by week, this year first; days of years before are moved to this year.'),
    expected: z.array(expectedSchema),
    crops: z.array(cropWeekSchema),
    sources: z.array(z.string()).describe('Of the rules that spoke.'),
  })
  .meta({ id: 'BulletinInsect' });
export type BulletinInsect = Shape<typeof bulletinInsectSchema>;

export const bulletinSchema = z
  .object({
    program: namedProgramSchema,
    on: isoDay,
    from: isoDay.describe('First of the seven days.'),
    next: isoDay.describe('Seven days later.'),
    fewestFarms: z.int().describe('A figure is given only where so many farms stand behind it.'),
    insects: z.array(bulletinInsectSchema),
    withheld: z.int().describe('Insects and crops of which nothing is said because too few farms stand behind it.'),
  })
  .meta({ id: 'Bulletin' });
export type BulletinView = Shape<typeof bulletinSchema>;
