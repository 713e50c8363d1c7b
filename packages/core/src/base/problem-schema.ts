import { z } from 'zod';
import { faultSchema } from './fault.ts';

export const problemSchema = z
  .object({
    where: z
      .object({
        file: z.string().exactOptional(),
        row: z.int().exactOptional().describe('As a spreadsheet numbers it: the header is row 1.'),
        column: z.string().exactOptional(),
        parameter: z.string().exactOptional().describe('Of a request, or an option of a command.'),
      })
      .describe('Where: file, row, column; or the parameter of a request.'),
    got: z.string().describe('What was found there, as written.'),
    expected: z.string().describe('What would have been right.'),
    fix: z.string().describe('What to do about it.'),
    fault: faultSchema.exactOptional(),
  })
  .meta({ id: 'Problem', description: 'One thing wrong with what somebody gave, said so that they can mend it.' });
