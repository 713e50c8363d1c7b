import { ANSWERS, type QuestionsView } from '@duskwatch/core';
import { z } from 'zod';
import { date } from './common.ts';

const asked = z.object({
  checks: z.array(
    z.object({
      trapId: z.string(),
      checkedOn: date,
      count: z.int(),
      others: z.int().nullable(),
      expected: z.number().nullable(),
    }),
  ),
  farm: z.string().nullable(),
  whom: z.enum(['scout', 'whoever-entered']),
  probability: z.number().nullable().describe('That sound records look at least as odd at one such look.'),
  inSeason: z.number().nullable().describe('The same for all such looks in the season: at most this.'),
});

const question = z.discriminatedUnion('kind', [
  asked.extend({ kind: z.literal('unlikely-count'), side: z.enum(['high', 'low']) }),
  asked.extend({ kind: z.literal('columns-swapped') }),
  asked.extend({ kind: z.literal('repeated-count'), value: z.int() }),
  asked.extend({ kind: z.literal('same-count-everywhere'), value: z.int(), traps: z.int() }),
  asked.extend({ kind: z.literal('entered-in-bulk'), author: z.string(), days: z.int() }),
  asked.extend({ kind: z.literal('rounded-counts'), rounded: z.int(), of: z.int() }),
  asked.extend({ kind: z.literal('never-catches'), nights: z.int(), expected: z.number() }),
  asked.extend({ kind: z.literal('swapped-traps'), traps: z.tuple([z.string(), z.string()]), from: date }),
]);

const askedQuestion = z.object({
  key: z.string().describe('What an answer names.'),
  question,
  answer: z.object({ answer: z.enum(ANSWERS), answeredOn: date, note: z.string().nullable() }).nullable(),
});

export const questionsView: z.ZodType<QuestionsView> = z.object({
  on: date,
  year: z.int(),
  visits: z.int(),
  compared: z.int(),
  open: z.array(askedQuestion),
  settled: z.array(askedQuestion),
});
