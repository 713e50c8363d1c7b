import { type Fault, isoDay, type Problem } from '@duskwatch/core';
import { z } from 'zod';

export const date = isoDay;

/** The day as of which to answer: nothing that became known later is used. */
export const asOf = z.object({
  on: date
    .optional()
    .describe("Read the program as of this day. Default: the program's pinned day, else today in its fields' time zone."),
});

/** As values, for languages other than English; `kind` says what the others are. */
const fault = z.looseObject({ kind: z.string() }) as unknown as z.ZodType<Fault>;

export const problem: z.ZodType<Problem> = z.object({
  where: z.object({
    file: z.string().exactOptional(),
    row: z.int().exactOptional(),
    column: z.string().exactOptional(),
    parameter: z.string().exactOptional(),
  }),
  got: z.string(),
  expected: z.string(),
  fix: z.string(),
  fault: fault.exactOptional(),
});

/** The body of every answer that is not a success. */
export const problems = z.object({ problems: z.array(problem) }).meta({ description: 'What was wrong, and how to mend it.' });
