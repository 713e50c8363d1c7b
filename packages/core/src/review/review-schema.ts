/** A season's review, ready to draw: days as text, fields by name. */
import { z } from 'zod';
import { verbSchema } from '../advice/types.ts';
import type { Shape } from '../base/shape.ts';
import { DECISION_REASONS, isoDay, trapDesignSchema, UNFIT_REASONS } from '../records/schema.ts';

const timingRowSchema = z
  .object({
    insect: z.string(),
    design: trapDesignSchema,
    traps: z.int(),
    moths: z.int(),
    perNight: z
      .object({ value: z.number(), low: z.number(), high: z.number() })
      .nullable()
      .describe('Moths per trap per night with its interval; null where no night carried information.'),
    firstCatch: isoDay.nullable(),
    peak: z.object({ from: isoDay, to: isoDay, perNight: z.number() }).nullable(),
    tenth: isoDay
      .nullable()
      .describe("When a tenth of the mean trap's moths had been caught; null without a catch. So with half and nine tenths."),
    half: isoDay.nullable(),
    nineTenths: isoDay.nullable(),
    unseenNights: z.int(),
    blindTrapNights: z.int(),
  })
  .meta({ id: 'TimingRow' });
export type TimingRow = Shape<typeof timingRowSchema>;

const callRowSchema = z
  .object({
    field: z.string(),
    name: z.string(),
    insect: z.string(),
    verb: verbSchema,
    from: isoDay,
    to: isoDay,
    ruleId: z.string().nullable(),
    sample: z.object({ on: isoDay, kind: z.string(), examined: z.int(), infested: z.int().nullable() }).nullable(),
    treatment: z.object({ on: isoDay, product: z.string() }).nullable(),
    decision: z
      .object({ on: isoDay, reason: z.enum(DECISION_REASONS) })
      .nullable()
      .describe('A recorded decision not to treat or not to look.'),
    dueOn: isoDay.nullable().describe('The earliest day by which it was due, as known then; null where it had none.'),
    answer: z
      .object({
        by: z.enum(['sample', 'treatment', 'decision']),
        on: isoDay,
        daysLate: z.int().nullable().describe('Days past the day it was due; 0 in time; null where no day was named.'),
      })
      .nullable()
      .describe('What answered it first; null: nothing on record does.'),
    outcome: z.enum(['unanswered', 'late', 'in-time']),
    daysOpen: z
      .int()
      .nullable()
      .describe(
        'For what nothing answers: days from the day it was due to the last day it was asked; null where no day was named.',
      ),
  })
  .meta({ id: 'CallRow', description: 'Scout or Decide, and what followed.' });
export type CallRow = Shape<typeof callRowSchema>;

export const callsSchema = z
  .object({
    given: z.record(verbSchema, z.int()).describe('How often each verb was given: once for each stretch of days in a row.'),
    scoutSampled: z.int(),
    decideSampled: z.int(),
    decideTreated: z.int(),
    answered: z.object({
      inTime: z.int(),
      late: z.int(),
      unanswered: z.int(),
      middleDaysLate: z.int().nullable().describe('Of the late ones, the middle; null: none was late.'),
    }),
    sampledInfested: z.int().describe('Samples that followed Scout or Decide: how many found something.'),
  })
  .meta({ id: 'Calls', description: 'Runs of verbs that asked for something, and what followed.' });

export const seasonWorkSchema = z
  .object({ traps: z.int(), lures: z.int(), visits: z.int(), samples: z.int(), decisions: z.int() })
  .meta({ id: 'SeasonWork' });

const reviewPartSchema = z
  .object({
    timing: z.array(timingRowSchema),
    visits: z.object({
      visits: z.int(),
      luresPlaced: z.int(),
      luresWithoutLife: z.int().describe('Lures of which nobody wrote how long they last: late or not, nobody can tell.'),
      trapsWithoutLure: z.array(z.string()),
      unfit: z
        .array(
          z.object({
            reason: z.enum(UNFIT_REASONS).nullable().describe('Null: nobody said why.'),
            visits: z.int(),
            traps: z.int(),
          }),
        )
        .describe('Visits that found a trap unfit, by reason, most frequent first.'),
      missed: z.array(z.object({ trapId: z.string(), from: isoDay, to: isoDay.nullable(), nights: z.int() })),
      lateLures: z.array(z.object({ trapId: z.string(), dueOn: isoDay, changedOn: isoDay.nullable(), daysLate: z.int() })),
    }),
    calls: callsSchema,
    rows: z.array(callRowSchema),
    work: seasonWorkSchema,
  })
  .meta({ id: 'ReviewPart' });
export type ReviewPart = Shape<typeof reviewPartSchema>;

export const reviewSchema = z
  .object({
    year: z.int(),
    from: isoDay,
    to: isoDay,
    through: isoDay.describe('Last day looked at; the season is still open before its end.'),
    open: z.boolean(),
    within: z.int().describe('Days after a verb in which an act counts as following it.'),
    daysChecked: z.int(),
    daysRead: z.int(),
    program: reviewPartSchema,
    farms: z.array(reviewPartSchema.extend({ farm: z.string() })),
    uncalled: z.array(z.object({ farm: z.string(), name: z.string(), insect: z.string(), on: isoDay })),
  })
  .meta({ id: 'Review' });
export type ReviewView = Shape<typeof reviewSchema>;
