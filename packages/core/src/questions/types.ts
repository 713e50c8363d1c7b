import { z } from 'zod';
import type { Shape } from '../base/shape.ts';
import type { TrapOfSeason } from '../catch/nights-of-kind.ts';
import type { TrapRecord } from '../records/schema.ts';
import { answerSchema, isoDay } from '../records/schema.ts';

export interface TrapOfFarm extends TrapOfSeason {
  readonly trap: TrapRecord;
  /** Null when no field says. */
  readonly farm: string | null;
}

const neighbourCountSchema = z
  .object({ trapId: z.string(), from: isoDay, to: isoDay, nights: z.int(), count: z.int() })
  .meta({ id: 'NeighbourCount', description: 'What another trap of the kind caught in some of the same nights.' });

const askedCheckSchema = z
  .object({
    trapId: z.string(),
    checkedOn: isoDay,
    count: z.int().describe('Moths of the target since the visit before.'),
    others: z.int().nullable(),
    expected: z
      .number()
      .nullable()
      .describe('Moths to be expected there by the other traps in the same nights; null where it plays no part.'),
    neighbours: z
      .array(neighbourCountSchema)
      .describe('Fit visits to other traps of the same insect and design under the same weather, in the same nights.'),
  })
  .meta({ id: 'AskedCheck', description: 'A check a question is about, by trap and day.' });
export type AskedCheck = Shape<typeof askedCheckSchema>;

const asked = z.object({
  checks: z.array(askedCheckSchema).describe('The checks that are odd together, in order of days.'),
  farm: z.string().nullable().describe('Whose traps they are; null when no field says.'),
  whom: z.enum(['scout', 'whoever-entered']).describe('Who knows: whoever stood at the trap, or whoever typed the records in.'),
  probability: z
    .number()
    .nullable()
    .describe('That sound records look at least as odd at one such look; null where it is no matter of chance.'),
  inSeason: z.number().nullable().describe('The same for all the looks of this kind in the season together: at most this.'),
});

export const recordQuestionSchema = z
  .discriminatedUnion('kind', [
    asked.extend({ kind: z.literal('unlikely-count'), side: z.enum(['high', 'low']) }),
    asked
      .extend({ kind: z.literal('columns-swapped') })
      .describe('The figures of target and other species fit better the other way round.'),
    asked.extend({ kind: z.literal('repeated-count'), value: z.int() }).describe("One trap's count again and again."),
    asked
      .extend({ kind: z.literal('same-count-everywhere'), value: z.int(), traps: z.int() })
      .describe('Many traps of one farm with one count on one day.'),
    asked
      .extend({ kind: z.literal('entered-in-bulk'), author: z.string(), days: z.int() })
      .describe('Checks of several days entered in one go.'),
    asked
      .extend({ kind: z.literal('rounded-counts'), rounded: z.int(), of: z.int() })
      .describe('More counts in fives than chance gives.'),
    asked
      .extend({ kind: z.literal('silent-trap'), since: isoDay, nights: z.int(), expected: z.number() })
      .describe('Nothing while others catch: a doubt that advice is given with.'),
    asked
      .extend({ kind: z.literal('loud-trap'), since: isoDay, nights: z.int(), caught: z.int(), expected: z.number() })
      .describe('Many times what others catch: a doubt that advice is given with.'),
    asked
      .extend({ kind: z.literal('swapped-traps'), traps: z.tuple([z.string(), z.string()]), from: isoDay })
      .describe('From a day on, each of two traps catches what the other should.'),
  ])
  .meta({
    id: 'RecordQuestion',
    description: 'Something odd that somebody should look at. Records are never changed for it.',
  });
export type RecordQuestion = Shape<typeof recordQuestionSchema>;
export type QuestionKind = RecordQuestion['kind'];

const askedQuestionSchema = z
  .object({
    key: z.string().describe('What an answer names.'),
    question: recordQuestionSchema,
    answer: answerSchema
      .pick({ answer: true, answeredOn: true, note: true })
      .nullable()
      .describe('Null: nobody answered yet, or it is time to ask again.'),
  })
  .meta({ id: 'AskedQuestion' });
export type AskedQuestion = Shape<typeof askedQuestionSchema>;

export const questionsSchema = z
  .object({
    on: isoDay,
    year: z.int(),
    visits: z.int().describe('Fit visits of the season.'),
    compared: z.int().describe('Those that could be held against other traps.'),
    open: z.array(askedQuestionSchema).describe('Oddest first.'),
    settled: z.array(askedQuestionSchema).describe('Put off, and answered.'),
  })
  .meta({ id: 'Questions', description: "The season's questions with what was answered to them." });
export type QuestionsView = Shape<typeof questionsSchema>;
