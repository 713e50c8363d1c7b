import { Readable } from 'node:stream';
import { isoDay, problemSchema } from '@duskwatch/core';
import { z } from 'zod';

export const date = isoDay;

/** The day as of which to answer: nothing that became known later is used. */
export const asOf = z.object({
  on: date
    .optional()
    .describe("Read the program as of this day. Default: the program's pinned day, else today in its fields' time zone."),
});

/** The body of every answer that is not a success. */
export const problems = z
  .object({ problems: z.array(problemSchema) })
  .meta({ id: 'Problems', description: 'What was wrong, and how to mend it.' });

/** An answer that is a file of one of some media types. */
export const bytes = (description: string, ...types: readonly string[]) => ({
  description,
  content: Object.fromEntries(types.map((type) => [type, { schema: z.instanceof(Buffer).meta({ format: 'binary' }) }])),
});

/** An answer that is a file which is made while it is sent. */
export const streamed = (description: string, type: string) => ({
  description,
  content: { [type]: { schema: z.instanceof(Readable).meta({ format: 'binary' }) } },
});

export const PDF = bytes('A PDF.', 'application/pdf');
